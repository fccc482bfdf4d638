from __future__ import annotations

import pytest

from common.cottage import read
from wardwright.errors import NotesError
from wardwright.intake.notes.draft import LISTS, begin, finish
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue


def test_a_draft_that_nothing_touched_is_its_base() -> None:
    base = read("person mother\ncontact front-door")
    assert finish(begin(load_catalogue(), base)) == base


def test_a_draft_has_every_list_of_a_site() -> None:
    lists = {name for name, field in Site.model_fields.items() if "tuple" in str(field.annotation)}
    assert set(LISTS) == lists


def test_ids_are_given_once_over_all_kinds() -> None:
    site = read("person hall-keypad\nkeypad hall east\npet cat")
    assert site.devices[0].id == "hall-keypad-2"
    with pytest.raises(NotesError, match="there is a 'night' already"):
        read("person night")


def test_what_no_line_says_is_left_out_of_the_document() -> None:
    assert {"zones", "devices", "parts", "programme", "place"} & read().model_fields_set == set()

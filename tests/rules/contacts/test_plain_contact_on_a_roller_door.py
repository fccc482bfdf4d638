"""CON103: doors that open upward need contacts for them."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_opening, one_room, opening
from common.rule_houses.contacts import garage
from wardwright.rules.contacts.plain_contact_on_a_roller_door import plain_contact_on_a_roller_door as rule
from wardwright.rules.registry import findings_of


def test_the_sheet_for_roller_doors_is_the_mend() -> None:
    (found,) = findings_of(rule, garage("top"), CATALOGUE)
    assert (found.subject, found.severity, found.related) == ("garage-contact", "advise", ("garage-door",))
    assert found.mends[0].values == (("sheet", "contact-roller"),)


@pytest.mark.parametrize("hinge", ["start", "end", "sliding"])
def test_doors_that_turn_or_slide_are_no_fault(hinge: str) -> None:
    assert findings_of(rule, garage(hinge), CATALOGUE) == ()


def test_an_ordinary_door_is_not_asked_about() -> None:
    site = one_room(openings=(opening("door", "south", 2.65),), devices=(on_opening("contact", "door"),))
    assert findings_of(rule, site, CATALOGUE) == ()


def test_a_catalogue_without_one_gives_no_mend() -> None:
    few = CATALOGUE.model_copy(
        update={"sheets": tuple(one for one in CATALOGUE.sheets if one.id != "contact-roller")}
    )
    (found,) = findings_of(rule, garage("top"), few)
    assert found.mends == ()

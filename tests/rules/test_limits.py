"""Limits where a site stands: which row, how sure, how cited."""

from __future__ import annotations

import re

import pytest

from common.houses import CATALOGUE, one_room
from structure.source_tree import PACKAGE
from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.limits import Limit
from wardwright.model.place import Place
from wardwright.model.rows import Source
from wardwright.rules.limits import cited, limit_for, severity_of

FACTS = {
    "id": "l",
    "name": "l",
    "value": 1.0,
    "unit": "m",
    "source": "book",
    "mark": "published",
    "edition": "2020",
}


def test_the_row_is_that_of_the_pack() -> None:
    us = one_room(place=Place(rule_pack="us"))
    assert limit_for(CATALOGUE, "entry-time-most", one_room()).value == 45.0
    assert limit_for(CATALOGUE, "entry-time-most", us).value == 240.0


def test_a_pack_without_the_figure_cannot_be_run() -> None:
    with pytest.raises(NotComputable, match="no figure for it is known in the rule pack uk-eu"):
        limit_for(CATALOGUE, "exit-time-most", one_room())


def test_one_row_from_memory_or_disputed_is_enough_to_have_it_checked() -> None:
    sure, unsure = Limit.model_validate(FACTS), Limit.model_validate(FACTS | {"mark": "from memory"})
    assert severity_of(sure) == "advise"
    assert severity_of(sure, unsure) == "check with the standard"
    assert severity_of(Limit.model_validate(FACTS | {"is_disputed": True})) == "check with the standard"


def test_what_is_cited_says_how_sure_it_is() -> None:
    catalogue = Catalogue(sources=(Source(id="book", title="A Book, volume 1", seen="all"),))
    row = Limit.model_validate(FACTS | {"note": "others say 2 m"})
    assert cited(catalogue, row) == "A Book 2020, as restated in public"
    disputed = Limit.model_validate(
        FACTS | {"note": "others say 2 m", "is_disputed": True, "mark": "from memory"}
    )
    assert cited(catalogue, disputed) == "A Book 2020, kept from memory; others say 2 m"
    own = Limit.model_validate(FACTS | {"source": "own", "mark": "common practice"})
    assert cited(catalogue, own) == "common practice, no published source"


def test_every_limit_of_the_catalogue_is_used_by_a_rule_a_trial_or_a_question() -> None:
    places = [PACKAGE / layer for layer in ("rules", "trials", "questions")]
    used = "\n".join(path.read_text(encoding="utf-8") for place in places for path in place.rglob("*.py"))
    # Some names are put together: of the kind of an alarm and the end of its range, of a grade.
    made = re.compile(
        r"(smoke|heat|co)-alarm-below-ceiling-(least|most)|co-alarm-to-appliance-(least|most)"
        r"|(check-in|standby|recharge)-grade-[1-4]"
    )
    # In quotes: a limit that is only spoken of is not used.
    unused = [row.id for row in CATALOGUE.limits if f'"{row.id}"' not in used]
    assert [name for name in unused if not made.fullmatch(name)] == []

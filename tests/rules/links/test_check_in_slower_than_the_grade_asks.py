"""LNK101: devices and the programme against the time for a grade."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room
from common.rule_houses.links import BETTER, PLAIN
from wardwright.model.needs import Needs
from wardwright.model.place import Place
from wardwright.model.programme import Programme
from wardwright.rules.finding import Finding
from wardwright.rules.links.check_in_slower_than_the_grade_asks import (
    check_in_slower_than_the_grade_asks as rule,
)
from wardwright.rules.registry import findings_of


def findings(*devices: Any, most: float | None = 1.0, **parts: Any) -> tuple[Finding, ...]:
    site = one_room(devices=devices, programme=Programme(check_in_min=most), **parts)
    return findings_of(rule, site, CATALOGUE)


@pytest.mark.parametrize(("grade", "limit"), [(1, 240.0), (2, 120.0), (3, 1.667), (4, 0.167)])
def test_each_grade_has_its_time(grade: int, limit: float) -> None:
    """The device checks in every 300 min, its better twin every 18."""
    found = findings(PLAIN, most=0.1, needs=Needs(grade=grade))
    assert [(one.subject, one.limit, one.severity) for one in found] == [
        ("plain", limit, "check with the standard")
    ]
    assert found[0].estimate is not None
    assert (found[0].estimate.value, found[0].estimate.unit) == (300.0, "min")
    assert bool(found[0].mends) == (limit >= 18.0)


def test_the_programme_is_held_to_it_as_well() -> None:
    (found,) = findings(BETTER, most=121.0)
    assert (found.subject, found.mends[0].values) == ("programme", (("check_in_min", 120.0),))
    (undecided,) = findings(BETTER, most=None)
    assert (undecided.severity, undecided.subject) == ("not run", "programme")


def test_the_need_may_be_dropped() -> None:
    assert findings(PLAIN, needs=Needs(grade=None)) == ()
    assert findings(PLAIN, needs=Needs(check_in_by_grade=False)) == ()


def test_a_silent_sheet_is_said_and_keyfobs_are_not_asked() -> None:
    (found,) = findings(on_wall("fan", "fan", "south", 1.0), on_wall("fob", "keyfob", "south", 2.0))
    assert found.message == "the sheets do not say how often these check in: fan"


def test_other_rules_have_no_such_times() -> None:
    (found,) = findings(PLAIN, place=Place(rule_pack="us"))
    assert (found.severity, found.message) == ("not run", "these rules know no times by grade")

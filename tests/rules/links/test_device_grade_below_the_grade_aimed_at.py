"""LNK102: the lowest grade sets the whole."""

from __future__ import annotations

from typing import Any

from common.houses import CATALOGUE, on_wall, one_room
from common.rule_houses.links import BETTER, PLAIN
from wardwright.model.needs import Needs
from wardwright.rules.finding import Finding
from wardwright.rules.links.device_grade_below_the_grade_aimed_at import (
    device_grade_below_the_grade_aimed_at as rule,
)
from wardwright.rules.registry import findings_of


def findings(*devices: Any, **parts: Any) -> tuple[Finding, ...]:
    return findings_of(rule, one_room(devices=devices, **parts), CATALOGUE)


def test_a_grade_that_was_told_binds_and_the_usual_one_is_to_be_checked() -> None:
    (found,) = findings(PLAIN, needs=Needs(grade=2))
    assert found.severity == "must mend"
    assert found.message == "plain: it is of grade 1, and grade 2 is aimed at"
    assert found.mends[0].values == (("sheet", "fan-better"),)
    assert findings(PLAIN)[0].severity == "check with the standard"


def test_a_grade_that_no_row_has_gets_no_mend() -> None:
    found = findings(PLAIN, BETTER, needs=Needs(grade=3))
    assert [(one.subject, one.mends) for one in found] == [("better", ()), ("plain", ())]


def test_none_aimed_at_and_none_below_are_silent() -> None:
    assert findings(PLAIN, needs=Needs(grade=None)) == ()
    assert findings(PLAIN, needs=Needs(grade=1)) == ()


def test_sheets_without_a_grade_are_named_together_and_routers_left_out() -> None:
    (found,) = findings(
        on_wall("fan", "fan", "south", 1.0),
        on_wall("unit", "unit", "south", 2.0),
        on_wall("router", "router", "south", 3.0),
    )
    assert found.message == "the sheets of these name no grade: fan, unit"

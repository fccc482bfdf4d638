"""PWR102: hours against the grade's."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room
from wardwright.model.needs import Needs
from wardwright.model.place import Place
from wardwright.model.site import Site
from wardwright.rules.power.standby_shorter_than_the_grade_asks import (
    standby_shorter_than_the_grade_asks as rule,
)
from wardwright.rules.registry import findings_of


def house(sheet: str, grade: int | None, **parts: object) -> Site:
    unit = on_wall("unit", sheet, "south", 3.0, height_m=1.5)
    return one_room(devices=(unit,), needs=Needs(grade=grade), **parts)


def test_by_hand() -> None:
    """0.75 / 1.25 = 0.6 Ah; a twentieth of 0.75 is less than 0.1 A: less 1.75 x 0.1 x 0.25, / 0.1 A = 5.5625 h."""
    (found,) = findings_of(rule, house("unit-of-6-h", 2), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(5.5625)
    assert found.estimate.high == pytest.approx((0.75 - 1.75 * 0.1 * 0.1) / 0.1)
    assert (found.limit, found.severity) == (12.0, "check with the standard")
    assert [dict(mend.values)["sheet"] for mend in found.mends] == ["unit-of-16-h"]


def test_a_higher_grade_asks_more_and_no_catalogue_row_lasts_it() -> None:
    (found,) = findings_of(rule, house("unit-of-16-h", 3), CATALOGUE)
    assert (found.limit, found.mends) == (60.0, ())


def test_without_a_grade_nothing_is_asked() -> None:
    assert findings_of(rule, house("unit-of-6-h", None), CATALOGUE) == ()


def test_a_silent_sheet_is_not_passed() -> None:
    (found,) = findings_of(rule, house("unit-mains", 2), CATALOGUE)
    assert found.severity == "not run"


def test_a_pack_without_hours_cannot_run() -> None:
    (found,) = findings_of(rule, house("unit-of-6-h", 2, place=Place(rule_pack="us")), CATALOGUE)
    assert found.message == "these rules know no hours by grade"

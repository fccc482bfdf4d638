"""PWR103: charging times against the grade's."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room
from wardwright.model.needs import Needs
from wardwright.model.site import Site
from wardwright.rules.power.charger_slower_than_the_grade_asks import (
    charger_slower_than_the_grade_asks as rule,
)
from wardwright.rules.registry import findings_of


def house(sheet: str, grade: int | None) -> Site:
    return one_room(devices=(on_wall("unit", sheet, "south", 3.0, height_m=1.5),), needs=Needs(grade=grade))


def test_by_hand() -> None:
    """0.8 x 2.4 Ah / 0.02 A = 96 h."""
    (found,) = findings_of(rule, house("unit-of-96-h-to-charge", 2), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(96.0)
    assert found.limit == 72.0
    assert [dict(mend.values)["sheet"] for mend in found.mends] == ["unit-of-6-h"]


def test_sixteen_hours_to_charge_are_soon_enough_for_any_grade() -> None:
    assert findings_of(rule, house("unit-of-16-h", 4), CATALOGUE) == ()
    assert findings_of(rule, house("unit-of-96-h-to-charge", None), CATALOGUE) == ()


def test_a_silent_sheet_is_not_passed() -> None:
    (found,) = findings_of(rule, house("unit-mains", 2), CATALOGUE)
    assert found.severity == "not run"

"""PWR101: lives against a year, and what mends them."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room
from common.mending import mended
from wardwright.model.site import Site
from wardwright.rules.power.battery_ends_before_the_next_service import (
    battery_ends_before_the_next_service as rule,
)
from wardwright.rules.registry import findings_of


def house(sheet: str) -> Site:
    return one_room(devices=(on_wall("keypad", sheet, "south", 2.0, height_m=1.4),))


def test_by_hand() -> None:
    """0.9 mA all the time: 2.9 Ah x 0.85 x 0.975 in the cold / (7.884 Ah and 2.5 % a year) = 0.302 years."""
    (found,) = findings_of(rule, house("keypad-thirsty"), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(2.9 * 0.85 * 0.975 / (9e-4 * 8760 + 2.9 * 0.025), rel=1e-6)
    assert found.estimate.low < found.estimate.value < found.estimate.high
    assert (found.limit, found.severity) == (1.0, "advise")


def test_better_cells_come_first() -> None:
    site = house("keypad-of-two-cells")
    found = findings_of(rule, site, CATALOGUE)
    assert [dict(mend.values) for one in found for mend in one.mends] == [{"cell": "lithium-fr6"}]
    assert findings_of(rule, mended(site, found[0].mends[0]), CATALOGUE) == ()


def test_else_another_device() -> None:
    site = house("keypad-thirsty")
    (found,) = findings_of(rule, site, CATALOGUE)
    assert [dict(mend.values) for mend in found.mends] == [{"sheet": "keypad-sparing"}]
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_silent_sheets_are_named_and_not_passed() -> None:
    (found,) = findings_of(rule, house("keypad"), CATALOGUE)
    assert (found.severity, found.message) == (
        "not run",
        "the sheets do not say what these draw from which cells: keypad",
    )

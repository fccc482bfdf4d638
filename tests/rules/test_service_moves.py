"""The least shift, and what bounds it."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room, window
from common.rule_houses.service import WORKTOP
from wardwright.model.device_sheets import ButtonSheet
from wardwright.rules.service_moves import has_room, shifted

ABOVE = CATALOGUE.sheet("keypad-opened-above")
BELOW = CATALOGUE.sheet("unit-opened-below")


def test_room_is_enough_at_the_limit() -> None:
    site = one_room(fixtures=(WORKTOP,))
    assert has_room(site, on_wall("unit", BELOW.id, "south", 2.15, height_m=1.35), BELOW)
    assert not has_room(site, on_wall("unit", BELOW.id, "south", 2.15, height_m=1.34), BELOW)


def test_a_sheets_own_heights_bound_it() -> None:
    """Down by 0.1 m would be 2.2 m, but the sheet ends at 2.25 m from below: it has to go aside, and cannot."""
    sheet = ABOVE.model_copy(update={"button": ButtonSheet(height_low_m=2.25, height_high_m=2.4)})
    keypad = on_wall("keypad", sheet.id, "east", 2.0, height_m=2.3)
    assert shifted(one_room(), keypad, sheet, lacking_m=0.1) == ()


def test_it_is_not_shifted_onto_a_window() -> None:
    """Above 1.35 m a window from x = 1.25 to 2.75 begins: the unit leaves the worktop, to x = 3.05."""
    site = one_room(fixtures=(WORKTOP,), openings=(window("pane", "south", 2.15, width_m=1.5, sill_m=1.4),))
    unit = on_wall("unit", BELOW.id, "south", 2.15, height_m=1.2)
    (mend,) = shifted(site, unit, BELOW, lacking_m=0.15)
    assert dict(mend.values) == {"offset_m": pytest.approx(3.2)}

"""Turns and places for a movement detector."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room, radiator, standing_free, window
from wardwright.model.device_sheets import MovementSheet
from wardwright.rules.detector_spots import half_centre_deg, is_clear, moved_to_better_spot, turned_away


def fan(**facts: float) -> MovementSheet:
    sheet = CATALOGUE.sheet("fan").movement
    assert sheet is not None
    return sheet.model_copy(update=facts)


GLASS = one_room(openings=(window("pane", "north", 2.65),))


def test_the_middle_third_of_90_degrees() -> None:
    assert half_centre_deg(fan()) == 15.0


@pytest.mark.parametrize(
    ("heading_deg", "clear"), [(90.0, False), (45.0, True), (0.0, True), (270.0, False)], ids=str
)
def test_clear_is_no_glass_and_a_free_view(heading_deg: float, *, clear: bool) -> None:
    """From (2.5, 1): glass to the north, a wall 1 m off to the south."""
    assert is_clear(GLASS, "ground", (2.5, 1.0), heading_deg=heading_deg, sheet=fan()) is clear


def test_a_device_on_a_wall_turns_45_degrees_at_most() -> None:
    wide = one_room(openings=(window("pane", "north", 2.65, width_m=5.2),))
    device = on_wall("fan", "fan", "south", 2.65)
    assert turned_away(wide, device, fan()) == ()
    (mend,) = turned_away(wide, standing_free("fan", "fan", 2.5, 2.0), fan())
    assert mend.action == "turn-device"


def test_the_new_place_keeps_the_height_inside_the_sheet() -> None:
    device = on_wall("fan", "fan", "south", 2.65, height_m=1.2)
    (mend,) = moved_to_better_spot(one_room(fixtures=(radiator(2.5, 0.1),)), device, fan())
    assert dict(mend.values)["height_m"] == 2.0


def test_outside_every_space_there_is_no_better_place() -> None:
    device = standing_free("fan", "fan", 50.0, 50.0)
    assert moved_to_better_spot(GLASS, device, fan()) == ()

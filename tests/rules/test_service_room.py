"""Room on the side of a device that its sheet names."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, opening
from common.rule_houses.service import WORKTOP
from wardwright.model.surroundings import Ground
from wardwright.rules.service_room import NOTHING_NEAR, room_to_serve, swept


def test_indoors_the_floor_and_outside_the_ground_are_below() -> None:
    sheet = CATALOGUE.sheet("unit-opened-below")
    inside = on_wall("unit", "unit-opened-below", "south", 2.0, height_m=1.0)
    outside = on_wall("unit", "unit-opened-below", "south", 2.0, side="right", height_m=1.0)
    site = one_room(devices=(inside, outside), ground=Ground(level_m=-0.2))
    free = room_to_serve(site, inside, sheet)
    assert free is not None
    assert (free.length_m, free.what) == (pytest.approx(0.95), "the floor")
    free = room_to_serve(site, outside, sheet)
    assert free is not None
    assert (free.length_m, free.what) == (pytest.approx(1.15), "the ground")


def test_outside_nothing_is_above() -> None:
    outside = on_wall("keypad", "keypad-opened-above", "south", 2.0, side="right", height_m=2.38)
    assert room_to_serve(one_room(), outside, CATALOGUE.sheet("keypad-opened-above")) == NOTHING_NEAR


def test_a_box_over_it_is_above() -> None:
    shelf = WORKTOP.model_copy(update={"base_m": 1.6, "height_m": 0.1, "name": "shelf"})
    keypad = on_wall("keypad", "keypad-opened-above", "south", 2.15, height_m=1.4)
    free = room_to_serve(one_room(fixtures=(shelf,)), keypad, CATALOGUE.sheet("keypad-opened-above"))
    assert free is not None
    assert (free.length_m, free.what, free.subject) == (pytest.approx(0.15), "shelf", "worktop")


@pytest.mark.parametrize(
    ("facts", "bounds"),
    [
        ({"hinge": "start", "swing": "left"}, (1.0, 0.0, 1.9, 0.9)),
        ({"hinge": "end", "swing": "left"}, (1.0, 0.0, 1.9, 0.9)),
        ({"hinge": "start", "swing": "right"}, (1.0, -1.2, 1.9, -0.3)),
        ({"hinge": "start", "swing": "left", "leaves": 2}, (1.0, 0.0, 1.45, 0.45)),
    ],
)
def test_a_leaf_sweeps_its_own_width(facts: dict[str, Any], bounds: tuple[float, ...]) -> None:
    """A door of 0.9 m whose jambs are at x = 1.0 and 1.9, in a wall whose faces are y = -0.3 and 0."""
    door = opening("door", "south", 1.6, **facts)
    assert swept(one_room(openings=(door,)), door).bounds == pytest.approx(bounds)

"""Panes that sun comes in by, and what throws it on."""

from __future__ import annotations

import pytest

from common.houses import one_room, window
from wardwright.model.daylight import GlossyFloor, Mirror, panes_of, shiny_in
from wardwright.model.fixture import Fixture


def test_each_pane_faces_out_and_knows_its_heights() -> None:
    house = one_room(openings=(window("a", "south", 2.65), window("b", "east", 2.0, covering="curtain")))
    south, east = panes_of(house.bare)
    assert south.pane.normal == pytest.approx((0.0, -1.0))
    assert (south.pane.sill, south.pane.head, south.pane.depth) == (0.9, 2.1, 0.3)
    assert east.pane.normal == pytest.approx((1.0, 0.0))
    assert (south.is_covered, east.is_covered) == (False, True)


def test_a_mirror_looks_into_the_room_and_a_glossy_floor_is_named() -> None:
    mirror = Fixture(
        id="m", name="Mirror", storey="ground", kind="mirror", centre_m=(2.0, 3.95), size_m=(1.0, 0.03),
        base_m=0.4, height_m=1.4,
    )  # fmt: skip
    space = one_room().spaces[0].model_copy(update={"has_glossy_floor": True})
    floor, glass = shiny_in(one_room(fixtures=(mirror,), spaces=(space,)).bare, "ground")
    assert isinstance(floor, GlossyFloor)
    assert isinstance(glass, Mirror)
    assert glass.front == pytest.approx((0.0, -1.0))
    assert (glass.low, glass.high) == pytest.approx((0.4, 1.8))
    assert shiny_in(one_room().bare, "ground") == ()

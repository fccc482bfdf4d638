"""Heights of sheets, and how far up there is to go."""

from __future__ import annotations

import pytest

from common.houses import on_ceiling, on_opening, on_wall, one_room, window
from wardwright.model.fabric import Space, Storey
from wardwright.rules.sheet_heights import moved_under_ceiling, moved_up_or_down, nearest_inside, top_for


@pytest.mark.parametrize(
    ("height_m", "nearest"), [(1.0, 2.0), (2.0, None), (2.2, None), (2.4, None), (2.5, 2.4)]
)
def test_the_nearest_height_inside(height_m: float, nearest: float | None) -> None:
    assert nearest_inside(height_m, 2.0, 2.4) == nearest


def test_an_inner_face_ends_below_its_ceiling() -> None:
    fan = on_wall("fan", "fan", "south", 2.0)
    site = one_room(devices=(fan,))
    assert top_for(site, fan) == pytest.approx(2.35)
    assert moved_up_or_down(site, fan, 2.4) == ()
    assert len(moved_up_or_down(site, fan, 2.3)) == 1


def test_an_outer_face_goes_on_up_the_storey_above() -> None:
    camera = on_wall("cam", "camera-outside", "south", 2.0, side="right")
    low = one_room(devices=(camera,))
    assert top_for(low, camera) == pytest.approx(2.4)
    upstairs = Space(id="up", name="Up", storey="first", outline_m=((0, 0), (5, 0), (5, 4), (0, 4)))
    first = Storey(id="first", name="first floor", elevation_m=2.7)
    high = one_room(devices=(camera,), storeys=(*low.storeys, first), spaces=(*low.spaces, upstairs))
    assert top_for(high, camera) == pytest.approx(5.1)


def test_a_parapet_ends_where_it_ends() -> None:
    camera = on_wall("cam", "camera-outside", "south", 2.0, side="right")
    walls = tuple(
        wall.model_copy(update={"height_m": 1.1}) if wall.id == "south" else wall for wall in one_room().walls
    )
    assert top_for(one_room(devices=(camera,), walls=walls), camera) == pytest.approx(1.1)


def test_what_is_fixed_to_a_leaf_stays_there() -> None:
    contact = on_opening("contact", "pane")
    site = one_room(devices=(contact,), openings=(window("pane", "north", 2.5),))
    assert moved_up_or_down(site, contact, 1.0) == ()


def test_no_place_under_a_flat_ceiling_that_is_too_low() -> None:
    overhead = on_ceiling("round", "round", 2.0, 2.0)
    assert moved_under_ceiling(one_room(devices=(overhead,)), overhead, low_m=2.5, high_m=3.0) == ()

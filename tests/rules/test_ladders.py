"""Where ladders stand, and which window is nearest."""

from __future__ import annotations

import pytest

from common.houses import on_wall, one_room, window
from common.room_over_room import back_addition, room_over_room
from wardwright.model.fabric import Space
from wardwright.model.placement import Standing, standing
from wardwright.rules.ladders import (
    height_over_ground,
    is_firm_below,
    is_over_balcony,
    is_served_on_foot,
    ladder_foot,
    nearest_window,
)

# Off the upper north wall, looking north: 2.0 m up, so 4.85 m above the ground.
PLACE = Standing("upper", 2.5, 4.34, 2.0, 90.0)


def test_the_foot_stands_one_in_four() -> None:
    site = room_over_room()
    assert height_over_ground(site, PLACE) == pytest.approx(4.85)
    assert ladder_foot(site, PLACE) == pytest.approx((2.5, 4.34 + 4.85 / 4))


@pytest.mark.parametrize(
    ("kind", "is_firm"), [("flat-roof", False), ("shed", False), ("car", True), ("bin", True)]
)
def test_what_a_ladder_stands_on(kind: str, is_firm: bool) -> None:
    site = room_over_room(ground=back_addition(kind=kind))
    assert is_firm_below(site, PLACE) == is_firm
    assert is_served_on_foot(site, PLACE, 6.0) == is_firm
    assert not is_served_on_foot(site, PLACE, 4.0)


def test_a_room_of_ours_below_is_a_roof() -> None:
    kitchen = Space(
        id="kitchen", name="Kitchen", storey="ground", outline_m=((0, 4.3), (5, 4.3), (5, 8), (0, 8))
    )
    site = room_over_room()
    assert not is_firm_below(site.model_copy(update={"spaces": (*site.spaces, kitchen)}), PLACE)


def test_a_balcony_serves_what_hangs_over_it() -> None:
    balcony = Space(
        id="balcony",
        name="Balcony",
        storey="upper",
        use="balcony",
        outline_m=((0, 4.3), (5, 4.3), (5, 5.5), (0, 5.5)),
    )
    site = room_over_room(ground=back_addition())
    with_it = site.model_copy(update={"spaces": (*site.spaces, balcony)})
    assert not is_over_balcony(site, PLACE)
    assert is_served_on_foot(with_it, PLACE, 6.0)
    assert not is_over_balcony(with_it, PLACE._replace(height_m=3.1))


def test_the_nearest_window_that_opens() -> None:
    """The window's head is 2.1 m up and its east jamb at x = 3.1: from x = 4.0, 0.9 m aside and 0.4 m up."""
    camera = on_wall("cam", "camera-outside", "upper-north", 1.15, side="right", height_m=2.5)
    site = room_over_room(devices=(camera,))
    found = nearest_window(site, standing(site, camera))
    assert found is not None
    assert found.opening.id == "bedroom-window"
    assert found.distance_m == pytest.approx((0.9**2 + 0.04**2 + 0.4**2) ** 0.5)
    fixed = one_room(openings=(window("pane", "north", 2.5, hinge="fixed"),))
    assert nearest_window(fixed, Standing("ground", 2.5, 4.34, 2.0, 90.0)) is None

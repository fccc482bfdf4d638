"""Places on outer faces."""

from __future__ import annotations

import pytest

from common.houses import on_wall, one_room, window
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground
from wardwright.rules.finding import Mend
from wardwright.rules.outside_spots import facing_off_its_wall, moved_outside, outer_spots


def moved(site: Site, **limits: float) -> tuple[Mend, ...]:
    usual = {"low_m": 2.2, "high_m": 4.5, "out_of_reach_m": 2.5, "ladder_m": 6.0}
    return moved_outside(site, site.devices[0], **(usual | limits))


def camera(height_m: float = 1.0, offset_m: float = 2.0) -> Site:
    return one_room(
        devices=(on_wall("cam", "camera-outside", "south", offset_m, side="right", height_m=height_m),)
    )


def test_they_lie_on_outer_faces_only() -> None:
    spots = outer_spots(one_room())
    assert {spot.wall for spot in spots} == {"south", "east", "north", "west"}
    assert {spot.side for spot in spots} == {"right"}
    assert all(not (0 <= spot.x_m <= 5 and 0 <= spot.y_m <= 4) for spot in spots)


def test_a_party_wall_and_a_neighbours_ground_have_none() -> None:
    walls = tuple(wall.model_copy(update={"is_exterior": wall.id != "east"}) for wall in one_room().walls)
    ground = Ground(boundary_m=((-5, -5), (6, -5), (6, 4.2), (-5, 4.2)))
    assert {spot.wall for spot in outer_spots(one_room(walls=walls, ground=ground))} == {"south", "west"}


def test_it_looks_off_its_wall_wherever_it_is_aimed() -> None:
    site = camera()
    turned = site.devices[0].model_copy(update={"heading_deg": 200.0})
    assert facing_off_its_wall(site, turned).heading_deg == pytest.approx(-90.0)


def test_straight_up_before_anywhere_else() -> None:
    (mend,) = moved(camera())
    assert dict(mend.values) == {"height_m": pytest.approx(2.35)}


def test_aside_where_a_window_is_in_the_way() -> None:
    """A window from x = 1.4 to 2.6 whose head is at 2.3 m: 2.35 m is too near to it."""
    site = camera().model_copy(update={"openings": (window("pane", "south", 2.15, head_m=2.3),)})
    (mend,) = moved(site)
    values = dict(mend.values)
    assert values["wall"] == "south"
    # 0.15 m beside the jambs at 1.55 and 2.75 m, in steps of 0.25 m from 0.15 m: 1.4 m or 2.9 m.
    assert values["offset_m"] == pytest.approx(1.4)


def test_nowhere_that_a_ladder_does_not_reach() -> None:
    assert moved(camera(), ladder_m=2.0) == ()
    assert moved(camera(), out_of_reach_m=3.0) == ()

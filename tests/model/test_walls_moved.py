from __future__ import annotations

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from common.houses import on_wall, one_room, opening, radiator, two_rooms_and_hall
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.validation import problems
from wardwright.model.walls_moved import with_wall_moved


def area(site: Site, space: str) -> float:
    return float(shapely.Polygon(site.space(space).outline_m).area)


def moved(site: Site, wall: str, by_m: float) -> Site:
    return with_wall_moved(site, site.wall(wall), by_m=by_m)


def test_the_rooms_on_both_sides_share_the_floor_anew() -> None:
    # The study's wall runs north: its left is the hall. To the right by half a metre: the hall grows by 0.5 x 6.
    after = moved(two_rooms_and_hall(), "study-wall", -0.5)
    assert area(after, "hall") == pytest.approx(2.5 * 6)
    assert area(after, "study") == pytest.approx(3.5 * 6)
    assert area(after, "kitchen") == pytest.approx(4.0 * 6)


def test_what_is_fixed_to_it_goes_along() -> None:
    site = two_rooms_and_hall(devices=(on_wall("unit", "unit", "study-wall", 2.0),))
    before, after = (
        standing(site, site.devices[0]),
        standing(moved(site, "study-wall", -0.5), site.devices[0]),
    )
    assert (after.x_m - before.x_m, after.y_m - before.y_m) == pytest.approx((0.5, 0.0))
    assert moved(site, "study-wall", -0.5).opening("study-door") == site.opening("study-door")


def test_walls_that_end_at_it_grow_and_what_is_on_them_stays() -> None:
    site = one_room(
        openings=(opening("door", "south", 2.65), opening("back", "north", 2.65)),
        devices=(on_wall("fan-1", "fan", "south", 1.0), on_wall("fan-2", "fan", "north", 1.0)),
    )
    # The west wall runs south: its right is the open air. Half a metre out.
    after = moved(site, "west", -0.5)
    assert after.wall("south").line_m[0] == pytest.approx((-0.65, -0.15))
    assert after.wall("north").line_m[1] == pytest.approx((-0.65, 4.15))
    for device in site.devices:
        there = standing(after, after.device(device.id))
        assert (there.x_m, there.y_m) == pytest.approx(
            (standing(site, device).x_m, standing(site, device).y_m)
        )
    assert after.opening("door").offset_m == pytest.approx(3.15)
    assert after.opening("back").offset_m == pytest.approx(2.65)
    assert area(after, "living") == pytest.approx(5.5 * 4)
    assert problems(after) == ()


def test_furniture_against_it_goes_along_and_other_furniture_stays() -> None:
    by_the_wall = radiator(0.5, 0.05)
    apart = radiator(2.5, 2.0, id="stove", name="stove")
    after = moved(one_room(fixtures=(by_the_wall, apart)), "south", -1.0)
    assert [fixture.centre_m for fixture in after.fixtures] == [pytest.approx((0.5, -0.95)), (2.5, 2.0)]


def test_the_house_still_holds_together() -> None:
    assert problems(two_rooms_and_hall()) == ()
    for wall in ("study-wall", "kitchen-wall", "east", "north"):
        assert problems(moved(two_rooms_and_hall(), wall, 0.3)) == (), wall


@given(
    st.sampled_from(("study-wall", "kitchen-wall", "south", "east", "north", "west")), st.floats(-0.8, 0.8)
)
def test_there_and_back_is_where_it_was(wall: str, by_m: float) -> None:
    before = two_rooms_and_hall()
    back = moved(moved(before, wall, by_m), wall, -by_m)
    for old, new in zip(before.walls, back.walls, strict=True):
        assert new.line_m[0] == pytest.approx(old.line_m[0], abs=1e-9)
        assert new.line_m[1] == pytest.approx(old.line_m[1], abs=1e-9)
    for old, new in zip(before.spaces, back.spaces, strict=True):
        assert shapely.Polygon(new.outline_m).equals_exact(shapely.Polygon(old.outline_m), 1e-9)

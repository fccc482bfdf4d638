import numpy as np
import pytest
import shapely

from common.houses import one_room, opening, two_rooms_and_hall, window
from wardwright.geometry.rays import ray_ranges
from wardwright.model.fabric import Slope, Wall
from wardwright.model.fixture import Fixture
from wardwright.model.surfaces import (
    Level,
    ceilings,
    clear_of_walls,
    level_of,
    levels_by_stairs,
    solid,
    surfaces,
    way_in_areas,
)

WINDOW = window("window", "east", 2.15, sill_m=0.9, head_m=2.1, hinge="fixed")
EAST_DOOR = opening("door", "east", 2.15, head_m=2.0)


def level(**parts: object) -> Level:
    return level_of(one_room(**parts), "ground")


def eastward(one: Level, *rises: float, **facts: object) -> list[float]:
    """How far rays go from (1, 2), 1.5 m up, toward the east wall at x = 5."""
    reached = ray_ranges((1.0, 2.0, 1.5), ([0.0] * len(rises), rises), surfaces(one, **facts))  # type: ignore[arg-type] # by name
    return [float(value) for value in reached]


def test_walls_stop_sight_at_their_inner_face() -> None:
    assert eastward(level(), 0.0) == pytest.approx([4.0])


def test_under_a_sill_and_over_a_head_is_wall_and_between_is_glass() -> None:
    one = level(openings=(WINDOW,))
    # By hand: 4 m away the heights are 1.5 + 4 x rise: 0.7, 1.5, 2.3.
    assert eastward(one, -0.2, 0.0, 0.2) == pytest.approx([4.0, 4.15, 4.0])
    assert eastward(one, -0.2, 0.0, 0.2, medium="light") == pytest.approx([4.0, np.inf, 4.0])


def test_a_door_taken_away_leaves_its_head() -> None:
    one = level(openings=(EAST_DOOR,))
    assert eastward(one, 0.0, 0.2, leaves="away") == pytest.approx([np.inf, 4.0])
    assert eastward(one, 0.0, 0.2) == pytest.approx([4.15, 4.0])


def test_furniture_stands_on_the_storey_s_floor() -> None:
    shelf = Fixture(id="shelf", name="shelf", storey="ground", centre_m=(3.0, 2.0), size_m=(0.4, 2.0), base_m=1.2,
                    height_m=0.6)  # fmt: skip
    one = level(fixtures=(shelf,))
    raised = Level(one.storey.model_copy(update={"elevation_m": 3.0}), one.parts)
    assert eastward(one, 0.0) == pytest.approx([1.8])
    assert ray_ranges((1.0, 2.0, 4.5), ([0.0], [0.0]), surfaces(raised)) == pytest.approx([1.8])


def test_a_low_wall_is_seen_over() -> None:
    low = Wall(id="low", storey="ground", line_m=((3.0, 0.0), (3.0, 4.0)), thickness_m=0.1, height_m=1.1)
    site = one_room()
    one = level_of(site.model_copy(update={"walls": (*site.walls, low)}), "ground")
    assert eastward(one, 0.0, -0.3) == pytest.approx([4.0, 1.95])


def test_the_order_of_openings_changes_nothing() -> None:
    site = two_rooms_and_hall()
    mixed = site.model_copy(update={"openings": site.openings[::-1], "walls": site.walls[::-1]})
    assert np.array_equal(
        surfaces(level_of(site, "ground")).panels, surfaces(level_of(mixed, "ground")).panels
    )


def test_openings_are_holes_in_the_solid_walls() -> None:
    walls = solid(level(openings=(EAST_DOOR,)).parts)
    assert not shapely.intersects_xy(walls, 5.15, 2.0)
    assert shapely.intersects_xy(walls, 5.15, 3.0)


def test_a_device_inside_a_thick_wall_is_brought_before_it() -> None:
    one = level()
    x, y = clear_of_walls(one, (-0.05, 2.0), (1.0, 0.0))
    assert 0.0 <= x <= 0.03
    assert y == 2.0
    assert clear_of_walls(one, (1.0, 2.0), (1.0, 0.0)) == (1.0, 2.0)


def test_ways_in_are_those_from_outside_into_ours() -> None:
    site = two_rooms_and_hall()
    assert len(way_in_areas(level_of(site, "ground"))) == 3  # front door, two windows; not the inside doors
    theirs = tuple(space.model_copy(update={"belongs": "neighbour"}) for space in site.spaces)
    assert way_in_areas(level_of(site.model_copy(update={"spaces": theirs}), "ground")) == ()


def test_the_lowest_of_the_slopes_is_the_ceiling() -> None:
    one = level()
    slope = Slope(corners_m=((0, 0, 1.0), (2.0, 0, 3.0), (2.0, 4, 3.0), (0, 4, 1.0)))
    sloped = Level(one.storey.model_copy(update={"slopes": (slope,)}), one.parts)
    # By hand: 1 m at x = 0, rising 1 in 1: cells of 1 m have their middles at 0.5, 1.5, 2.5 ...
    assert ceilings(sloped, (0.0, 0.0, 1.0, 4, 1))[0] == pytest.approx([1.5, 2.4, 2.4, 2.4])
    assert sloped.ceiling_m == 3.0


def test_without_stairs_no_storey_is_beside_another() -> None:
    assert levels_by_stairs(one_room(), "ground") == ()

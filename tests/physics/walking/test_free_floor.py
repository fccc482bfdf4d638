from __future__ import annotations

import numpy as np
import pytest
import shapely

from wardwright.physics.walking.free_floor import MANY_CORNERS, Passages, Rooms, free_floor

RADIUS = 0.22
NOTHING = shapely.Polygon()
NO_PASSAGES = Passages(np.empty((0, 2)), np.empty((0, 2)), np.empty(0), np.empty(0))


def rooms_of(whole: shapely.Geometry, passages: Passages = NO_PASSAGES, *spaces: shapely.Polygon) -> Rooms:
    return Rooms(whole, spaces, passages)


def two_rooms(width: float) -> shapely.Geometry:
    parts = [
        shapely.box(0, 0, 3, 3),
        shapely.box(3.1, 0, 6, 3),
        shapely.box(2.99, 1.5 - width / 2, 3.11, 1.5 + width / 2),
    ]
    return shapely.union_all(parts)


def doorway(width: float) -> Passages:
    return Passages(np.array([[3.05, 1.5]]), np.array([[1.0, 0.0]]), np.array([0.05]), np.array([width]))


@pytest.mark.parametrize("width", [0.2, 0.43, 0.5, 0.9])
def test_a_doorway_stays_passable_however_narrow(width: float) -> None:
    free = free_floor(two_rooms(width), NOTHING, rooms_of(two_rooms(width), doorway(width)), radius=RADIUS)
    assert free.geom_type == "Polygon"
    assert two_rooms(width).buffer(1e-9).covers(free)


def test_a_doorway_with_a_cupboard_before_it_stays_passable() -> None:
    cupboard = shapely.box(3.15, 0.9, 3.6, 2.1)
    free = free_floor(two_rooms(0.8), cupboard, rooms_of(two_rooms(0.8), doorway(0.8)), radius=RADIUS)
    assert free.geom_type == "Polygon"


def test_a_wall_without_a_doorway_is_not_opened() -> None:
    rooms = shapely.union_all([shapely.box(0, 0, 3, 3), shapely.box(3.1, 0, 6, 3)])
    assert len(shapely.get_parts(free_floor(rooms, NOTHING, rooms_of(rooms), radius=RADIUS))) == 2


def test_a_doorway_to_outside_leads_nowhere_and_breaks_nothing() -> None:
    room = shapely.union_all([shapely.box(0, 0, 3, 3), shapely.box(2.99, 1.3, 3.11, 1.7)])
    free = free_floor(room, NOTHING, rooms_of(room, doorway(0.4)), radius=RADIUS)
    # The body's rim reaches a little into the opening.
    assert free.geom_type == "Polygon"
    assert 2.56**2 <= free.area < 2.56**2 + 0.03


def test_furniture_that_bars_a_room_is_passed_where_it_is_thinnest() -> None:
    bar = shapely.box(2.0, 0, 2.4, 3)
    free = free_floor(shapely.box(0, 0, 6, 3), bar, rooms_of(shapely.box(0, 0, 6, 3)), radius=RADIUS)
    assert free.geom_type == "Polygon"


def test_furniture_is_passed_nearer_than_walls() -> None:
    free = free_floor(
        shapely.box(0, 0, 6, 3), shapely.box(2, 0, 3, 2.5), rooms_of(shapely.box(0, 0, 6, 3)), radius=RADIUS
    )
    assert free.covers(shapely.Point(2.5, 2.65))
    assert not free.covers(shapely.Point(2.5, 2.55))
    assert not free.covers(shapely.Point(2.5, 2.85))


def test_scraps_are_left_out_but_a_small_room_alone_is_kept() -> None:
    scrap = shapely.union_all([shapely.box(0, 0, 4, 4), shapely.box(10, 0, 10.8, 0.8)])
    assert free_floor(scrap, NOTHING, rooms_of(scrap), radius=RADIUS).geom_type == "Polygon"
    alone = free_floor(
        shapely.box(0, 0, 0.8, 0.8), NOTHING, rooms_of(shapely.box(0, 0, 0.8, 0.8)), radius=RADIUS
    )
    assert alone.area == pytest.approx(0.36**2)


def test_many_round_columns_are_cut_back_and_only_leave_more_room() -> None:
    columns = [shapely.Point(x, y).buffer(0.3, quad_segs=24) for x in (2, 4, 6, 8) for y in (2, 4)]
    room = shapely.box(0, 0, 10, 6).difference(shapely.union_all(columns))
    free = free_floor(room, NOTHING, rooms_of(room), radius=RADIUS)
    assert len(shapely.get_coordinates(free)) < MANY_CORNERS
    assert free.area < room.area
    assert free.buffer(1e-9).covers(room.buffer(-RADIUS, quad_segs=64))


def test_no_floor_is_no_floor() -> None:
    assert free_floor(NOTHING, NOTHING, rooms_of(NOTHING), radius=RADIUS).is_empty


def test_a_closet_too_small_to_stand_in_is_reached_into() -> None:
    room, closet = shapely.box(0, 0, 3, 3), shapely.box(3.1, 1.3, 3.5, 2.8)
    floor = shapely.union_all([room, closet, shapely.box(2.99, 1.3, 3.11, 1.7)])
    without = free_floor(floor, NOTHING, rooms_of(floor, doorway(0.4)), radius=RADIUS)
    assert not without.covers(shapely.Point(3.3, 2.6))
    free = free_floor(floor, NOTHING, rooms_of(floor, doorway(0.4), room, closet), radius=RADIUS)
    assert free.geom_type == "Polygon"
    assert free.covers(shapely.Point(3.3, 2.6))
    assert floor.covers(free)


def test_a_wall_built_before_a_doorway_shuts_it_and_opens_nothing() -> None:
    floor = two_rooms(0.8)
    wall = shapely.box(3.25, 0.0, 3.35, 3.0)
    rooms = rooms_of(floor, doorway(0.8))
    before = free_floor(floor, NOTHING, rooms, radius=RADIUS)
    after = free_floor(floor.difference(wall), NOTHING, rooms, radius=RADIUS)
    assert after.difference(before).area < 1e-12
    assert len(shapely.get_parts(after)) == 2

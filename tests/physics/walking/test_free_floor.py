from __future__ import annotations

import numpy as np
import pytest
import shapely

from wardwright.physics.walking.free_floor import MANY_CORNERS, Passages, free_floor

RADIUS = 0.22
NOTHING = shapely.Polygon()
NO_PASSAGES = Passages(np.empty((0, 2)), np.empty((0, 2)), np.empty(0), np.empty(0))


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
    free = free_floor(two_rooms(width), NOTHING, doorway(width), radius=RADIUS)
    assert free.geom_type == "Polygon"
    assert two_rooms(width).buffer(1e-9).covers(free)


def test_a_doorway_with_a_cupboard_before_it_stays_passable() -> None:
    cupboard = shapely.box(3.15, 0.9, 3.6, 2.1)
    free = free_floor(two_rooms(0.8), cupboard, doorway(0.8), radius=RADIUS)
    assert free.geom_type == "Polygon"


def test_a_wall_without_a_doorway_is_not_opened() -> None:
    rooms = shapely.union_all([shapely.box(0, 0, 3, 3), shapely.box(3.1, 0, 6, 3)])
    assert len(shapely.get_parts(free_floor(rooms, NOTHING, NO_PASSAGES, radius=RADIUS))) == 2


def test_a_doorway_to_outside_leads_nowhere_and_breaks_nothing() -> None:
    room = shapely.union_all([shapely.box(0, 0, 3, 3), shapely.box(2.99, 1.3, 3.11, 1.7)])
    free = free_floor(room, NOTHING, doorway(0.4), radius=RADIUS)
    # The body's rim reaches a little into the opening.
    assert free.geom_type == "Polygon"
    assert 2.56**2 <= free.area < 2.56**2 + 0.03


def test_furniture_that_bars_a_room_is_passed_where_it_is_thinnest() -> None:
    bar = shapely.box(2.0, 0, 2.4, 3)
    free = free_floor(shapely.box(0, 0, 6, 3), bar, NO_PASSAGES, radius=RADIUS)
    assert free.geom_type == "Polygon"


def test_furniture_is_passed_nearer_than_walls() -> None:
    free = free_floor(shapely.box(0, 0, 6, 3), shapely.box(2, 0, 3, 2.5), NO_PASSAGES, radius=RADIUS)
    assert free.covers(shapely.Point(2.5, 2.65))
    assert not free.covers(shapely.Point(2.5, 2.55))
    assert not free.covers(shapely.Point(2.5, 2.85))


def test_scraps_are_left_out_but_a_small_room_alone_is_kept() -> None:
    scrap = shapely.union_all([shapely.box(0, 0, 4, 4), shapely.box(10, 0, 10.8, 0.8)])
    assert free_floor(scrap, NOTHING, NO_PASSAGES, radius=RADIUS).geom_type == "Polygon"
    alone = free_floor(shapely.box(0, 0, 0.8, 0.8), NOTHING, NO_PASSAGES, radius=RADIUS)
    assert alone.area == pytest.approx(0.36**2)


def test_many_round_columns_are_cut_back_and_only_leave_more_room() -> None:
    columns = [shapely.Point(x, y).buffer(0.3, quad_segs=24) for x in (2, 4, 6, 8) for y in (2, 4)]
    room = shapely.box(0, 0, 10, 6).difference(shapely.union_all(columns))
    free = free_floor(room, NOTHING, NO_PASSAGES, radius=RADIUS)
    assert len(shapely.get_coordinates(free)) < MANY_CORNERS
    assert free.area < room.area
    assert free.buffer(1e-9).covers(room.buffer(-RADIUS, quad_segs=64))


def test_no_floor_is_no_floor() -> None:
    assert free_floor(NOTHING, NOTHING, NO_PASSAGES, radius=RADIUS).is_empty


def test_a_closet_too_small_to_stand_in_is_reached_into() -> None:
    room, closet = shapely.box(0, 0, 3, 3), shapely.box(3.1, 1.3, 3.5, 1.7)
    floor = shapely.union_all([room, closet, shapely.box(2.99, 1.3, 3.11, 1.7)])
    without = free_floor(floor, NOTHING, doorway(0.4), radius=RADIUS)
    assert not without.intersects(closet.buffer(-0.1))
    free = free_floor(floor, NOTHING, doorway(0.4), radius=RADIUS, spaces=(room, closet))
    assert free.geom_type == "Polygon"
    assert free.intersects(closet.buffer(-0.1))
    assert floor.covers(free)

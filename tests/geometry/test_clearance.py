from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from wardwright.geometry.clearance import SHORTFALL, figure, grown, shrunk, without_tiny_corners

L_ROOM = shapely.Polygon([(0, 0), (4, 0), (4, 2), (2, 2), (2, 4), (0, 4)])


def test_a_quarter_turn_maps_the_figure_onto_itself_exactly() -> None:
    corners = figure(0.22)
    turned = np.column_stack([-corners[:, 1], corners[:, 0]])
    assert {tuple(c) for c in corners.tolist()} == {tuple(c) for c in (turned + 0.0).tolist()}


@pytest.mark.parametrize("radius", [0.05, 0.22, 0.4])
def test_the_clearance_is_never_more_than_the_true_one_and_at_most_the_shortfall_less(radius: float) -> None:
    free = shrunk(L_ROOM, radius)
    assert free.buffer(1e-9).covers(L_ROOM.buffer(-radius, quad_segs=64))
    assert L_ROOM.exterior.distance(free) >= radius * (1 - SHORTFALL) - 1e-12
    assert L_ROOM.buffer(-radius * (1 - SHORTFALL) + 1e-9, quad_segs=64).covers(free)


def test_what_is_narrower_than_the_body_closes() -> None:
    rooms = shapely.union_all([shapely.box(0, 0, 2, 2), shapely.box(2, 0.8, 3, 1.2), shapely.box(3, 0, 5, 2)])
    assert len(shapely.get_parts(shrunk(rooms, 0.19))) == 1
    assert len(shapely.get_parts(shrunk(rooms, 0.22))) == 2


@given(st.floats(0, 4), st.floats(0, 4), st.floats(0.02, 3), st.floats(0, 180))
def test_more_walls_never_leave_more_room(x: float, y: float, length: float, turn: float) -> None:
    wall = shapely.affinity.rotate(shapely.box(x, y, x + length, y + 0.1), turn)
    before, after = shrunk(L_ROOM, 0.22), shrunk(L_ROOM.difference(wall), 0.22)
    assert after.difference(before).area < 1e-12


def test_growing_and_shrinking_are_the_same_from_either_side() -> None:
    room, box = shapely.box(0, 0, 4, 4), shapely.box(1, 1, 2, 2)
    inner = shapely.box(0.3, 0.3, 3.7, 3.7)
    assert (
        shrunk(room.difference(box), 0.3).symmetric_difference(inner.difference(grown(box, 0.3))).area < 1e-12
    )


def test_no_radius_changes_nothing() -> None:
    assert shrunk(L_ROOM, 0.0).equals(L_ROOM)
    assert grown(L_ROOM, 0.0).equals(L_ROOM)


def test_nothing_stays_nothing() -> None:
    assert shrunk(shapely.Polygon(), 0.2).is_empty
    assert without_tiny_corners(shapely.Polygon(), 0.01).is_empty


def test_cutting_back_a_round_column_only_leaves_more_room_and_stays_within_the_tolerance() -> None:
    column = shapely.Point(2, 2).buffer(0.5, quad_segs=48)
    room = shapely.box(0, 0, 4, 4).difference(column)
    simpler = without_tiny_corners(room, 0.01)
    assert simpler.covers(room)
    assert len(shapely.get_coordinates(simpler)) < len(shapely.get_coordinates(room)) / 4
    assert not simpler.intersects(column.buffer(-0.0101))


def test_cutting_back_leaves_plain_corners_alone() -> None:
    assert without_tiny_corners(L_ROOM, 0.01).equals(L_ROOM)

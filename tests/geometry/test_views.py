from __future__ import annotations

import numpy as np
import pytest
import shapely

from common.visibility_graph import invented_floor
from wardwright.geometry.corners import corners_of
from wardwright.geometry.raster import FloatArray
from wardwright.geometry.views import Views, sees, views_at_corners, views_round

NO_LINES = np.empty((0, 2, 2))
L_ROOM = shapely.Polygon([(0, 0), (4, 0), (4, 2), (2, 2), (2, 4), (0, 4)])


def seen_from_first(views: Views, points: FloatArray) -> list[bool]:
    sectors = np.tile(np.arange(4), len(points))
    return [bool(s) for s in sees(views, sectors, np.repeat(points, 4, axis=0)).reshape(-1, 4).any(axis=1)]


def test_round_the_corner_of_the_l_room() -> None:
    views = views_round(np.array([[3.0, 0.5]]), corners_of(L_ROOM), crossing_lines=NO_LINES)
    # The hidden corner is cut at (2/3, 4): the line from (3, 0.5) by (2, 2). physics.md 7 (derived there).
    points = np.array(
        [[2 / 3, 4.0], [2 / 3 + 0.01, 3.99], [2 / 3 - 0.01, 3.99], [2.0, 2.0], [1.9, 3.0], [0.1, 0.1]]
    )
    assert seen_from_first(views, points) == [True, False, True, True, False, True]


def test_the_area_seen_in_the_l_room_is_32_thirds() -> None:
    views = views_round(np.array([[3.0, 0.5]]), corners_of(L_ROOM), crossing_lines=NO_LINES)
    grid = np.stack(np.meshgrid(np.arange(0.01, 4, 0.02), np.arange(0.01, 4, 0.02)), axis=-1).reshape(-1, 2)
    inside = grid[shapely.contains_xy(L_ROOM, grid[:, 0], grid[:, 1])]
    # 32/3 = 10.6666667: physics.md 7 (derived there); the rim of the seen area counts to half a cell.
    assert sum(seen_from_first(views, inside)) * 0.02**2 == pytest.approx(32 / 3, abs=0.03)


def test_sight_agrees_with_shapely_between_random_points_of_a_furnished_floor() -> None:
    area, lines = invented_floor(5)
    draw = np.random.default_rng(1)
    points = draw.uniform((0, 0), (12, 10), (4000, 2))
    points = points[shapely.contains_xy(area.buffer(-1e-6), points[:, 0], points[:, 1])][:600]
    eyes, shown = points[:40], points[40:]
    views = views_round(eyes, corners_of(area), crossing_lines=lines)
    shapely.prepare(area)
    for i, eye in enumerate(eyes):
        sectors = np.tile(np.arange(4 * i, 4 * i + 4), len(shown))
        seen = sees(views, sectors, np.repeat(shown, 4, axis=0)).reshape(-1, 4).any(axis=1)
        expected = shapely.covers(
            area, shapely.linestrings(np.stack([np.tile(eye, (len(shown), 1)), shown], axis=1))
        )
        assert (seen == expected).all()


def test_a_corner_looks_only_where_a_taut_line_can_go() -> None:
    corners = corners_of(shapely.box(0, 0, 10, 10).difference(shapely.box(4, 4, 6, 6)))
    views = views_at_corners(corners, crossing_lines=NO_LINES)
    corner = int(np.flatnonzero((corners.points == [6.0, 6.0]).all(axis=1))[0])
    own = [2 * corner, 2 * corner + 1]

    def is_seen(x: float, y: float) -> bool:
        return bool(sees(views, np.array(own), np.array([[x, y], [x, y]])).any())

    assert is_seen(8.0, 5.0)
    assert is_seen(5.0, 8.0)
    assert is_seen(6.0, 4.0)
    # Straight away from the block, no shortest way bends here.
    assert not is_seen(8.0, 8.0)
    assert not is_seen(4.0, 4.0)


def test_lines_passed_are_counted_piece_by_piece() -> None:
    corners = corners_of(shapely.box(0, 0, 6, 2))
    lines = np.array([[(2.0, 0.0), (2.0, 2.0)], [(4.0, 2.0), (4.0, 0.0)]])
    views = views_round(np.array([[1.0, 1.0]]), corners, crossing_lines=lines)
    east = views.crossings[(views.owners == 0) | (views.owners == 3)]
    west = views.crossings[(views.owners == 1) | (views.owners == 2)]
    assert sorted(set(east.tolist())) == [0, 1, 2]
    assert set(west.tolist()) == {0}


def test_nothing_is_seen_where_there_is_no_area() -> None:
    views = views_round(np.empty((0, 2)), corners_of(shapely.Polygon()), crossing_lines=NO_LINES)
    assert sees(views, np.empty(0, dtype=np.int64), np.empty((0, 2))).tolist() == []

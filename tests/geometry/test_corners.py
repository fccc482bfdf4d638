from __future__ import annotations

import math

import numpy as np
import pytest
import shapely

from wardwright.geometry.corners import corners_of, cross, dot


def test_the_l_room_bends_at_one_corner() -> None:
    found = corners_of(shapely.Polygon([(0, 0), (4, 0), (4, 2), (2, 2), (2, 4), (0, 4)]))
    assert found.points.tolist() == [[2.0, 2.0]]
    assert found.turn.tolist() == pytest.approx([math.pi / 2])
    assert found.ahead.tolist() == [[0.0, 1.0]]


@pytest.mark.parametrize("is_reversed", [False, True])
def test_the_area_is_on_the_left_of_every_edge_however_the_rings_wind(is_reversed: bool) -> None:
    rings = [[(0, 0), (4, 0), (4, 4), (0, 4)], [(1, 1), (2, 1), (2, 2), (1, 2)]]
    shell, hole = (ring[::-1] if is_reversed else ring for ring in rings)
    area = shapely.Polygon(shell, [hole])
    edges = corners_of(area).edges
    along = edges[:, 1] - edges[:, 0]
    beside = edges.mean(axis=1) + 1e-3 * np.column_stack([-along[:, 1], along[:, 0]])
    assert shapely.contains_xy(area, beside[:, 0], beside[:, 1]).all()


def test_corners_on_a_straight_line_or_in_one_place_are_none() -> None:
    area = shapely.Polygon(
        [(0, 0), (1, 0), (1, 0), (2, 0), (3, 0), (3, 1e-12), (4, 0), (4, 3), (0, 3), (0, 1), (0, 0.5)]
    )
    assert len(corners_of(area).edges) == 4


def test_an_empty_area_has_no_edges() -> None:
    assert corners_of(shapely.Polygon()).edges.shape == (0, 2, 2)


def test_products() -> None:
    a, b = np.array([1.0, 2.0]), np.array([3.0, 5.0])
    assert (float(cross(a, b)), float(dot(a, b))) == (-1.0, 13.0)

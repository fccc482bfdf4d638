from __future__ import annotations

import pytest
import shapely

from wardwright.intake.outlines import largest, long_way, ring_of, strip_along


def test_of_nothing_there_is_no_largest() -> None:
    assert largest(shapely.Polygon()) is None


def test_ring_drops_corners_within_straight_sides() -> None:
    ring = ring_of(shapely.Polygon([(1, 0), (2, 0), (2, 2), (1, 2), (0, 2), (0, 0)]))
    assert len(ring) == 4
    assert shapely.Polygon(ring).exterior.is_ccw


def test_strip_of_a_turned_wall() -> None:
    wall = shapely.affinity.rotate(shapely.box(0, -0.1, 5, 0.1), 30, origin=(0, 0))
    strip = strip_along(wall, long_way(wall))
    assert strip.length == pytest.approx(5.0, abs=1e-3)
    assert strip.width == pytest.approx(0.2, abs=1e-3)
    assert strip.filled == pytest.approx(1.0, abs=1e-3)

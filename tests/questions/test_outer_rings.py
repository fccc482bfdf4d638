"""Outlines for drawing."""

from __future__ import annotations

import shapely

from wardwright.questions.outer_rings import outer_rings


def test_each_piece_is_one_ring_and_its_holes_are_left_aside() -> None:
    left, right = shapely.box(0.0, 0.0, 2.0, 1.0), shapely.box(3.0, 0.0, 4.0, 1.0)
    pierced = left.difference(shapely.box(0.5, 0.25, 1.0, 0.75))
    rings = outer_rings(shapely.union_all([pierced, right]))
    assert [len(ring) for ring in rings] == [4, 4]
    assert [
        shapely.Polygon(ring).equals(whole) for ring, whole in zip(rings, (left, right), strict=True)
    ] == [True, True]


def test_a_line_and_nothing_have_none() -> None:
    assert outer_rings(shapely.LineString([(0.0, 0.0), (1.0, 0.0)])) == ()
    assert outer_rings(shapely.Polygon()) == ()

import math

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from wardwright.geometry.detours import ways_round

SQUARE = [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)]
PLACE = st.tuples(st.floats(-6.0, 8.0), st.floats(-6.0, 8.0))


def by_hull(start: tuple[float, float], end: tuple[float, float]) -> float:
    """The same by the hull of the block and both places, whose rim holds both ways round."""
    block = shapely.Polygon(SQUARE)
    if not block.buffer(-1e-6).intersects(shapely.LineString([start, end])):
        return math.dist(start, end)
    rim = shapely.MultiPoint([*SQUARE, start, end]).convex_hull.exterior
    first, last = sorted(rim.project(shapely.Point(p)) for p in (start, end))
    return min(last - first, rim.length - (last - first))


@given(PLACE, PLACE)
def test_it_is_as_long_as_the_rim_of_the_hull(start: tuple[float, float], end: tuple[float, float]) -> None:
    block = shapely.Polygon(SQUARE)
    if block.buffer(0.01).intersects(shapely.MultiPoint([start, end])):
        return
    found = float(ways_round(SQUARE, [start], [end])[0, 0])
    assert found == pytest.approx(by_hull(start, end), abs=1e-4)


def test_a_place_in_a_recess_sees_straight_out() -> None:
    assert ways_round(SQUARE, [(1.0, 0.5)], [(1.0, 5.0)])[0, 0] == pytest.approx(4.5)


def test_along_a_face_nothing_is_in_the_way() -> None:
    found = ways_round(SQUARE, [(-1.0, -0.04)], [(3.0, -0.04), (3.0, 1.0)])
    # Past the corner at (2, 0), then to the second place.
    round_it = math.hypot(3.0, 0.04) + math.sqrt(2.0)
    assert found[0] == pytest.approx(np.array([4.0, round_it]))

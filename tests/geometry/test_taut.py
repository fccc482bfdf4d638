from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from common.visibility_graph import invented_floor
from wardwright.geometry.taut import crossed, is_crossed_from, links_from, net_of

NO_LINES = np.empty((0, 2, 2))
BLOCK = shapely.box(0, 0, 10, 10).difference(shapely.box(4, 4, 6, 6))


def test_the_sides_of_a_block_are_links_and_its_diagonals_are_not() -> None:
    links = net_of(BLOCK, NO_LINES).links
    assert links.lengths.tolist() == [2.0] * 4


def test_a_point_links_to_the_corners_a_taut_line_could_bend_at() -> None:
    net = net_of(BLOCK, NO_LINES)
    links = links_from(net, np.array([[1.0, 5.0]]))
    # The two far corners are hidden; both near ones stand in the way of something.
    assert sorted(net.corners.points[links.ends].tolist()) == [[4.0, 4.0], [4.0, 6.0]]
    assert links.lengths.tolist() == pytest.approx([10**0.5] * 2)
    # From before a corner, straight on, nothing bends there.
    assert links_from(net, np.array([[3.0, 3.0]])).ends.tolist() != []
    assert [4.0, 4.0] not in net.corners.points[links_from(net, np.array([[3.0, 3.0]])).ends].tolist()


def test_every_link_is_clear_and_counts_its_lines() -> None:
    area, lines = invented_floor(4)
    net = net_of(area, lines)
    ends = np.stack([net.corners.points[net.links.starts], net.corners.points[net.links.ends]], axis=1)
    ways = shapely.linestrings(ends)
    assert len(ways) > 100
    assert shapely.covers(area.buffer(1e-9), ways).all()
    counted = shapely.intersects(ways[:, None], shapely.linestrings(net.crossing_lines)[None]).sum(axis=1)
    assert (counted == net.links.crossings).all()
    assert set(net.line_numbers.tolist()) == set(range(len(lines)))


def test_a_line_through_a_corner_is_moved_off_it() -> None:
    net = net_of(BLOCK, np.array([[(4.0, 0.0), (4.0, 4.0)]]))
    assert 0 < abs(net.crossing_lines[0, 0, 0] - 4.0) < 0.01


def test_a_line_with_no_length_is_no_line() -> None:
    assert len(net_of(BLOCK, np.array([[(1.0, 1.0), (1.0, 1.0)]])).crossing_lines) == 0


def test_ways_that_only_touch_a_line_with_their_end_do_not_cross_it() -> None:
    line = np.array([[(2.0, -1.0), (2.0, 1.0)]])
    ways = np.array(
        [
            [(0.0, 0.0), (2.0, 0.0)],
            [(2.0, 0.0), (4.0, 0.0)],
            [(0.0, 0.0), (4.0, 0.0)],
            [(0.0, 2.0), (4.0, 2.0)],
        ]
    )
    assert np.isfinite(crossed(ways, line))[:, 0].tolist() == [False, False, True, False]


def test_an_empty_area_has_no_links() -> None:
    net = net_of(shapely.Polygon(), NO_LINES)
    assert len(net.links.starts) == 0
    assert len(links_from(net, np.array([[0.0, 0.0]])).starts) == 0


eighths = st.integers(-40, 40).map(lambda number: number / 8.0)
places = st.tuples(eighths, eighths)


@given(places, st.lists(places, min_size=1, max_size=8), st.lists(st.tuples(places, places), max_size=8))
def test_ways_from_one_place_are_crossed_where_crossed_says_so(
    start: tuple[float, float],
    ends: list[tuple[float, float]],
    lines: list[tuple[tuple[float, float], tuple[float, float]]],
) -> None:
    across = np.array(lines).reshape(-1, 2, 2)
    ways = np.array([[start, end] for end in ends])
    expected = np.isfinite(crossed(ways, across)).any(axis=1)
    assert is_crossed_from(start, np.array(ends), across).tolist() == expected.tolist()

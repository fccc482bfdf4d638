from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from common.visibility_graph import VisibilityGraph, invented_floor
from wardwright.geometry.clearance import shrunk
from wardwright.geometry.raster import Grid, grid_over
from wardwright.physics.walking.network import Costs, Join, Web, reach_from, times_on, way_to, web_of

NO_LINES = np.empty((0, 2, 2))
METRES = Costs(1.0, 1.0, 0.0)
BLOCK_ROOM = shapely.box(0, 0, 4, 4).difference(shapely.box(1, 0, 3, 2))


def time_between(web: Web, a: tuple[float, float], b: tuple[float, float], *, costs: Costs = METRES) -> float:
    reach = reach_from(web, 0, np.array(a), costs=costs)
    found = way_to(web, reach, (0, np.array(b)), costs=costs)
    return math.inf if found is None else found[0]


def disk_room(quad_segs: int) -> shapely.Geometry:
    return shapely.box(-4, -4, 4, 4).difference(shapely.Point(0, 0).buffer(1.0, quad_segs=quad_segs))


def test_round_the_block() -> None:
    web = web_of((BLOCK_ROOM,), (NO_LINES,), ())
    # 2 sqrt(0.25 + 2.25) + 2 = 5.16227766: physics.md 7 (derived there).
    assert time_between(web, (0.5, 0.5), (3.5, 0.5)) == pytest.approx(5.16227766, abs=5e-9)


@pytest.mark.parametrize(("sides", "expected"), [(32, 4.50971), (128, 4.51120)])
def test_round_the_disk_drawn_with_sides(sides: int, expected: float) -> None:
    # networkx + shapely on a disk of 32 and 128 sides: physics.md 7 (run there); a true disk: 4.51129917.
    web = web_of((disk_room(sides // 4),), (NO_LINES,), ())
    # The figure there depends on how the sides are turned, to the shortfall of one side.
    found = time_between(web, (-2.0, 0.0), (2.0, 0.0))
    assert found == pytest.approx(expected, abs=4 / sides**2)
    assert found < 4.51129917


@pytest.mark.parametrize("seed", [1, 2])
def test_times_to_cells_and_points_are_those_of_an_independent_visibility_graph(seed: int) -> None:
    area, lines = invented_floor(seed)
    free, start, costs = shrunk(area, 0.22), np.array([2.02, 1.53]), Costs(1 / 1.3, 1.0, 1.0)
    web, grid = web_of((free,), (lines,), ()), grid_over(free.bounds, cell=0.1)
    reach = reach_from(web, 0, start, costs=costs)
    times = times_on(web, reach, 0, grid=grid, costs=costs)
    exact = VisibilityGraph(free, lines, start, pace=1.3, pass_door=1.0)
    centres = grid.centres()
    inside = shapely.contains_xy(free, centres[..., 0], centres[..., 1])
    assert np.isfinite(times[inside]).all()
    assert np.isinf(times[~inside]).all()
    cells = np.argwhere(inside)
    for row, column in cells[np.random.default_rng(seed).choice(len(cells), 60, replace=False)]:
        expected = exact.time_to(centres[row, column])
        assert times[row, column] == pytest.approx(expected, abs=1e-9)
        found = way_to(web, reach, (0, centres[row, column]), costs=costs)
        assert found is not None
        assert found[0] == pytest.approx(expected, abs=1e-9)


BOXES = st.lists(
    st.tuples(
        st.floats(0.5, 5.5), st.floats(0.5, 5.5), st.floats(0.1, 1.5), st.floats(0.1, 1.5), st.floats(0, 90)
    ),
    max_size=6,
)
PLACES = st.tuples(st.floats(0.3, 5.7), st.floats(0.3, 5.7))


def cluttered(boxes: list[tuple[float, float, float, float, float]]) -> shapely.Geometry:
    solid = [
        shapely.affinity.rotate(shapely.box(x - w / 2, y - d / 2, x + w / 2, y + d / 2), turn)
        for x, y, w, d, turn in boxes
    ]
    return shapely.box(0, 0, 6, 6).difference(shapely.union_all(solid))


@given(BOXES, PLACES, PLACES)
def test_any_clutter_agrees_with_the_visibility_graph(
    boxes: list[tuple[float, float, float, float, float]], a: tuple[float, float], b: tuple[float, float]
) -> None:
    area = cluttered(boxes)
    inner = area.buffer(-1e-4)
    if not (inner.covers(shapely.Point(a)) and inner.covers(shapely.Point(b))):
        return
    web = web_of((area,), (NO_LINES,), ())
    exact = VisibilityGraph(area, NO_LINES, np.array(a), pace=1.0, pass_door=0.0).time_to(np.array(b))
    found = time_between(web, a, b)
    assert found == pytest.approx(exact, abs=1e-7)
    assert time_between(web, b, a) == pytest.approx(found, abs=1e-9)


@given(
    BOXES, st.tuples(st.floats(0, 5), st.floats(0, 5), st.floats(0.1, 4), st.floats(0, 180)), PLACES, PLACES
)
def test_a_wall_more_never_shortens_a_walk(
    boxes: list[tuple[float, float, float, float, float]],
    wall: tuple[float, float, float, float],
    a: tuple[float, float],
    b: tuple[float, float],
) -> None:
    x, y, length, turn = wall
    before = cluttered(boxes)
    after = before.difference(shapely.affinity.rotate(shapely.box(x, y, x + length, y + 0.1), turn))
    free = [shrunk(area, 0.22) for area in (before, after)]
    if not all(area.buffer(-1e-3).covers(shapely.Point(p)) for area in free for p in (a, b)):
        return
    first, second = (time_between(web_of((area,), (NO_LINES,), ()), a, b) for area in free)
    assert second >= first - 1e-9


def test_the_cheaper_of_two_doors_or_the_way_round_is_taken() -> None:
    rooms = shapely.box(0, 0, 6, 4).difference(shapely.box(2.95, 0, 3.05, 3))
    line = np.array([[(3.0, 3.0), (3.0, 4.0)]])
    web = web_of((rooms,), (line,), ())
    straight = time_between(web, (2.0, 3.5), (4.0, 3.5), costs=Costs(1.0, 1.0, 0.0))
    assert straight == pytest.approx(2.0)
    # A straight sight line through a doorway pays the door.
    assert time_between(web, (2.0, 3.5), (4.0, 3.5), costs=Costs(1.0, 1.0, 7.0)) == pytest.approx(9.0)
    assert time_between(web, (1.0, 3.5), (2.0, 3.5), costs=Costs(1.0, 1.0, 7.0)) == pytest.approx(1.0)


def test_a_far_doorless_way_beats_a_near_slow_door() -> None:
    rooms = shapely.box(0, 0, 6, 4).difference(shapely.union_all([shapely.box(2.95, 1, 3.05, 3)]))
    line = np.array([[(3.0, 0.0), (3.0, 1.0)]])
    web = web_of((rooms,), (line,), ())
    near = time_between(web, (2.5, 0.9), (3.5, 0.9), costs=Costs(1.0, 1.0, 0.5))
    assert near == pytest.approx(1.5, abs=0.01)
    far = time_between(web, (2.5, 0.9), (3.5, 0.9), costs=Costs(1.0, 1.0, 60.0))
    assert far == pytest.approx(0.1 + 2 * math.hypot(0.45, 2.1))


STOREYS = (shapely.box(0, 0, 6, 4), shapely.box(0, 0, 6, 4).difference(shapely.box(2, 1, 4, 3)))


def test_floors_meet_at_their_joins_only() -> None:
    web = web_of(STOREYS, (NO_LINES, NO_LINES), (Join(0, (5.0, 1.0), 1, (5.0, 3.0), 4.0),))
    costs = Costs(0.5, 1.0, 0.0)
    reach = reach_from(web, 0, np.array([1.0, 1.0]), costs=costs)
    found = way_to(web, reach, (1, np.array([5.0, 3.5])), costs=costs)
    assert found is not None
    assert found[0] == pytest.approx(4 * 0.5 + 4.0 + 0.5 * 0.5)
    grid = Grid(0.0, 0.0, 0.5, 12, 8)
    upper = times_on(web, reach, 1, grid=grid, costs=costs)
    assert upper[6, 10] == pytest.approx(2.0 + 4.0 + 0.5 * math.hypot(0.25, 0.25))
    # The hole in the upper floor has no time, and what lies behind it is walked round.
    assert np.isinf(upper[3, 5])
    assert upper[3, 0] > 6.0 + 0.5 * math.hypot(4.75, 1.25)
    # Back down again: the same time.
    back = reach_from(web, 1, np.array([5.0, 3.5]), costs=costs)
    lower = way_to(web, back, (0, np.array([1.0, 1.0])), costs=costs)
    assert lower is not None
    assert lower[0] == pytest.approx(found[0])


def test_a_join_between_two_parts_of_one_floor_is_used_when_it_is_quicker() -> None:
    rooms = shapely.union_all([shapely.box(0, 0, 2, 2), shapely.box(3, 0, 5, 2)])
    upper = shapely.box(0, 0, 5, 2)
    joins = (Join(0, (1.5, 1.0), 1, (1.5, 1.0), 3.0), Join(0, (3.5, 1.0), 1, (3.5, 1.0), 3.0))
    web = web_of((rooms, upper), (NO_LINES, NO_LINES), joins)
    assert time_between(web, (0.5, 1.0), (4.5, 1.0)) == pytest.approx(1 + 3 + 2 + 3 + 1)
    reach = reach_from(web, 0, np.array([0.5, 1.0]), costs=METRES)
    values = times_on(web, reach, 0, grid=Grid(0.0, 0.0, 0.5, 10, 4), costs=METRES)
    assert values[1, 8] == pytest.approx(9 + math.hypot(0.75, 0.25))


def test_where_there_is_no_way_there_is_no_time() -> None:
    rooms = shapely.union_all([shapely.box(0, 0, 2, 2), shapely.box(3, 0, 5, 2)])
    web = web_of((rooms, shapely.Polygon()), (NO_LINES, NO_LINES), ())
    assert math.isinf(time_between(web, (1.0, 1.0), (4.0, 1.0)))
    reach = reach_from(web, 0, np.array([1.0, 1.0]), costs=METRES)
    values = times_on(web, reach, 0, grid=Grid(0.0, 0.0, 0.5, 10, 4), costs=METRES)
    assert np.isfinite(values[:, :4]).all()
    assert np.isinf(values[:, 4:]).all()

"""Which steps shine through a pane on a point, held against straight lines."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.geometry.panes import Pane
from wardwright.geometry.raster import BoolArray
from wardwright.physics.sunlight.panes import (
    aims_of,
    bounds_of,
    by_time,
    in_rows,
    lit_sky,
    most_lit,
    row_bounds,
    shining,
)
from wardwright.physics.sunlight.year import Facing, Year, facing, sun_year

YEAR = sun_year(math.radians(51.5), 0.0, step=6.0, every_days=6)
PANE = Pane((1.0, 0.0), (0.0, -1.0), 1.4, 0.9, 2.1, 0.3)


def by_lines(pane: Pane, point: tuple[float, float, float], normal: float, year: Year = YEAR) -> BoolArray:
    """Whether the line to the middle of the sun passes both faces of the wall within the pane, step by step."""
    # The azimuth of the pane's outward normal is `normal`; the plan is turned accordingly.
    bearing = math.atan2(pane.normal[1], pane.normal[0]) + normal - year.azimuth
    toward = np.stack([np.cos(bearing), np.sin(bearing), np.tan(year.elevation)], axis=1)
    nx, ny = pane.normal
    outward = toward[:, 0] * nx + toward[:, 1] * ny
    passed = outward > 0.02
    for face in (-pane.depth / 2, pane.depth / 2):
        start = (point[0] - pane.middle[0] - face * nx) * nx + (point[1] - pane.middle[1] - face * ny) * ny
        with np.errstate(divide="ignore", invalid="ignore"):
            far = -start / outward
            x, y = point[0] + far * toward[:, 0], point[1] + far * toward[:, 1]
            z = point[2] + far * toward[:, 2]
        along = -(x - pane.middle[0]) * ny + (y - pane.middle[1]) * nx
        passed &= (np.abs(along) <= pane.width / 2) & (pane.sill <= z) & (z <= pane.head) & (far > 0.0)
    return passed


def of_one(order: Facing, pane: Pane, point: tuple[float, float, float]) -> BoolArray:
    mask = np.zeros(len(YEAR.day), dtype=np.bool_)
    mask[order.steps[shining(order, bounds_of(pane, [point]))]] = True
    return mask


@given(
    st.floats(-3.0, 5.0), st.floats(0.2, 6.0), st.floats(0.0, 2.4), st.floats(0.0, 6.28), st.floats(0.0, 0.5)
)
def test_as_straight_lines_say(x: float, y: float, z: float, normal: float, depth: float) -> None:
    pane = PANE._replace(depth=min(depth, 1.8 * y))
    mine = of_one(facing(YEAR, normal, spread=0.0), pane, (x, y, z))
    assert (mine == by_lines(pane, (x, y, z), normal)).mean() > 0.9998


@given(st.floats(-3.0, 5.0), st.floats(0.2, 6.0), st.floats(0.0, 2.4), st.floats(0.1, 1.0))
def test_a_wider_pane_never_shines_for_less(x: float, y: float, z: float, more: float) -> None:
    order = facing(YEAR, math.pi)
    wide = PANE._replace(width=PANE.width + more)
    assert not (of_one(order, PANE, (x, y, z)) & ~of_one(order, wide, (x, y, z))).any()


def test_half_the_disc_makes_a_beam_last_about_a_minute_longer_at_each_end() -> None:
    fine = sun_year(math.radians(51.5), 0.0, step=0.25, every_days=90)
    middle, whole = facing(fine, math.pi, spread=0.0), facing(fine, math.pi)
    point = bounds_of(PANE, [(1.0, 3.0, 1.0)])
    few, many = (len(shining(order, point)) for order in (middle, whole))
    beams = 1
    assert few > 100
    assert 2 * 60 / 60 * beams / 0.25 <= many - few <= 30


def test_a_lit_sky_is_the_union_of_what_lights_each_place() -> None:
    order = facing(YEAR, math.pi)
    places = [(0.5, 1.0, 0.0), (1.5, 2.0, 0.0), (1.0, 0.1, 0.0)]
    clear = np.arange(len(order.steps)) % 3 > 0
    union = np.zeros(len(order.steps), dtype=np.bool_)
    for index in range(3):
        union[shining(order, bounds_of(PANE, places), index=index)] = True
    painted = lit_sky(bounds_of(PANE, places))[order.bins] & clear
    assert np.count_nonzero(painted ^ (union & clear)) < 0.08 * np.count_nonzero(union & clear)
    assert np.count_nonzero((union & clear) & ~painted) < 0.005 * np.count_nonzero(union)
    assert union.any()


def test_aims_stay_within_the_pane() -> None:
    order = facing(YEAR, math.pi)
    at = bounds_of(PANE, [(1.0, 3.0, 1.0)])
    places = shining(order, at)
    aims = aims_of(order, at, places)
    assert (aims.turn > at.right[0]).all()
    assert (aims.turn < at.left[0]).all()
    profile = np.arctan(aims.rise / np.cos(aims.turn))
    assert (profile > at.low[0]).all()
    assert (profile < at.high[0]).all()


def test_outside_or_in_the_wall_nothing_comes_through() -> None:
    order = facing(YEAR, math.pi)
    for y in (-1.0, 0.0, 0.15):
        assert len(shining(order, bounds_of(PANE, [(1.0, y, 1.0)]))) == 0
    assert len(shining(order, bounds_of(PANE, [(1.0, 1.0, 1.0)]))) == pytest.approx(len(order.steps), rel=0.9)


def test_a_row_of_neighbours_is_lit_when_any_of_them_is() -> None:
    order = facing(YEAR, 2.6)
    rows = [(x / 10.0, y, 0.0) for y in (1.0, 2.5) for x in range(-5, 21)] + [(3.5, 1.0, 0.0)]
    shuffled = np.random.default_rng(4).permutation(rows)
    bounds = row_bounds(PANE, shuffled[in_rows(PANE, shuffled, cell=0.1)], cell=0.1)
    assert len(bounds.right) == 3
    each = lit_sky(bounds_of(PANE, rows))
    assert (lit_sky(bounds)[order.bins] == each[order.bins]).mean() > 0.999


def test_some_steps_of_an_order_by_time_are_the_same_steps() -> None:
    order = facing(YEAR, (math.pi, 2.0))
    kept = np.random.default_rng(5).random(len(order.steps)) < 0.4
    found = by_time(order, kept)
    assert (found.steps == np.sort(order.steps[kept])).all()
    assert (order.steps[found.places] == found.steps).all()
    assert (order.bins[found.places] == found.bins).all()
    assert len(by_time(order, np.zeros(len(order.steps), dtype=np.bool_)).steps) == 0


def test_the_points_that_are_lit_together_are_those_of_the_step_that_lights_most() -> None:
    order = facing(YEAR, math.pi)
    bounds = bounds_of(PANE, [(x / 4.0, 1.5, 0.0) for x in range(-8, 12)])
    places = np.arange(0, len(order.steps), 97)
    each = [most_lit(order, bounds, np.array([place])) for place in places]
    counts = [int(one.sum()) for one in each]
    assert (most_lit(order, bounds, places) == each[int(np.argmax(counts))]).all()
    assert 0 < max(counts) < 20

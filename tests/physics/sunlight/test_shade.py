"""What stands before the sun."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.geometry.panels import box, joined, sheets
from wardwright.geometry.rays import ray_ranges
from wardwright.physics.sunlight.panes import Aims
from wardwright.physics.sunlight.shade import WEDGE, in_the_way, reach_the_sun

EYE = (0.0, 0.0, 1.0)


def aims(low_deg: float = -40.0, high_deg: float = 40.0, rise: float = 0.3) -> Aims:
    turn = np.radians(np.linspace(low_deg, high_deg, 41))
    return Aims(turn, np.full(41, rise))


def test_a_wall_hides_what_is_behind_it_and_no_more() -> None:
    wall = sheets([(4.0, -10.0, 4.0, 0.0, 0.0, 9.0)])
    free = reach_the_sun(EYE, aims(), wall, normal=0.0)
    off = np.abs(aims().turn) > 1e-6
    assert (free == (aims().turn > 0.0))[off].all()


@given(
    st.tuples(st.floats(0.3, 6.0), st.floats(-9.0, 9.0), st.floats(0.3, 6.0), st.floats(-9.0, 9.0)),
    st.floats(0.0, 5.0),
    st.floats(0.0, 1.5),
)
def test_one_wall_before_every_line_hides_what_each_line_would_meet(
    ends: tuple[float, ...], top: float, rise: float
) -> None:
    wall, some = sheets([(*ends, 0.0, top)]), aims(-20.0, 35.0, rise)
    whole = np.isinf(ray_ranges(EYE, (some.turn, some.rise), wall))
    assert (reach_the_sun(EYE, some, wall, normal=0.0) == whole).all()


def test_a_low_wall_hides_nothing_and_an_overhang_only_what_is_steep() -> None:
    assert reach_the_sun(EYE, aims(), sheets([(4.0, -10.0, 4.0, 10.0, 0.0, 2.0)]), normal=0.0).all()
    eaves = box([(-1.0, -5.0), (1.0, -5.0), (1.0, 5.0), (-1.0, 5.0)], low=2.0, high=2.2)
    assert reach_the_sun(EYE, aims(-10.0, 10.0, 0.9), eaves, normal=0.0).all()
    assert not reach_the_sun(EYE, aims(-10.0, 10.0, 1.2), eaves, normal=0.0).any()


@given(
    st.lists(st.tuples(*[st.floats(-6.0, 6.0)] * 4, st.floats(0.0, 3.0)), max_size=12), st.floats(0.0, 6.28)
)
def test_leaving_out_what_is_not_in_the_way_changes_nothing(
    rows: list[tuple[float, ...]], normal: float
) -> None:
    blockers = joined([
        sheets([(*row[:4], 0.0, row[4]) for row in rows]),
        *(box([(x, y), (x + 1, y), (x + 1, y + 1), (x, y + 1)], low=z, high=z + 0.5) for x, y, _, _, z in rows[::2]),
    ])  # fmt: skip
    some = aims(-60.0, 60.0, 0.2)
    whole = np.isinf(ray_ranges(EYE, (normal + some.turn, some.rise), blockers))
    assert (reach_the_sun(EYE, some, blockers, normal=normal) == whole).all()
    assert len(in_the_way(EYE, some, blockers, normal=normal).panels) <= len(blockers.panels)


@pytest.mark.parametrize("is_in_order", [True, False])
def test_a_whole_year_of_lines_is_held_against_the_same_things_as_each_line(is_in_order: bool) -> None:
    rng = np.random.default_rng(9)
    turn = rng.uniform(math.radians(-89.0), math.radians(89.0), 2 * WEDGE + 7)
    many = Aims(np.sort(turn) if is_in_order else turn, rng.uniform(0.0, 2.0, len(turn)))
    ends, tops = rng.uniform(-12.0, 12.0, (40, 2)), rng.uniform(1.0, 9.0, 40)
    walls = np.column_stack([ends, ends + rng.uniform(-3.0, 3.0, (40, 2)), np.zeros(40), tops])
    corners = rng.uniform(2.0, 9.0, (9, 2))
    boxes = [box([(x, y), (x + 1, y), (x + 1, y + 1), (x, y + 1)], low=x / 2, high=x) for x, y in corners]
    blockers = joined([sheets(walls), *boxes])
    whole = np.isinf(ray_ranges(EYE, (0.4 + many.turn, many.rise), blockers))
    assert 0.1 < whole.mean() < 0.9
    assert (reach_the_sun(EYE, many, blockers, normal=0.4) == whole).all()


def test_no_lines_no_answer() -> None:
    none = Aims(np.empty(0), np.empty(0))
    assert len(reach_the_sun(EYE, none, sheets([(1.0, -1.0, 1.0, 1.0, 0.0, 9.0)]), normal=math.pi)) == 0

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from wardwright.geometry.panels import Blockers, box, joined, sheets
from wardwright.geometry.polar import Through
from wardwright.geometry.raster import FloatArray
from wardwright.geometry.rays import ray_ranges
from wardwright.geometry.sight import heights_toward, look, look_again, lowest_visible, visible_heights

BAND = (0.0, 2.4)
EYE = (0.21, 0.13, 2.1)


def panels(seed: int, number: int) -> Blockers:
    """Sheets and boxes that stand, hang and float, none of them about the eye."""
    rng = np.random.default_rng(seed)
    parts: list[Blockers] = []
    while len(parts) < number:
        middle, turn, size = rng.uniform(-4, 4, 2), rng.uniform(0, math.pi), rng.uniform(0.2, 1.2)
        if np.hypot(*(middle - EYE[:2])) < size + 0.8:
            continue
        low, high = [(0, 2.4), (0, rng.uniform(0.3, 1.5)), (rng.uniform(1.6, 2.2), 2.4), (0.9, 1.3)][
            len(parts) % 4
        ]
        along, across = (
            np.array([math.cos(turn), math.sin(turn)]),
            np.array([-math.sin(turn), math.cos(turn)]),
        )
        if rng.random() < 0.5:
            start, end = middle - size / 2 * along, middle + size / 2 * along
            parts.append(sheets([(*start, *end, low, high)]))
        else:
            ring = [
                middle + size / 2 * (i * along + j * across) for i, j in ((-1, -1), (1, -1), (1, 1), (-1, 1))
            ]
            parts.append(box(ring, low=low, high=high))
    return joined(parts)


def cells(step: float = 0.21) -> FloatArray:
    line = np.arange(-4.5, 4.5, step)
    return np.stack(np.meshgrid(line, line), axis=-1).reshape(-1, 2)


def test_a_table_hides_a_band_and_nothing_under_it() -> None:
    # By hand: eye 2 m high, a sheet from 0.7 m to 0.8 m at 2 m: slopes -0.65 to -0.6; at 3 m heights 0.05 to 0.2.
    sight = look((0, 0, 2.0), sheets([(2, -2, 2, 2, 0.7, 0.8)]), reach=6, band=BAND)
    heights = visible_heights(sight, [(3.0, 0.0)])
    assert sorted(heights.low[:, 0]) == pytest.approx([0.0, 0.2], abs=1e-3)
    assert sorted(heights.high[:, 0]) == pytest.approx([0.05, 2.4], abs=1e-3)
    assert heights.seen_length(0.0, 1.0) == pytest.approx([0.85], abs=1e-3)
    assert heights.seen_at(0.1).tolist() == [False]


def test_a_door_head_cuts_from_above_and_a_sill_from_below() -> None:
    rows = [(2, -2, 2, 2, 2.0, 2.4), (2, -2, 2, 2, 0, 1.0)]
    heights = visible_heights(look((0, 0, 2.2), sheets(rows), reach=6, band=BAND), [(4.0, 0.0)])
    # By hand: slopes -0.6 and -0.1, so 2.2 - 2.4 < 0 and 2.2 - 0.4.
    assert (heights.low[0, 0], heights.high[0, 0]) == pytest.approx((0.0, 1.8), abs=1e-3)


def test_a_closed_box_shows_its_top_only() -> None:
    # By hand: 1 m high from 2 m to 3 m, seen from 2 m: over it from 1 m up; at 5 m from 2 - 5/3 = 0.333 m up.
    ring = ((2.0, -2.0), (3.0, -2.0), (3.0, 2.0), (2.0, 2.0))
    sight = look((0, 0, 2.0), box(ring, low=0, high=1), reach=6, band=BAND)
    assert lowest_visible(sight, [(2.5, 0.0), (5.0, 0.0)]) == pytest.approx([1.0, 1 / 3], abs=1e-3)


def test_a_thin_hung_box_is_closed_above_and_below() -> None:
    # By hand: 0.7-0.75 m, from 2 m to 3 m, eye at 2 m: all slopes -0.65 to -0.4167 are hidden; at 4 m the heights
    # below 2 - 4 x 0.4167 = 0.333 m, since the lower slope meets the floor before.
    ring = ((2.0, -2.0), (3.0, -2.0), (3.0, 2.0), (2.0, 2.0))
    sight = look((0, 0, 2.0), box(ring, low=0.7, high=0.75), reach=6, band=BAND)
    assert lowest_visible(sight, [(4.0, 0.0)]) == pytest.approx([1 / 3], abs=1e-3)


def test_an_eye_over_a_cupboard_sees_nothing_below_its_edge() -> None:
    ring = ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5))
    sight = look((0, 0, 2.2), box(ring, low=0, high=1.9), reach=6, band=BAND)
    # By hand: slope -0.3 / 0.5 = -0.6; at 2 m only from 2.2 - 1.2 = 1.0 m up.
    assert lowest_visible(sight, [(2.0, 0.0)]) == pytest.approx([1.0], abs=1e-3)


def test_a_stairwell_shows_part_of_the_floor_above() -> None:
    hole = np.array([[1.0, -1.0], [3.0, -1.0], [3.0, 1.0], [1.0, 1.0]])
    floors = [Through(2.4, (hole,)), Through(2.6, (hole,))]
    sight = look((0, 0, 1.4), sheets([]), reach=9, band=(0.0, 5.0), through=floors)
    # By hand: slopes from 1.2 / 3 (far edge, upper level) to 1.0 / 1 (near edge, lower level); at 4 m 3.0 to 5.0 m.
    heights = visible_heights(sight, [(4.0, 0.0), (-4.0, 0.0)])
    assert (heights.low[0, 0], heights.high[0, 0]) == pytest.approx((3.0, 5.0), abs=1e-2)
    assert np.isinf(heights.lowest()).tolist() == [False, True]


def test_outside_the_fan_nothing_is_seen() -> None:
    sight = look((0, 0, 2), sheets([]), heading=3.0, half_angle=0.5, reach=9, band=BAND)
    bearings = np.array([3.0, 2.6, 3.4, -2.9, 2.4, -2.7, 0.0])
    seen = np.isfinite(lowest_visible(sight, np.stack([np.cos(bearings), np.sin(bearings)], axis=1)))
    assert seen.tolist() == [True, True, True, True, False, False, False]


@given(st.integers(0, 10_000), st.integers(8, 20))
@example(2819, 8)  # a low screen across a standing box once opened the box's top behind it
def test_the_seen_volume_is_star_shaped(seed: int, number: int) -> None:
    sight = look(EYE, panels(seed, number), reach=7, band=BAND)
    rng = np.random.default_rng(seed)
    points, heights = cells(), rng.uniform(0.0, 2.4, len(cells()))
    seen = visible_heights(sight, points).seen_at(heights)
    ends = np.column_stack([points, heights])[seen]
    assert len(ends) > 50
    for share in (0.9, 0.61, 0.33):
        nearer = np.asarray(EYE) + share * (ends - EYE)
        assert visible_heights(sight, nearer[:, :2]).seen_at(nearer[:, 2]).all()


@given(st.integers(0, 10_000))
def test_a_wall_more_never_shows_more(seed: int) -> None:
    before, wall = panels(seed, 7), sheets([(1.5, -3.0, 1.9, 1.2, 0.0, 2.4)])
    heights = np.random.default_rng(seed).uniform(0.0, 2.4, len(cells()))
    seen = [
        visible_heights(look(EYE, b, reach=7, band=BAND), cells()).seen_at(heights)
        for b in (before, joined([before, wall]))
    ]
    assert not (seen[1] & ~seen[0]).any()
    assert (seen[0] & ~seen[1]).any()


@given(st.integers(0, 10_000), st.sampled_from([(0.0, 2.4), (0.0, 1.1), (1.7, 2.4), (0.9, 1.2)]))
def test_looking_again_without_a_leaf_or_with_it_is_looking_afresh(
    seed: int, levels: tuple[float, float]
) -> None:
    rng = np.random.default_rng(seed)
    before, start = panels(seed, 8), rng.uniform(0.5, 3.0, 2)
    leaf = sheets([(*start, *(start + rng.uniform(-1.0, 1.0, 2)), *levels)])
    both = joined([before, leaf])
    facts = {"reach": 7.0, "band": BAND}
    for was, now in ((before, both), (both, before)):
        old = look(EYE, was, heading=0.5, half_angle=1.0, **facts)
        again = look_again(old, now, apart=leaf.panels, **facts)
        afresh = look(EYE, now, heading=0.5, half_angle=1.0, **facts)
        ours, theirs = (visible_heights(one, cells()) for one in (again, afresh))
        assert np.array_equal(ours.lowest(), theirs.lowest())
        assert np.array_equal(ours.high.max(axis=0), theirs.high.max(axis=0))
        assert np.array_equal(ours.seen_length(0.0, 2.4), theirs.seen_length(0.0, 2.4))


def test_a_leaf_that_is_not_in_view_leaves_the_very_sight() -> None:
    before = sheets([(2.0, -5.0, 2.0, 5.0, 0.0, 2.4)])
    sight = look(EYE, before, half_angle=0.7, reach=7, band=BAND)
    for place in ((3.0, 0.0), (-3.0, 0.0)):
        leaf = sheets([(*place, place[0], 1.0, 0.0, 2.0)])
        assert look_again(sight, joined([before, leaf]), apart=leaf.panels, reach=7, band=BAND) is sight, (
            place
        )


@given(st.integers(0, 10_000))
def test_the_order_of_panels_changes_nothing(seed: int) -> None:
    several = panels(seed, 9)
    order = np.random.default_rng(seed).permutation(len(several.panels))
    mixed = Blockers(several.panels[order], several.bodies[order])
    one, other = (visible_heights(look(EYE, b, reach=7, band=BAND), cells()) for b in (several, mixed))
    assert np.array_equal(one.low, other.low)
    assert np.array_equal(one.high, other.high)


@given(st.integers(0, 10_000), st.integers(1, 3))
def test_quarter_turns_change_nothing(seed: int, quarters: int) -> None:
    cos, sin = [(1, 0), (0, 1), (-1, 0), (0, -1)][quarters]
    turn = np.array([[cos, sin], [-sin, cos]], dtype=float)
    several = panels(seed, 8)
    ends = several.panels.copy()
    ends[:, 0:2], ends[:, 2:4] = ends[:, 0:2] @ turn, ends[:, 2:4] @ turn
    fan = {"half_angle": math.radians(45.0), "reach": 7.0, "band": BAND}
    straight = visible_heights(look(EYE, several, heading=0.4, **fan), cells())
    eye = (*(np.array(EYE[:2]) @ turn), EYE[2])
    turned = look(eye, Blockers(ends, several.bodies), heading=0.4 + quarters * math.pi / 2, **fan)
    after = visible_heights(turned, cells() @ turn)
    assert np.array_equal(np.isfinite(straight.lowest()), np.isfinite(after.lowest()))
    assert np.nan_to_num(straight.low, posinf=9) == pytest.approx(
        np.nan_to_num(after.low, posinf=9), abs=1e-9
    )


@given(st.integers(0, 10_000))
def test_sight_agrees_with_rays(seed: int) -> None:
    several = panels(seed, 8)
    rng = np.random.default_rng(seed + 1)
    points, heights = rng.uniform(-4, 4, (2000, 2)), rng.uniform(0.0, 2.4, 2000)
    offset = points - EYE[:2]
    distance = np.hypot(*offset.T)
    aims = (np.arctan2(offset[:, 1], offset[:, 0]), (heights - EYE[2]) / distance)
    by_ray = ray_ranges(EYE, aims, several) >= distance - 1e-9
    by_sight = visible_heights(look(EYE, several, reach=7, band=BAND, arc=0.002), points).seen_at(heights)
    # What differs lies at an edge, or under or in a hung box (see the limits).
    assert (by_ray != by_sight).mean() < 0.02


def test_a_screen_across_a_box_does_not_open_its_top() -> None:
    # By hand: a box 1 m high from 2 m to 4 m, crossed at 3 m by a low screen: inside it nothing below 1 m is seen.
    ring = ((2.0, -2.0), (4.0, -2.0), (4.0, 2.0), (2.0, 2.0))
    both = joined([box(ring, low=0, high=1), sheets([(3, -2, 3, 2, 0, 0.4), (2.5, -2, 2.5, 2, 0.2, 0.3)])])
    sight = look((0, 0, 2.0), both, reach=6, band=BAND)
    assert lowest_visible(sight, [(2.7, 0.0), (3.5, 0.0)]) == pytest.approx([1.0, 1.0], abs=1e-3)


@given(st.integers(0, 10_000), st.integers(1, 6))
def test_toward_a_few_places_the_same_is_seen(seed: int, number: int) -> None:
    blockers, rng = panels(seed, 8), np.random.default_rng(seed)
    places = rng.uniform(-5.0, 5.0, (number, 2))
    how: dict[str, Any] = {"heading": 0.4, "half_angle": 1.0, "reach": 8.0, "band": BAND}
    one = heights_toward(EYE, blockers, places, **how)
    other = visible_heights(look(EYE, blockers, **how), places)
    slots = len(one.low)
    assert np.array_equal(one.low, other.low[:slots])
    assert np.array_equal(one.high, other.high[:slots])
    assert np.isinf(other.low[slots:]).all()


def test_where_no_place_is_in_the_fan_nothing_is_seen() -> None:
    behind = [(-3.0, 0.0), (-2.0, 1.0)]
    nothing = heights_toward((0.0, 0.0, 2.0), panels(1, 4), behind, half_angle=0.5, reach=8.0, band=BAND)
    assert np.isinf(nothing.lowest()).all()

"""Sight with height: what heights can be seen over each place of the floor from one point.

A polar sweep. Round the eye stand many upright half-planes, one an azimuth. In each, a panel that is crossed at some
range hides an interval of slopes from there on; what is left is a short list of slope intervals, usually one, that
can only shrink with range. A place on the floor looks up its azimuth and range and turns slopes into heights.

Limits. Panels are upright. A ceiling that is the lowest of several planes bounds a convex room, so it hides nothing
and only cuts the heights; a dormer or a dropped beam is not seen as hiding anything.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.boxes import box_spans, close_boxes, leaving_sides, sides_about
from wardwright.geometry.panels import Blockers
from wardwright.geometry.polar import CONTACT_M, STEEP, Frame, Through, crossings, opening_slopes, packed
from wardwright.geometry.raster import BoolArray, FloatArray, IntArray

_PIECE = 8192
_OFFSET = 0.381966
# The first azimuth lies this share of a step before the fan's edge, so that no usual direction (along a wall, a
# diagonal) falls between two azimuths, where rounding would choose.


class Sight(NamedTuple):
    """What is seen from one point, azimuth by azimuth; ask it by `visible_heights`."""

    eye: FloatArray
    """x, y, z. [m]"""
    first: float
    """Lower edge of the first azimuth's sector. [rad]"""
    step: float
    """Between azimuths. [rad]"""
    high: float
    """The ceiling. [m]"""
    end: FloatArray
    """Where the first panel from floor to ceiling stands, inf where none does; shape (A,). [m]"""
    ranges: FloatArray
    """Where the slopes that are left change before that: shape (C, A), inf beyond the last. [m]"""
    bottoms: FloatArray
    """Lower slopes left after each change, shape (M, C + 1, A). [-]"""
    tops: FloatArray
    """Upper slopes left after each change; not above the lower one in an unused place; shape (M, C + 1, A). [-]"""
    levels: FloatArray
    """What one stands on after each change: the floor, or the top of a box on it; shape (C + 1, A). [m]"""


class Heights(NamedTuple):
    """Intervals of visible height over places of the floor."""

    low: FloatArray
    """Lower ends, shape (M, N); +inf in an unused place. [m]"""
    high: FloatArray
    """Upper ends, shape (M, N); -inf in an unused place. [m]"""

    def lowest(self) -> FloatArray:
        """Lowest visible height over each place, inf where nothing is seen; shape (N,). [m]"""
        least: FloatArray = self.low.min(axis=0)
        return least

    def seen_at(self, height: ArrayLike) -> BoolArray:
        """Whether one height over each place is seen; height shape () or (N,); result shape (N,). [m]"""
        level = np.asarray(height)
        seen: BoolArray = np.any((self.low <= level + 1e-9) & (level - 1e-9 <= self.high), axis=0)
        return seen

    def seen_length(self, bottom: ArrayLike, top: ArrayLike) -> FloatArray:
        """How much of the upright line from bottom to top over each place is seen; shape (N,). [m]"""
        length = np.minimum(self.high, top) - np.maximum(self.low, bottom)
        total: FloatArray = np.maximum(length, 0.0).sum(axis=0)
        return total


def look(
    eye: ArrayLike,
    blockers: Blockers,
    *,
    heading: float = 0.0,
    half_angle: float = math.pi,
    reach: float,
    band: tuple[float, float],
    arc: float = 0.05,
    through: Sequence[Through] = (),
) -> Sight:
    """Work out what is seen from one point within a fan of azimuths.

    The seen volume is star-shaped about the eye. Panels are seen themselves; what lies behind them is not.

    Parameters
    ----------
    eye : array_like, shape (3,)
        Where the eye is: x, y, z. [m]
    blockers : Blockers
        What stops sight; their order does not matter.
    heading : float, default 0.0
        Middle of the fan, anticlockwise from x. [rad]
    half_angle : float, default pi
        Half of the fan's whole angle. [rad]
    reach : float
        How far the eye sees when nothing stops it, on the plan. [m]
    band : tuple of float
        Levels of the floor and the ceiling between which sight goes. [m]
    arc : float, default 0.05
        Widest gap between neighbouring azimuths, at full reach; half of it is the error of direction. [m]
    through : sequence of Through, default ()
        Floors between the eye and the places that will be asked about, each to be passed at one of its holes.

    Returns
    -------
    Sight
        The slopes that are left, by azimuth and range.

    Examples
    --------
    A screen 1 m high, 2 m before an eye at 2 m, hides the floor for another 2 m:

    >>> from wardwright.geometry.panels import sheets
    >>> screen = sheets([(2.0, -5.0, 2.0, 5.0, 0.0, 1.0)])
    >>> sight = look((0.0, 0.0, 2.0), screen, reach=6.0, band=(0.0, 2.4))
    >>> visible_heights(sight, [(1.9, 0.0), (3.0, 0.0), (5.0, 0.0)]).lowest().round(2).tolist()
    [0.0, 0.5, 0.0]
    """
    at = np.asarray(eye, dtype=np.float64)
    around = math.ceil(2.0 * math.pi * reach / arc)
    step = 2.0 * math.pi / around
    count = min(around, math.ceil(2.0 * half_angle / step) + 3)
    first = heading - half_angle - (1.0 + _OFFSET) * step
    # Within (-pi, pi], as the azimuths of places are, so that these lie less than one turn away.
    first -= 2.0 * math.pi * math.ceil(first / (2.0 * math.pi) - 0.5)
    middles = first + (np.arange(count) + 0.5) * step
    frame = Frame(at, first, step, around, np.stack([np.cos(middles), np.sin(middles)]), reach)
    relevant = ~sides_about(blockers, at)
    whole = relevant & (blockers.panels[:, 4] <= band[0] + 1e-9) & (blockers.panels[:, 5] >= band[1] - 1e-9)
    end = _walled(frame, blockers.panels[whole])
    rest = relevant & ~whole
    partial = _partial(frame, Blockers(blockers.panels[rest], blockers.bodies[rest]), end=end, band=band)
    bottoms, tops = _left(partial, *opening_slopes(frame, through))
    return Sight(
        at, first, step, band[1], end,
        np.ascontiguousarray(partial.ranges.T),
        np.ascontiguousarray(bottoms.transpose(2, 1, 0)),
        np.ascontiguousarray(tops.transpose(2, 1, 0)),
        np.ascontiguousarray(partial.levels.T),
    )  # fmt: skip


def visible_heights(sight: Sight, points: ArrayLike) -> Heights:
    """Heights that are seen over places of the floor.

    Parameters
    ----------
    sight : Sight
        From `look`.
    points : array_like, shape (N, 2)
        Places on the plan. [m]

    Returns
    -------
    Heights
        Intervals between the floor and the ceiling given to `look`; none outside the fan. Reach is not applied.
    """
    places = np.asarray(points, dtype=np.float64)
    low = np.empty((len(sight.bottoms), len(places)))
    high = np.empty_like(low)
    # Piece by piece, so that what is worked out on the way stays in the processor's own memory.
    for start in range(0, len(places), _PIECE):
        piece = slice(start, start + _PIECE)
        _looked_up(sight, places[piece], low=low[:, piece], high=high[:, piece])
    return Heights(low, high)


def lowest_visible(sight: Sight, points: ArrayLike) -> FloatArray:
    """The lowest height that is seen over each place of the floor: `visible_heights` where no more is wanted.

    Parameters
    ----------
    sight : Sight
        From `look`.
    points : array_like, shape (N, 2)
        Places on the plan. [m]

    Returns
    -------
    ndarray, shape (N,)
        Lowest visible heights, inf where nothing is seen. [m]
    """
    places = np.asarray(points, dtype=np.float64)
    lowest = np.empty(len(places))
    low = np.empty((len(sight.bottoms), _PIECE))
    high = np.empty_like(low)
    for start in range(0, len(places), _PIECE):
        part = places[start : start + _PIECE]
        _looked_up(sight, part, low=low[:, : len(part)], high=high[:, : len(part)])
        np.min(low[:, : len(part)], axis=0, out=lowest[start : start + _PIECE])
    return lowest


def _looked_up(sight: Sight, places: FloatArray, *, low: FloatArray, high: FloatArray) -> None:
    """Heights over some places, written to `low` and `high`."""
    x, y = places[:, 0] - sight.eye[0], places[:, 1] - sight.eye[1]
    distance = np.sqrt(x * x + y * y)
    count = len(sight.end)
    around = round(2.0 * math.pi / sight.step)
    turn = np.arctan2(y, x)
    turn -= sight.first
    turn *= 1.0 / sight.step
    turn += around * (turn < 0.0)
    sector = turn.astype(np.intp)
    # A panel is itself seen: only what is farther counts as behind it.
    behind = distance - 1e-9
    low.fill(np.inf)
    high.fill(-np.inf)
    open_to = sector < count
    np.minimum(sector, count - 1, out=sector)
    open_to &= behind <= sight.end.take(sector)
    seen = np.nonzero(open_to)[0]
    sector, behind = sector.take(seen), behind.take(seen)
    passed = np.zeros(len(seen), dtype=np.uint8)
    for change in sight.ranges:
        passed += behind > change.take(sector)
    place = passed * np.intp(count) + sector
    distance = behind + 1e-9
    for slot in range(len(low)):
        bottoms, tops = sight.bottoms[slot].ravel(), sight.tops[slot].ravel()
        if slot > 0:
            # Second intervals are rare: go on with the places that have one.
            used = np.nonzero((tops > bottoms).take(place))[0]
            seen, place, distance = seen.take(used), place.take(used), distance.take(used)
        # An interval steeper than floor or ceiling at this range has ended there.
        bottom = np.maximum(bottoms.take(place) * distance + sight.eye[2], sight.levels.ravel().take(place))
        top = np.minimum(tops.take(place) * distance + sight.eye[2], sight.high)
        unused = top <= bottom + 1e-9
        bottom[unused], top[unused] = np.inf, -np.inf
        low[slot][seen] = bottom
        high[slot][seen] = top


def _walled(frame: Frame, ends: FloatArray) -> FloatArray:
    """Where each azimuth meets the first panel from floor to ceiling, shape (A,); inf where none."""
    _, azimuth, reached = crossings(frame, ends)
    end = np.full(frame.aims.shape[1], np.inf)
    np.minimum.at(end, azimuth, reached)
    return end


class _Partial(NamedTuple):
    """Crossings of panels lower than the room, shape (A, K) each, in order of range."""

    ranges: FloatArray
    bottoms: FloatArray
    tops: FloatArray
    floating: BoolArray
    """Those that reach neither floor nor ceiling."""
    levels: FloatArray
    """Floor, or top of the box that stands there, before the first crossing and after each, shape (A, K + 1)."""


def _partial(frame: Frame, blockers: Blockers, *, end: FloatArray, band: tuple[float, float]) -> _Partial:
    """Slopes that each azimuth loses before its wall; hidden from the floor or ceiling is hidden without end."""
    panel, azimuth, reached = crossings(frame, blockers.panels)
    keep = reached < end[azimuth]
    panel, azimuth, reached = panel[keep], azimuth[keep], reached[keep]
    leaving = leaving_sides(blockers, frame.eye)[panel]
    # Out of one box before into the next that touches it.
    reached[leaving] -= CONTACT_M / 10.0
    order = np.argsort(azimuth * (frame.reach + 1.0) + reached, kind="stable")
    panel, azimuth, reached, leaving = panel[order], azimuth[order], reached[order], leaving[order]
    low, high = blockers.panels[panel, 4], blockers.panels[panel, 5]
    bottoms, tops = (low - frame.eye[2]) / reached, (high - frame.eye[2]) / reached
    on_floor, at_ceiling = low <= band[0] + 1e-9, high >= band[1] - 1e-9
    floating = ~on_floor & ~at_ceiling
    body = blockers.bodies[panel]
    spans = box_spans(np.nonzero(body >= 0)[0], body * frame.aims.shape[1] + azimuth, leaving=leaving)
    close_boxes(spans, floating, slopes=(bottoms, tops), levels=(low - frame.eye[2], high - frame.eye[2]))
    bottoms[on_floor] = -STEEP
    tops[at_ceiling] = STEEP
    rank = _ranks(azimuth, frame.aims.shape[1])
    shape = (frame.aims.shape[1], int(rank.max(initial=-1)) + 1)
    tables = [np.full(shape, blank) for blank in (np.inf, 1.0, 0.0)]
    for table, values in zip(tables, (reached, bottoms, tops), strict=True):
        table[azimuth, rank] = values
    floats = np.zeros(shape, dtype=np.bool_)
    floats[azimuth, rank] = floating
    standing = spans.of(on_floor)
    levels = np.full((shape[0], shape[1] + 1), band[0])
    # From the state after it is come into to the state before it is left.
    begin = np.where(standing.near >= 0, rank[standing.near] + 1, 0)
    end_rank = np.where(standing.far >= 0, rank[standing.far] + 1, shape[1] + 1)
    either = np.maximum(standing.near, standing.far)
    for state in range(shape[1] + 1):
        over = either[(begin <= state) & (state < end_rank)]
        np.maximum.at(levels[:, state], azimuth[over], high[over])
    return _Partial(tables[0], tables[1], tables[2], floats, levels)


def _left(partial: _Partial, bottoms: FloatArray, tops: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Slopes left after each crossing, from those at the start: shape (A, K + 1, M) each.

    What stands on the floor or hangs from the ceiling only narrows the one interval between; what floats is cut
    out of it, one crossing after another, for the azimuths that have any.
    """
    count, depth = partial.ranges.shape
    rising = np.full((count, depth + 1), -STEEP)
    falling = np.full((count, depth + 1), STEEP)
    on_floor = partial.bottoms <= -STEEP
    at_ceiling = partial.tops >= STEEP
    np.copyto(rising[:, 1:], partial.tops, where=on_floor & ~at_ceiling)
    np.copyto(falling[:, 1:], partial.bottoms, where=at_ceiling & ~on_floor)
    low = np.maximum(np.maximum.accumulate(rising, axis=1)[:, :, None], bottoms[:, None, :])
    high = np.minimum(np.minimum.accumulate(falling, axis=1)[:, :, None], tops[:, None, :])
    if not partial.floating.any():
        return low, high
    rows = np.nonzero(partial.floating.any(axis=1))[0]
    some_low, some_high = packed(low[rows].reshape(-1, low.shape[2]), high[rows].reshape(-1, low.shape[2]))
    low[rows], high[rows] = 1.0, 0.0
    low[rows, :, : some_low.shape[1]] = some_low.reshape(len(rows), depth + 1, -1)
    high[rows, :, : some_low.shape[1]] = some_high.reshape(len(rows), depth + 1, -1)
    return _cut_by_floating(partial, low, high)


def _cut_by_floating(partial: _Partial, low: FloatArray, high: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Cut out what floats: the nearest crossing of each azimuth first, then the next of each."""
    count, states, slots = low.shape
    # Most hide nothing that would be seen behind them.
    meets = (low[:, 1:] < partial.tops[:, :, None]) & (partial.bottoms[:, :, None] < high[:, 1:])
    azimuth, event = np.nonzero(meets.any(axis=2) & partial.floating)
    turn = _ranks(azimuth, count)
    turns = int(turn.max(initial=-1)) + 1
    cut_low, cut_high = (
        np.full((count * states, slots + turns), 1.0),
        np.zeros((count * states, slots + turns)),
    )
    cut_low[:, :slots], cut_high[:, :slots] = low.reshape(-1, slots), high.reshape(-1, slots)
    crossed = np.isfinite(partial.ranges).sum(axis=1)
    for index in range(turns):
        mine = np.nonzero(turn == index)[0]
        first, number = azimuth[mine] * states + event[mine] + 1, crossed[azimuth[mine]] - event[mine]
        # Hidden from the state after it on.
        each = np.repeat(np.arange(len(mine)), number)
        place = first[each] + np.arange(len(each)) - (np.cumsum(number) - number)[each]
        hides = (azimuth[mine][each], event[mine][each])
        hidden_low, hidden_high = partial.bottoms[hides][:, None], partial.tops[hides][:, None]
        some_low, some_high = cut_low[place, :slots], cut_high[place, :slots]
        woven = np.arange(2 * slots).reshape(2, slots).T.ravel()
        left_low, left_high = packed(
            np.concatenate([some_low, np.maximum(some_low, hidden_high)], axis=1)[:, woven],
            np.concatenate([np.minimum(some_high, hidden_low), some_high], axis=1)[:, woven],
        )
        cut_low[place], cut_high[place] = 1.0, 0.0
        cut_low[place, : left_low.shape[1]], cut_high[place, : left_low.shape[1]] = left_low, left_high
        slots = max(slots, left_low.shape[1])
    shape = (count, states, slots)
    return cut_low[:, :slots].reshape(shape), cut_high[:, :slots].reshape(shape)


def _ranks(azimuth: IntArray, count: int) -> IntArray:
    """Which in its azimuth each crossing is, of crossings sorted by azimuth."""
    number = np.bincount(azimuth, minlength=count)
    ranks: IntArray = np.arange(len(azimuth)) - (np.cumsum(number) - number)[azimuth]
    return ranks

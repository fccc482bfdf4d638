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

from wardwright.geometry.panels import Blockers
from wardwright.geometry.polar import Frame, Through, crossings
from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.geometry.sweep import Swept, swept

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

    def of(self, rows: IntArray) -> Heights:
        """Those over some of the places."""
        return Heights(self.low[:, rows], self.high[:, rows])

    def lowest(self) -> FloatArray:
        """Lowest visible height over each place, inf where nothing is seen; shape (N,). [m]"""
        least: FloatArray = self.low.min(axis=0)
        return least

    def seen_at(self, height: ArrayLike) -> BoolArray:
        """Whether heights over each place are seen; shape (), (N,) or (R, N); result shape (N,) or (R, N). [m]"""
        level = np.asarray(height)
        high, low = level + 1e-9, level - 1e-9
        seen: BoolArray = np.zeros(np.broadcast_shapes(level.shape, self.low.shape[1:]), dtype=np.bool_)
        for one_low, one_high in zip(self.low, self.high, strict=True):
            seen |= (one_low <= high) & (low <= one_high)
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
    frame = _frame(eye, heading, half_angle, reach=reach, arc=arc)
    return _sight(frame, band[1], swept(frame, blockers, band=band, through=through))


def look_again(
    sight: Sight,
    blockers: Blockers,
    *,
    apart: FloatArray,
    reach: float,
    band: tuple[float, float],
    through: Sequence[Through] = (),
) -> Sight:
    """The same view with some panels more or less: only the azimuths that meet one of them are swept again.

    Parameters
    ----------
    sight : Sight
        From `look`, for other blockers.
    blockers : Blockers
        What stops sight now.
    apart : ndarray, shape (P, 6)
        The panels that came or went, none of them the side of a box. [m]
    reach : float
        As for `look`. [m]
    band : tuple of float
        As for `look`. [m]
    through : sequence of Through, default ()
        As for `look`.

    Returns
    -------
    Sight
        What `look` would find; the same object where no panel that came or went is in view.
    """
    frame = _frame_of(sight, reach)
    _, azimuth, reached = crossings(frame, apart)
    rows = np.unique(azimuth[reached <= sight.end[azimuth]])
    if not len(rows):
        return sight
    was = Swept(sight.end, sight.ranges, sight.bottoms, sight.tops, sight.levels)
    now = swept(frame, blockers, band=band, through=through, rows=rows)
    return _sight(frame, sight.high, was.with_these(now, rows))


def heights_toward(
    eye: ArrayLike,
    blockers: Blockers,
    places: ArrayLike,
    *,
    heading: float = 0.0,
    half_angle: float = math.pi,
    reach: float,
    band: tuple[float, float],
    arc: float = 0.05,
) -> Heights:
    """What `visible_heights` finds over a few places in what `look` sees, sooner: it looks nowhere else.

    Parameters
    ----------
    eye : array_like, shape (3,)
        Where the eye is: x, y, z. [m]
    blockers : Blockers
        What stops sight.
    places : array_like, shape (N, 2)
        Places on the plan. [m]
    heading : float, default 0.0
        As for `look`. [rad]
    half_angle : float, default pi
        As for `look`. [rad]
    reach : float
        As for `look`. [m]
    band : tuple of float
        As for `look`. [m]
    arc : float, default 0.05
        As for `look`. [m]

    Returns
    -------
    Heights
        Intervals between the floor and the ceiling.
    """
    frame = _frame(eye, heading, half_angle, reach=reach, arc=arc)
    x, y = (np.asarray(places, dtype=np.float64) - frame.eye[:2]).T
    sectors, count = _sectors(x, y, first=frame.first, step=frame.step), frame.aims.shape[1]
    rows = np.unique(sectors[sectors < count])
    if not len(rows):
        return Heights(np.full((1, len(x)), np.inf), np.full((1, len(x)), -np.inf))
    sight = _sight(frame, band[1], swept(frame, blockers, band=band, rows=rows))
    found = Heights(*(np.empty((len(sight.bottoms), len(x))) for _ in range(2)))
    # Beyond the last of those that are swept: out of the fan.
    swept_as = np.where(sectors < count, np.searchsorted(rows, sectors), len(rows))
    _in_sectors(sight, swept_as, np.sqrt(x * x + y * y), low=found.low, high=found.high)
    return found


def _frame(eye: ArrayLike, heading: float, half_angle: float, *, reach: float, arc: float) -> Frame:
    at = np.asarray(eye, dtype=np.float64)
    around = math.ceil(2.0 * math.pi * reach / arc)
    step = 2.0 * math.pi / around
    count = min(around, math.ceil(2.0 * half_angle / step) + 3)
    first = heading - half_angle - (1.0 + _OFFSET) * step
    # Within (-pi, pi], as the azimuths of places are, so that these lie less than one turn away.
    first -= 2.0 * math.pi * math.ceil(first / (2.0 * math.pi) - 0.5)
    return Frame(at, first, step, around, _aims(first, step, count), reach)


def _frame_of(sight: Sight, reach: float) -> Frame:
    """The half-planes that a sight was swept by."""
    aims = _aims(sight.first, sight.step, len(sight.end))
    return Frame(sight.eye, sight.first, sight.step, round(2.0 * math.pi / sight.step), aims, reach)


def _aims(first: float, step: float, count: int) -> FloatArray:
    """Unit vectors of the azimuths, shape (2, A)."""
    middles = first + (np.arange(count) + 0.5) * step
    return np.stack([np.cos(middles), np.sin(middles)])


def _sight(frame: Frame, high: float, found: Swept) -> Sight:
    return Sight(frame.eye, frame.first, frame.step, high, *found)


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


def _sectors(x: FloatArray, y: FloatArray, *, first: float, step: float) -> IntArray:
    """Number of the azimuth that places lie in, seen from the eye, those beyond the fan's end among them."""
    turn = np.arctan2(y, x)
    turn -= first
    turn *= 1.0 / step
    turn += round(2.0 * math.pi / step) * (turn < 0.0)
    return turn.astype(np.intp)


def _looked_up(sight: Sight, places: FloatArray, *, low: FloatArray, high: FloatArray) -> None:
    """Heights over some places, written to `low` and `high`."""
    x, y = places[:, 0] - sight.eye[0], places[:, 1] - sight.eye[1]
    sector = _sectors(x, y, first=sight.first, step=sight.step)
    _in_sectors(sight, sector, np.sqrt(x * x + y * y), low=low, high=high)


def _in_sectors(
    sight: Sight, sector: IntArray, distance: FloatArray, *, low: FloatArray, high: FloatArray
) -> None:
    """Heights over places in some of a sight's azimuths, those beyond its last out of its fan."""
    count = len(sight.end)
    # A panel is itself seen: only what is farther counts as behind it.
    behind = distance - 1e-9
    low.fill(np.inf)
    high.fill(-np.inf)
    open_to = sector < count
    sector = np.minimum(sector, count - 1)
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

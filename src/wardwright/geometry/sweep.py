"""A polar sweep: the slopes that are left in each half-plane round an eye, from its crossings with panels."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from wardwright.geometry.boxes import box_spans, close_boxes, leaving_sides, sides_about
from wardwright.geometry.panels import Blockers
from wardwright.geometry.polar import CONTACT_M, STEEP, Frame, Through, crossings, opening_slopes, packed
from wardwright.geometry.raster import BoolArray, FloatArray, IntArray


class Swept(NamedTuple):
    """What a sweep leaves, as a `Sight` has it, of each of its azimuths; A of them."""

    end: FloatArray
    """Shape (A,). [m]"""
    ranges: FloatArray
    """Shape (C, A). [m]"""
    bottoms: FloatArray
    """Shape (M, C + 1, A). [-]"""
    tops: FloatArray
    """Shape (M, C + 1, A). [-]"""
    levels: FloatArray
    """Shape (C + 1, A). [m]"""

    def with_these(self, others: Swept, rows: IntArray) -> Swept:
        """The same with some azimuths as another sweep has them.

        Parameters
        ----------
        others : Swept
            R azimuths.
        rows : ndarray of int, shape (R,)
            Which of these they are. [-]

        Returns
        -------
        Swept
            New arrays.
        """
        depth, slots = (
            max(len(self.levels), len(others.levels)),
            max(len(self.bottoms), len(others.bottoms)),
        )
        end = self.end.copy()
        end[rows] = others.end
        ranges = _padded(self.ranges, (depth - 1,), blank=np.inf)
        ranges[:, rows] = _padded(others.ranges, (depth - 1,), blank=np.inf)
        bottoms, tops = (
            _padded(one, (slots, depth), blank=blank)
            for one, blank in ((self.bottoms, 1.0), (self.tops, 0.0))
        )
        bottoms[:, :, rows] = _padded(others.bottoms, (slots, depth), blank=1.0)
        tops[:, :, rows] = _padded(others.tops, (slots, depth), blank=0.0)
        levels = _padded(self.levels, (depth,), blank=0.0)
        levels[:, rows] = _padded(others.levels, (depth,), blank=0.0)
        return Swept(end, ranges, bottoms, tops, levels)


def _padded(table: FloatArray, size: tuple[int, ...], *, blank: float) -> FloatArray:
    """A copy with more rows, or slots and rows, for states that no azimuth comes to."""
    wide = np.full((*size, table.shape[-1]), blank)
    wide[tuple(slice(number) for number in table.shape[:-1])] = table
    return wide


def swept(
    frame: Frame,
    blockers: Blockers,
    *,
    band: tuple[float, float],
    through: Sequence[Through] = (),
    rows: IntArray | None = None,
) -> Swept:
    """Sweep the half-planes round an eye.

    Parameters
    ----------
    frame : Frame
        The half-planes.
    blockers : Blockers
        What stops sight; their order does not matter.
    band : tuple of float
        Levels of the floor and the ceiling between which sight goes. [m]
    through : sequence of Through, default ()
        Floors between the eye and the places that will be asked about, each to be passed at one of its holes.
    rows : ndarray of int, shape (A,), optional
        Some of the half-planes, rising; None: all of them. [-]

    Returns
    -------
    Swept
        Of each half-plane by itself: none hangs on another.
    """
    relevant = ~sides_about(blockers, frame.eye)
    whole = relevant & (blockers.panels[:, 4] <= band[0] + 1e-9) & (blockers.panels[:, 5] >= band[1] - 1e-9)
    end = _walled(_crossed(frame, blockers.panels[whole], rows), count=_count(frame, rows))
    rest = relevant & ~whole
    partial = _partial(
        frame, Blockers(blockers.panels[rest], blockers.bodies[rest]), end=end, band=band, rows=rows
    )
    bottoms, tops = opening_slopes(frame, through)
    bottoms, tops = _left(partial, *((bottoms, tops) if rows is None else (bottoms[rows], tops[rows])))
    return Swept(
        end,
        np.ascontiguousarray(partial.ranges.T),
        np.ascontiguousarray(bottoms.transpose(2, 1, 0)),
        np.ascontiguousarray(tops.transpose(2, 1, 0)),
        np.ascontiguousarray(partial.levels.T),
    )


_Crossed = tuple[IntArray, IntArray, FloatArray]
# Panel, row of the azimuth among those that are swept, and range of each crossing.


def _count(frame: Frame, rows: IntArray | None) -> int:
    return frame.aims.shape[1] if rows is None else len(rows)


def _crossed(frame: Frame, ends: FloatArray, rows: IntArray | None) -> _Crossed:
    panel, azimuth, reached = crossings(frame, ends)
    if rows is None:
        return panel, azimuth, reached
    row_of = np.full(frame.aims.shape[1], -1)
    row_of[rows] = np.arange(len(rows))
    keep = row_of[azimuth] >= 0
    return panel[keep], row_of[azimuth[keep]], reached[keep]


def _walled(crossed: _Crossed, *, count: int) -> FloatArray:
    """Where each azimuth meets the first panel from floor to ceiling, shape (A,); inf where none."""
    _, azimuth, reached = crossed
    end = np.full(count, np.inf)
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


def _partial(
    frame: Frame, blockers: Blockers, *, end: FloatArray, band: tuple[float, float], rows: IntArray | None
) -> _Partial:
    """Slopes that each azimuth loses before its wall; hidden from the floor or ceiling is hidden without end."""
    count = len(end)
    panel, azimuth, reached = _crossed(frame, blockers.panels, rows)
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
    spans = box_spans(np.nonzero(body >= 0)[0], body * count + azimuth, leaving=leaving)
    close_boxes(spans, floating, slopes=(bottoms, tops), levels=(low - frame.eye[2], high - frame.eye[2]))
    bottoms[on_floor] = -STEEP
    tops[at_ceiling] = STEEP
    rank = _ranks(azimuth, count)
    shape = (count, int(rank.max(initial=-1)) + 1)
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

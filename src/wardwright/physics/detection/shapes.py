"""Where a movement detector surely and possibly notices, and the core that nobody reaches unnoticed."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from scipy import ndimage

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.geometry.sight import Heights, Sight, visible_heights
from wardwright.physics.detection.zones import BEAM_SHAPE, beam_width, zone_amplitude

LOW_REACH = 0.8
"""Reach that is sure, as a share of the sheet's. [-] (assumption: the figure `detector-reach`, low)"""
HIGH_REACH = 1.2
"""Reach that is possible, as a share of the sheet's. [-] (assumption: the figure `detector-reach`, high)"""
FAN_MARGIN_RAD = math.radians(5.0)
"""How far inside its fan a detector surely senses, and how far outside it still may. [rad] (assumption)"""
ENOUGH_BODY_SHARE = 0.4
"""How much of a body must be in view to be surely sensed. [-] (assumption)"""


class Fan(NamedTuple):
    """What a detector covers in its place."""

    eye: tuple[float, float, float]
    """x, y, z. [m]"""
    heading: float
    """Anticlockwise from plan x. [rad]"""
    half_angle: float
    """Half of its whole angle. [rad]"""
    depressions: tuple[float, ...]
    """Of its rows, tilt included. [rad]"""
    split: float
    """Between the two halves of a pair. [rad]"""


class Figures(NamedTuple):
    """Walkers over places of the floor."""

    places: FloatArray
    """Shape (N, 2). [m]"""
    bottoms: FloatArray
    """What is stood on, shape (N,). [m]"""
    tops: FloatArray
    """Top of the head, under the ceiling, shape (N,). [m]"""
    width: float
    """[m]"""

    def of(self, rows: IntArray) -> Figures:
        """Some of the walkers."""
        return Figures(self.places[rows], self.bottoms[rows], self.tops[rows], self.width)


def bearing_and_distance(fan: Fan, places: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Where places lie seen from the detector.

    Parameters
    ----------
    fan : Fan
        The detector.
    places : ndarray, shape (N, 2)
        Places on the plan. [m]

    Returns
    -------
    bearing : ndarray, shape (N,)
        Off the heading, never negative. [rad]
    distance : ndarray, shape (N,)
        On the plan. [m]
    """
    x, y = places[:, 0] - fan.eye[0], places[:, 1] - fan.eye[1]
    turn = np.arctan2(y, x) - fan.heading
    bearing = np.abs(turn - 2.0 * math.pi * np.round(turn / (2.0 * math.pi)))
    return bearing, np.hypot(x, y)


def in_fan(bearing: FloatArray, fan: Fan, *, margin: float) -> BoolArray:
    """Which bearings lie in the fan.

    Parameters
    ----------
    bearing : ndarray, shape (N,)
        Off the heading. [rad]
    fan : Fan
        The detector; one that looks all round has no edge.
    margin : float
        How far beyond its edge counts too; negative: how far inside it has to be. [rad]

    Returns
    -------
    ndarray of bool, shape (N,)
        True inside.
    """
    if fan.half_angle >= math.pi - 1e-9:
        return np.ones(len(bearing), dtype=np.bool_)
    inside: BoolArray = bearing <= fan.half_angle + margin + 1e-9
    return inside


def row_senses(
    fan: Fan, figures: Figures, *, heights: Heights, distance: FloatArray, contrasts: Sequence[float]
) -> BoolArray:
    """Where some row of zones passes through what is visible of a walker, strongly enough.

    Parameters
    ----------
    fan : Fan
        The detector.
    figures : Figures
        The walkers, N of them.
    heights : Heights
        What is visible over each place.
    distance : ndarray, shape (N,)
        Plan range of each place. [m]
    contrasts : sequence of float, length C
        How many times the least contrast a walker has. [-]

    Returns
    -------
    ndarray of bool, shape (C, N)
        True where one does, at each contrast. Whether the place lies in the fan is not asked.
    """
    sensed = np.zeros((len(contrasts), len(distance)), dtype=np.bool_)
    times = np.asarray(contrasts, dtype=np.float64)[:, None]
    half_high = BEAM_SHAPE * beam_width(distance, fan.split) / 2.0
    for depression in fan.depressions:
        level = fan.eye[2] - distance * math.tan(min(depression, math.radians(89.0)))
        # A row passes over a walker's place, or below it, at most ranges.
        rows = np.nonzero((level >= figures.bottoms) & (level <= figures.tops))[0]
        who, seen, level, half = figures.of(rows), heights.of(rows), level[rows], half_high[rows]
        within = seen.seen_length(np.maximum(level - half, who.bottoms), np.minimum(level + half, who.tops))
        strength = zone_amplitude(
            distance[rows], who.width, height_within=within, split=fan.split, contrast=times
        )
        sensed[:, rows] |= seen.seen_at(level) & (strength >= 1.0 - 1e-9)
    return sensed


def any_in_view(fan: Fan, figures: Figures, *, heights: Heights, distance: FloatArray) -> BoolArray:
    """Where anything of a walker is visible between the highest and the lowest row, with a margin.

    Parameters
    ----------
    fan : Fan
        The detector.
    figures : Figures
        The walkers, N of them.
    heights : Heights
        What is visible over each place.
    distance : ndarray, shape (N,)
        Plan range of each place. [m]

    Returns
    -------
    ndarray of bool, shape (N,)
        True where anything is.
    """
    highest = fan.eye[2] - distance * math.tan(min(fan.depressions) - FAN_MARGIN_RAD)
    steepest = max(fan.depressions) + FAN_MARGIN_RAD
    # At its steepest it looks straight down: then nothing is too low.
    lowest = fan.eye[2] - distance * math.tan(min(steepest, math.radians(89.0)))
    bottom, top = np.maximum(figures.bottoms, lowest), np.minimum(figures.tops, highest)
    seen: BoolArray = heights.seen_length(bottom, top) > 0.0
    return seen


def enough_in_view(figures: Figures, *, heights: Heights) -> BoolArray:
    """Where enough of a walker is visible to be surely sensed.

    Parameters
    ----------
    figures : Figures
        The walkers, N of them.
    heights : Heights
        What is visible over each place.

    Returns
    -------
    ndarray of bool, shape (N,)
        True where at least `ENOUGH_BODY_SHARE` of the height is.
    """
    whole = figures.tops - figures.bottoms
    enough: BoolArray = heights.seen_length(figures.bottoms, figures.tops) >= ENOUGH_BODY_SHARE * whole
    return enough


class Sensed(NamedTuple):
    """Where walkers are sensed, reach not yet applied; shape (N,) each."""

    distance: FloatArray
    """Plan range. [m]"""
    in_fan: BoolArray
    seen: BoolArray
    """As the sheet and the house say."""
    low: BoolArray
    """Surely."""
    high: BoolArray
    """Possibly."""


def within_reach(sensed: Sensed, reach: float, *, radius: float) -> tuple[BoolArray, BoolArray, BoolArray]:
    """Where walkers are usually, surely and possibly sensed within a detector's reach.

    Parameters
    ----------
    sensed : Sensed
        Where they are, reach apart, N of them.
    reach : float
        The sheet's. [m]
    radius : float
        Of a walker: possibly, the reach ends at its near side. [m]

    Returns
    -------
    tuple of ndarray of bool, shape (N,) each
        Seen, low and high.
    """
    distance, most = sensed.distance, reach + 1e-9
    return (
        sensed.seen & (distance <= most),
        sensed.low & (distance <= LOW_REACH * most),
        sensed.high & (distance <= HIGH_REACH * most + radius),
    )


def sensed_places(
    fan: Fan, figures: Figures, *, told: Sight, away: Sight, contrasts: tuple[float, float]
) -> Sensed:
    """Where walkers are surely, usually and possibly sensed; each lies within the next.

    Parameters
    ----------
    fan : Fan
        The detector.
    figures : Figures
        The walkers, N of them.
    told : Sight
        What the detector has in view with leaves as told.
    away : Sight
        What it has in view in any state of the leaves.
    contrasts : tuple of float
        How many times the least contrast a walker has at worst, and usually. [-]

    Returns
    -------
    Sensed
        Reach is not applied.
    """
    bearing, distance = bearing_and_distance(fan, figures.places)
    inside = in_fan(bearing, fan, margin=0.0)
    # Each shape is looked for in the one that holds it only.
    near, in_view = _in_view(fan, figures, away=away, bearing=bearing, distance=distance)
    high = _marked(near[in_view.possibly], len(distance))
    kept = np.nonzero(in_view.possibly & inside[near])[0]
    rows = near[kept]
    some = figures.of(rows)
    # Where no leaf is in view, the heights are those that have just been looked up.
    heights = in_view.heights.of(kept) if told is away else visible_heights(told, some.places)
    worst, usual = row_senses(fan, some, heights=heights, distance=distance[rows], contrasts=contrasts)
    surely = usual & worst & enough_in_view(some, heights=heights)
    surely &= in_fan(bearing[rows], fan, margin=-FAN_MARGIN_RAD)
    return Sensed(
        distance, inside, _marked(rows[usual], len(distance)), _marked(rows[surely], len(distance)), high
    )


def possibly_sensed(fan: Fan, figures: Figures, *, away: Sight) -> BoolArray:
    """Where walkers are possibly sensed.

    Parameters
    ----------
    fan : Fan
        The detector.
    figures : Figures
        The walkers, N of them.
    away : Sight
        What the detector has in view in any state of the leaves.

    Returns
    -------
    ndarray of bool, shape (N,)
        Reach is not applied.
    """
    bearing, distance = bearing_and_distance(fan, figures.places)
    near, in_view = _in_view(fan, figures, away=away, bearing=bearing, distance=distance)
    return _marked(near[in_view.possibly], len(distance))


class _InView(NamedTuple):
    heights: Heights
    """What is visible over each place near the fan."""
    possibly: BoolArray
    """Where anything of a walker is."""


def _in_view(
    fan: Fan, figures: Figures, *, away: Sight, bearing: FloatArray, distance: FloatArray
) -> tuple[IntArray, _InView]:
    """The places in the fan or just beside it, and what is in view there."""
    near = np.nonzero(in_fan(bearing, fan, margin=FAN_MARGIN_RAD))[0]
    some = figures.of(near)
    heights = visible_heights(away, some.places)
    return near, _InView(heights, any_in_view(fan, some, heights=heights, distance=distance[near]))


def _marked(rows: IntArray, number: int) -> BoolArray:
    marked = np.zeros(number, dtype=np.bool_)
    marked[rows] = True
    return marked


def widened(places: BoolArray, free: BoolArray, *, by: float, cell: float) -> BoolArray:
    """A shape with the floor beside it from where a body's side reaches in, never through a wall.

    Parameters
    ----------
    places : ndarray of bool, shape (ny, nx)
        The shape.
    free : ndarray of bool, shape (ny, nx)
        Floor that can be walked.
    by : float
        The body's radius. [m]
    cell : float
        Side of a cell. [m]

    Returns
    -------
    ndarray of bool, shape (ny, nx)
        The larger shape.
    """
    inside = places & free
    if not inside.any():
        return inside
    steps = math.ceil(by / cell) + 1
    # Nothing farther off than the steps can change.
    rows, columns = (np.nonzero(inside.any(axis=axis))[0] for axis in (1, 0))
    part = (
        slice(max(0, int(rows[0]) - steps), int(rows[-1]) + steps + 1),
        slice(max(0, int(columns[0]) - steps), int(columns[-1]) + steps + 1),
    )
    near = ndimage.distance_transform_edt(~inside[part], sampling=cell) <= by + cell / 2.0
    square = np.ones((3, 3), dtype=np.bool_)
    # Going round by free floor keeps it from reaching through a wall.
    inside[part] = ndimage.binary_dilation(inside[part], square, iterations=steps, mask=free[part] & near)
    return inside

"""Closed convex boxes in a polar sweep: where a line from the eye goes into each and where it comes out."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.geometry.panels import Blockers
from wardwright.geometry.polar import STEEP
from wardwright.geometry.raster import BoolArray, FloatArray, IntArray


class Spans(NamedTuple):
    """Boxes as lines cross them, each by the crossing where it goes in and the one where it comes out."""

    near: IntArray
    """Index of the crossing; -1: the eye is over or under the box."""
    far: IntArray
    """Index of the crossing; -1: beyond reach, or behind a wall."""

    def of(self, crossings: BoolArray) -> Spans:
        """Those whose crossings are marked."""
        marked = crossings[np.maximum(self.near, self.far)]
        return Spans(self.near[marked], self.far[marked])


def sides_about(blockers: Blockers, eye: FloatArray) -> BoolArray:
    """Which panels are sides of a box that holds the eye: such a box hides nothing.

    Parameters
    ----------
    blockers : Blockers
        The panels, P of them.
    eye : ndarray, shape (3,)
        x, y, z. [m]

    Returns
    -------
    ndarray of bool, shape (P,)
        False for panels that stand by themselves.
    """
    held = np.zeros(len(blockers.panels), dtype=np.bool_)
    side = np.nonzero(blockers.bodies >= 0)[0]
    if not len(side):
        return held
    x0, y0, x1, y1, low, high = blockers.panels[side].T
    above = (y0 > eye[1]) != (y1 > eye[1])
    rise = np.where(above, y1 - y0, 1.0)
    crossed = above & (x0 + (eye[1] - y0) / rise * (x1 - x0) > eye[0]) & (low <= eye[2]) & (eye[2] <= high)
    times = np.bincount(blockers.bodies[side], weights=crossed)
    held[side] = times[blockers.bodies[side]] % 2 == 1
    return held


def leaving_sides(blockers: Blockers, eye: FloatArray) -> BoolArray:
    """Which panels are sides by which a line from the eye comes out of a box.

    Parameters
    ----------
    blockers : Blockers
        The panels, P of them.
    eye : ndarray, shape (3,)
        x, y, z. [m]

    Returns
    -------
    ndarray of bool, shape (P,)
        False for panels that stand by themselves.
    """
    out = np.zeros(len(blockers.panels), dtype=np.bool_)
    side = np.nonzero(blockers.bodies >= 0)[0]
    if not len(side):
        return out
    body = blockers.bodies[side]
    x0, y0, x1, y1 = blockers.panels[side, :4].T
    number = np.maximum(np.bincount(body), 1)
    middle_x, middle_y = np.bincount(body, weights=x0) / number, np.bincount(body, weights=y0) / number
    # Outlines wind either way: out by a face that the eye and the box's middle lie on the same side of.
    mine = (x1 - x0) * (eye[1] - y0) - (y1 - y0) * (eye[0] - x0)
    its = (x1 - x0) * (middle_y[body] - y0) - (y1 - y0) * (middle_x[body] - x0)
    out[side] = mine * its > 0.0
    return out


def box_spans(crossings: IntArray, key: IntArray, *, leaving: BoolArray) -> Spans:
    """Pair the crossings of each box along each line.

    Parameters
    ----------
    crossings : ndarray of int, shape (B,)
        Indexes of those of E crossings, in order of range, that are of boxes. [-]
    key : ndarray of int, shape (E,)
        A number for each pair of box and line. [-]
    leaving : ndarray of bool, shape (E,)
        Whether the line comes out of the box there.

    Returns
    -------
    Spans
        One for each box that each line crosses.
    """
    mine = crossings[np.argsort(key[crossings], kind="stable")]
    same = key[mine[1:]] == key[mine[:-1]]
    alone = np.ones(len(mine), dtype=np.bool_)
    alone[:-1] &= ~same
    alone[1:] &= ~same
    lone = mine[alone]
    comes_out = leaving[lone]
    return Spans(
        np.concatenate([mine[:-1][same], np.where(comes_out, -1, lone)]),
        np.concatenate([mine[1:][same], np.where(comes_out, lone, -1)]),
    )


def close_boxes(
    spans: Spans,
    floating: BoolArray,
    *,
    slopes: tuple[FloatArray, FloatArray],
    levels: tuple[FloatArray, FloatArray],
) -> None:
    """Close the tops and undersides of hung boxes, changing the slopes that they hide in place.

    Between the range where a line goes into a box and the range where it comes out, the box hides every slope
    between the slopes of both, since its height is the same all the way.

    Parameters
    ----------
    spans : Spans
        Boxes as lines cross them.
    floating : ndarray of bool, shape (E,)
        Crossings of what reaches neither floor nor ceiling.
    slopes : tuple of two ndarray, shape (E,) each
        Lowest and highest slope that each crossing hides; changed. [-]
    levels : tuple of two ndarray, shape (E,) each
        Underside and top above the eye. [m]
    """
    hung = spans.of(floating)
    bottoms, tops = slopes
    both = (hung.near >= 0) & (hung.far >= 0)
    near, far = hung.near[both], hung.far[both]
    bottoms[far] = np.minimum(bottoms[far], bottoms[near])
    tops[far] = np.maximum(tops[far], tops[near])
    over = hung.far[hung.near < 0]
    bottoms[over[levels[1][over] < 0.0]] = -STEEP
    tops[over[levels[0][over] > 0.0]] = STEEP

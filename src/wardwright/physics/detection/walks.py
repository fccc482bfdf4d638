"""Walks on which detectors may notice, laid end to end, so that one pass over their points answers for all."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray, IntArray
from wardwright.physics.detection.crossing import steps_of, walked_along


class Walks(NamedTuple):
    """Some walks, W of them, N points in all; shared, not to be written to."""

    points: FloatArray
    """On the plan, shape (N, 2). [m]"""
    clock: FloatArray
    """Time at each point, on each walk's own clock, shape (N,). [s]"""
    walked: FloatArray
    """On the plan, from each walk's own start, shape (N,). [m]"""
    steps: FloatArray
    """Which way each walk goes at each point, shape (N, 2). [m]"""
    rows: dict[str, IntArray]
    """Storey -> which points lie on it. [-]"""
    parts: tuple[slice, ...]
    """Where each walk's points are."""


def walks_of(walks: Iterable[tuple[FloatArray, Sequence[str], FloatArray]]) -> Walks:
    """Lay walks end to end.

    Parameters
    ----------
    walks : iterable of (ndarray, sequence of str, ndarray)
        Of each walk its points on the plan, shape (n, 2) [m], their storeys, and the time at each, shape (n,) [s].

    Returns
    -------
    Walks
        In the same order.

    Examples
    --------
    >>> one = np.array([[0.0, 0.0], [0.0, 1.0]])
    >>> both = walks_of([(one, ("ground", "ground"), one[:, 1]), (one * 2.0, ("ground", "first"), one[:, 1])])
    >>> both.walked.tolist(), both.rows["ground"].tolist(), both.parts[1]
    ([0.0, 1.0, 0.0, 2.0], [0, 1, 2], slice(2, 4, None))
    """
    points, clocks, walked, steps = [np.zeros((0, 2))], [np.zeros(0)], [np.zeros(0)], [np.zeros((0, 2))]
    storeys: list[str] = []
    parts: list[slice] = []
    for places, on, clock in walks:
        parts.append(slice(len(storeys), len(storeys) + len(places)))
        points.append(np.asarray(places, dtype=np.float64).reshape(-1, 2))
        clocks.append(np.asarray(clock, dtype=np.float64))
        walked.append(walked_along(points[-1]))
        steps.append(steps_of(points[-1]))
        storeys.extend(on)
    on_each = np.array(storeys)
    return Walks(
        np.concatenate(points),
        np.concatenate(clocks),
        np.concatenate(walked),
        np.concatenate(steps),
        {storey: np.nonzero(on_each == storey)[0] for storey in sorted(set(storeys))},
        tuple(parts),
    )

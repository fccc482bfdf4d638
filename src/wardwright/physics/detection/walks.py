"""Walks on which detectors may notice, laid end to end, so that one pass over their points answers for all."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wardwright.geometry.raster import FloatArray, IntArray
from wardwright.physics.detection.crossing import steps_of, walked_along


class Reaching(NamedTuple):
    """Points of walks at which a body reaches into a shut leaf that is not open yet; shared, not to be written to."""

    points: IntArray
    """Which points they are, shape (K,). [-]"""
    leaf: IntArray
    """At which of the leaves, shape (K,). [-]"""
    lines: FloatArray
    """Where the leaves stand, shape (L, 2, 2). [m]"""
    sides: FloatArray
    """On which side of each the body comes to it, shape (L,): more than 0 on the left. [-]"""

    def behind(self, eye: FloatArray) -> IntArray:
        """The points that are behind their leaf as seen from a place, shape (2,) [m]."""
        return self.points[(_side(self.lines, eye) * self.sides <= 0.0)[self.leaf]]


NO_LEAVES = Reaching(
    np.zeros(0, dtype=np.int64), np.zeros(0, dtype=np.int64), np.zeros((0, 2, 2)), np.zeros(0)
)


def _side(lines: FloatArray, places: FloatArray) -> FloatArray:
    """On which side of lines places are: more than 0 on the left."""
    way, off = lines[:, 1] - lines[:, 0], places - lines[:, 0]
    side: FloatArray = way[:, 0] * off[:, 1] - way[:, 1] * off[:, 0]
    return side


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
    flights: dict[str, dict[str, IntArray]] | None
    """Storey -> flight -> which points there are walked on it; "": on the floor, be it across the foot of a flight
    or under it. None: it is not known, so on a flight wherever there is one. [-]"""
    reaching: Reaching = NO_LEAVES
    """Where nobody is seen from beyond a leaf, though a body reaches into it."""

    def by_flight(self, storey: str) -> Iterator[tuple[str | None, IntArray]]:
        """The points on a storey by the flight that they are on: "" on its floor, None where that is not known."""
        if self.flights is None:
            yield None, self.rows[storey]
        else:
            yield from self.flights[storey].items()

    def with_leaves(self, leaves: Iterable[tuple[int, int, int, FloatArray]]) -> Walks:
        """The same with shut leaves that are opened on the way.

        Parameters
        ----------
        leaves : iterable of (int, int, int, ndarray)
            The walk; its points from the first to the last at which a body reaches into the leaf; where the leaf
            stands, shape (2, 2) [m].

        Returns
        -------
        Walks
            Which hide such a body from whatever is beyond.
        """
        known = [
            (self.parts[walk].start + a, self.parts[walk].start + b, line) for walk, a, b, line in leaves
        ]
        if not known:
            return self
        lines = np.array([line for _, _, line in known])
        points = [np.arange(first, last + 1) for first, last, _ in known]
        leaf = np.repeat(np.arange(len(known)), [len(one) for one in points])
        sides = _side(lines, self.points[[first for first, _, _ in known]])
        return self._replace(reaching=Reaching(np.concatenate(points), leaf, lines, sides))


def walks_of(
    walks: Iterable[tuple[FloatArray, Sequence[str], FloatArray]],
    *,
    flights: Iterable[Sequence[str]] | None = None,
) -> Walks:
    """Lay walks end to end.

    Parameters
    ----------
    walks : iterable of (ndarray, sequence of str, ndarray)
        Of each walk its points on the plan, shape (n, 2) [m], their storeys, and the time at each, shape (n,) [s].
    flights : iterable of sequence of str, length n, optional
        Of each walk the flight that each point is on, "" where none. None: not known, so wherever there is one.

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
    rows = {storey: np.nonzero(on_each == storey)[0] for storey in sorted(set(storeys))}
    climbed = None if flights is None else np.array([name for one in flights for name in one])
    return Walks(
        np.concatenate(points),
        np.concatenate(clocks),
        np.concatenate(walked),
        np.concatenate(steps),
        rows,
        tuple(parts),
        None if climbed is None else {storey: _by_flight(climbed, there) for storey, there in rows.items()},
    )


def _by_flight(climbed: NDArray[np.str_], there: IntArray) -> dict[str, IntArray]:
    """Of some points those on each flight."""
    return {str(name): there[climbed[there] == name] for name in np.unique(climbed[there])}

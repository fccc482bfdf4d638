"""Getting somewhere by successive steps: the way whose hardest step is the least hard."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray, IntArray


class Easiest(NamedTuple):
    """How hard each place is to get to."""

    hardest: FloatArray
    """The hardest step on the easiest way to each place, shape (N,); inf where none leads there."""
    before: IntArray
    """The place before each on that way, shape (N,); -1: a start, or no way. [-]"""

    def way_to(self, place: int) -> tuple[int, ...]:
        """The places on the way to one, from a start; the place itself comes last."""
        found = [place]
        while self.before[found[-1]] >= 0:
            found.append(int(self.before[found[-1]]))
        return tuple(reversed(found))


def easiest_ways(steps: FloatArray, starts: FloatArray) -> Easiest:
    """Of all ways to each place, the one whose hardest step is easiest; of those alike the one of fewest steps.

    Parameters
    ----------
    steps : ndarray, shape (N, N)
        How hard the step from one place (row) to another (column) is; inf: there is none. [m]
    starts : ndarray, shape (N,)
        How hard it is to be at a place to begin with; inf: nobody begins there. [m]

    Returns
    -------
    Easiest
        Where ways are alike in both, the one over the place of lower number.

    Examples
    --------
    >>> floor_chair_shelf = np.array([[0.0, 0.45, 1.4], [0.0, 0.0, 0.95], [0.0, 0.0, 0.0]])
    >>> found = easiest_ways(floor_chair_shelf, np.array([0.0, np.inf, np.inf]))
    >>> found.hardest.tolist(), found.way_to(2)
    ([0.0, 0.45, 0.95], (0, 1, 2))
    """
    count = len(starts)
    hardest = np.array(starts, dtype=np.float64)
    taken = np.zeros(count, dtype=np.int64)
    before = np.full(count, -1, dtype=np.int64)
    is_open = np.isfinite(hardest)
    is_done = np.zeros(count, dtype=np.bool_)
    while (is_open & ~is_done).any():
        rows = np.nonzero(is_open & ~is_done)[0]
        here = int(rows[np.lexsort((rows, taken[rows], hardest[rows]))[0]])
        is_done[here] = True
        then = np.maximum(hardest[here], steps[here])
        is_better = np.isfinite(then) & ~is_done
        is_better &= (then < hardest) | ((then == hardest) & (taken[here] + 1 < taken))
        hardest[is_better] = then[is_better]
        taken[is_better] = taken[here] + 1
        before[is_better] = here
        is_open |= is_better
    return Easiest(hardest, before)


def hardest_steps(steps: FloatArray, starts: FloatArray) -> FloatArray:
    """As `easiest_ways`, of many cases at once, without the ways.

    Parameters
    ----------
    steps : ndarray, shape (R, N, N)
        How hard the steps are in each case. [m]
    starts : ndarray, shape (N,)
        How hard it is to be at a place to begin with. [m]

    Returns
    -------
    ndarray, shape (R, N)
        The hardest step on the easiest way to each place; inf where none leads there. [m]

    Examples
    --------
    >>> one = np.array([[0.0, 0.45, 1.4], [0.0, 0.0, 0.95], [0.0, 0.0, 0.0]])
    >>> hardest_steps(np.stack([one, one * 2.0]), np.array([0.0, np.inf, np.inf])).tolist()
    [[0.0, 0.45, 0.95], [0.0, 0.9, 1.9]]
    """
    found: FloatArray = np.broadcast_to(starts, steps.shape[:2]).copy()
    for _ in range(steps.shape[1]):
        then = np.minimum(found, np.maximum(found[:, :, None], steps).min(axis=1, initial=np.inf))
        if np.array_equal(then, found):
            break
        found = then
    return found

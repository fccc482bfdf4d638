"""The shortest round over some places: from the first to all others and back."""

from __future__ import annotations

import numpy as np

from wardwright.geometry.raster import FloatArray, IntArray

EXACT_UP_TO = 13
"""Places besides the first up to which the shortest round is found for certain. [-]"""
LONGEST_PIECE = 3
"""Places next to each other that are moved elsewhere together. [-]"""


def shortest_round(times: FloatArray) -> tuple[int, ...]:
    """The order in which to walk to some places, beginning and ending at the first.

    Up to `EXACT_UP_TO` places besides the first it is the shortest: every set of places visited, and the place
    visited last, is worked out once from the sets with one place fewer [1]_. With more it is a good one: the nearest
    place next from each beginning, then pieces turned round [2]_ and moved elsewhere until neither shortens it.

    Parameters
    ----------
    times : ndarray, shape (n, n)
        From each place to each, the same both ways, finite. [s]

    Returns
    -------
    tuple of int
        Numbers of all places, the first of them 0; the way back to it is not named.

    References
    ----------
    .. [1] M. Held and R. M. Karp, A dynamic programming approach to sequencing problems, J. SIAM 10 (1962).
    .. [2] G. A. Croes, A method for solving traveling-salesman problems, Operations Research 6 (1958).

    Examples
    --------
    >>> along = np.array([0.0, 3.0, 1.0, 2.0])
    >>> shortest_round(np.abs(along[:, None] - along))
    (0, 1, 3, 2)
    """
    n = len(times)
    if n <= 2:
        return tuple(range(n))
    found = _exact(times) if n - 1 <= EXACT_UP_TO else _improved(times)
    # Either way round is as long: the one that begins with the lower number, so that it is always the same.
    return found if found[1] < found[-1] else (0, *found[:0:-1])


def round_time(times: FloatArray, order: tuple[int, ...]) -> float:
    """How long a round takes, the way back included.

    Parameters
    ----------
    times : ndarray, shape (n, n)
        From each place to each. [s]
    order : tuple of int
        Numbers of places, in the order walked.

    Returns
    -------
    float
        Walking alone. [s]
    """
    here = np.array(order, dtype=np.int64)
    return float(times[here, np.roll(here, -1)].sum())


def _exact(times: FloatArray) -> tuple[int, ...]:
    k = len(times) - 1
    between, out = times[1:, 1:], times[0, 1:]
    least = np.full((1 << k, k), np.inf)
    came = np.full((1 << k, k), -1)
    bits = 1 << np.arange(k)
    least[bits, np.arange(k)] = out
    for visited in range(1, 1 << k):
        over = least[visited][:, None] + between
        # Each set with its last place is come to from one smaller set only.
        ahead = np.flatnonzero((visited & bits) == 0)
        least[visited | bits[ahead], ahead] = over[:, ahead].min(axis=0)
        came[visited | bits[ahead], ahead] = over[:, ahead].argmin(axis=0)
    visited = (1 << k) - 1
    last = int((least[visited] + times[1:, 0]).argmin())
    order = []
    while last >= 0:
        order.append(last + 1)
        visited, last = visited & ~(1 << last), int(came[visited, last])
    return (0, *reversed(order))


def _improved(times: FloatArray) -> tuple[int, ...]:
    rounds = [_settled(times, _nearest_next(times, first)) for first in range(len(times))]
    best = min(rounds, key=lambda one: round_time(times, tuple(one.tolist())))
    at = int(np.flatnonzero(best == 0)[0])
    return tuple(int(one) for one in np.roll(best, -at))


def _nearest_next(times: FloatArray, first: int) -> IntArray:
    order, left = [first], set(range(len(times))) - {first}
    while left:
        here = times[order[-1]]
        following = min(left, key=lambda one: (here[one], one))
        order.append(following)
        left.remove(following)
    return np.array(order, dtype=np.int64)


def _settled(times: FloatArray, order: IntArray) -> IntArray:
    """Turn and move pieces, each time the one that gains most, until nothing gains."""
    while True:
        turned = _with_a_piece_turned(times, order)
        following = turned if turned is not None else _with_a_piece_moved(times, order)
        if following is None:
            return order
        order = following


def _with_a_piece_turned(times: FloatArray, order: IntArray) -> IntArray | None:
    after = np.roll(order, -1)
    edges = times[order, after]
    change = times[np.ix_(order, order)] + times[np.ix_(after, after)] - edges[:, None] - edges
    i, j = np.unravel_index(int(np.triu(change, 1).argmin()), change.shape)
    if change[i, j] > -_LEAST_GAIN_S:
        return None
    turned = order.copy()
    turned[i + 1 : j + 1] = order[i + 1 : j + 1][::-1]
    return turned


def _with_a_piece_moved(times: FloatArray, order: IntArray) -> IntArray | None:
    n = len(order)
    best: tuple[float, IntArray] | None = None
    for length in range(1, LONGEST_PIECE + 1):
        for at in range(n):
            ring = np.roll(order, -at)
            piece, rest = ring[:length], ring[length:]
            ends = times[rest, np.roll(rest, -1)]
            spared = times[rest[-1], piece[0]] + times[piece[-1], rest[0]] - ends[-1]
            for way in (piece, piece[::-1]):
                change = times[rest, way[0]] + times[way[-1], np.roll(rest, -1)] - ends - spared
                to = int(change.argmin())
                if change[to] < -_LEAST_GAIN_S and (best is None or change[to] < best[0]):
                    best = float(change[to]), np.concatenate([rest[: to + 1], way, rest[to + 1 :]])
    return None if best is None else best[1]


_LEAST_GAIN_S = 1e-9
"""What a piece must gain to be turned or moved: rounding alone is none. [s]"""

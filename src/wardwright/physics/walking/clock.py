"""A walked line as points with distance, close enough together for a step-by-step check."""

from __future__ import annotations

import numpy as np

from wardwright.geometry.raster import FloatArray

SPACING_M = 0.05
"""Between the points of a walk, at most. [m] (assumption: a tenth of a step)"""


def sampled(line: FloatArray, *, spacing: float = SPACING_M) -> tuple[FloatArray, FloatArray]:
    """Points along a bent line, its own corners among them.

    Parameters
    ----------
    line : ndarray, shape (N, 2)
        Corners in order. [m]
    spacing : float, default SPACING_M
        Greatest distance between neighbours. [m]

    Returns
    -------
    tuple of ndarray
        Points, shape (P, 2) [m], and the distance walked to each, shape (P,) [m].

    Examples
    --------
    >>> points, walked = sampled(np.array([[0.0, 0.0], [0.1, 0.0], [0.1, 0.02]]))
    >>> walked.round(3).tolist()
    [0.0, 0.05, 0.1, 0.12]
    """
    step = np.linalg.norm(np.diff(line, axis=0), axis=1)
    # A hair less than a whole number of steps is that number, not one more.
    count = np.maximum(np.ceil(step / spacing - 1e-9).astype(np.int64), 1)
    piece = np.repeat(np.arange(len(step)), count)
    share = (np.arange(len(piece)) - np.repeat(np.cumsum(count) - count, count) + 1) / count[piece]
    points = line[piece] + share[:, None] * (line[piece + 1] - line[piece])
    walked = (np.cumsum(step) - step)[piece] + share * step[piece]
    return np.vstack([line[:1], points]), np.concatenate([[0.0], walked])

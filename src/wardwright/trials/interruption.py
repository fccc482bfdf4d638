"""The interruption estimate of a path of tasks, in closed form, and the point up to which detection is timely.

After B. Bennett, *The EASI approach to physical security evaluation* (Sandia, SAND76-0500, 1977), and M. L. Garcia,
*The Design and Evaluation of Physical Protection Systems*: each task of an intruder's path has a chance to be
detected and a delay; what answers the alarm takes its own time; delays and response are normal and independent. The
formulas are from memory; docs/accuracy.md says what they are held against.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike
from scipy.special import ndtr

from wardwright.geometry.raster import FloatArray

CUSTOMARY_SPREAD = 0.3
"""Standard deviation of a time as a share of its mean, where nothing else is known. [-] (from memory)"""
AT_START, IN_THE_MIDDLE, AT_END = 1.0, 0.5, 0.0
"""Share of a task's own delay that is left once it is detected: at its start, in the middle, at its end. [-]"""


class Tasks(NamedTuple):
    """The tasks of one path, one after another; every field has a last axis of length n."""

    detection: ArrayLike
    """Chance that each is detected, if none before it was. [-]"""
    delay: ArrayLike
    """Mean time that each takes. [s]"""
    spread: ArrayLike
    """Standard deviation of that time. [s]"""
    left: ArrayLike
    """Share of its own delay that is left when it is detected: `AT_START`, `IN_THE_MIDDLE` or `AT_END`. [-]"""


class Response(NamedTuple):
    """What answers a detection; one number, or one for each task."""

    mean: ArrayLike
    """[s]"""
    spread: ArrayLike
    """Standard deviation. [s]"""


def first_detected(detection: ArrayLike) -> FloatArray:
    """Chance that each task is the first to be detected.

    Parameters
    ----------
    detection : array_like, shape (..., n)
        Chance that each is detected. [-]

    Returns
    -------
    ndarray, shape (..., n)
        With the chance that none is, they sum to 1. [-]

    Examples
    --------
    >>> first_detected([0.0, 0.9, 0.9]).round(3).tolist()
    [0.0, 0.9, 0.09]
    """
    chance = np.asarray(detection, dtype=np.float64)
    missed = np.cumprod(1.0 - chance, axis=-1)
    before = np.concatenate([np.ones_like(missed[..., :1]), missed[..., :-1]], axis=-1)
    return before * chance


def remaining(tasks: Tasks) -> tuple[FloatArray, FloatArray]:
    """Time that is left once each task is detected.

    Parameters
    ----------
    tasks : Tasks
        The path.

    Returns
    -------
    mean, variance : ndarray, shape (..., n)
        Of the time. [s], [s2]
    """
    delay, spread, left = (
        np.asarray(one, dtype=np.float64) for one in (tasks.delay, tasks.spread, tasks.left)
    )
    delay, spread, left = np.broadcast_arrays(delay, spread, left)
    return left * delay + _after(delay), (left * spread) ** 2 + _after(spread**2)


def _after(values: FloatArray) -> FloatArray:
    """The sum of what comes after each."""
    sums: FloatArray = np.flip(np.cumsum(np.flip(values, axis=-1), axis=-1), axis=-1) - values
    return sums


def in_time(tasks: Tasks, response: Response) -> FloatArray:
    """Chance that the response comes before the path's end, if each task is the first to be detected.

    Parameters
    ----------
    tasks : Tasks
        The path.
    response : Response
        What answers.

    Returns
    -------
    ndarray, shape (..., n)
        Where nothing spreads it is 1 or 0; a response that comes in the last moment is late. [-]
    """
    mean, variance = remaining(tasks)
    hand = mean - np.asarray(response.mean, dtype=np.float64)
    spread = np.sqrt(variance + np.asarray(response.spread, dtype=np.float64) ** 2)
    hand, spread = np.broadcast_arrays(hand, spread)
    z = np.divide(hand, spread, out=np.where(hand > 0.0, np.inf, -np.inf), where=spread > 0.0)
    return np.asarray(ndtr(z), dtype=np.float64)


def interruption(tasks: Tasks, response: Response, *, communication: ArrayLike = 1.0) -> FloatArray:
    """Chance that the response comes before the path's end.

    Parameters
    ----------
    tasks : Tasks
        The path.
    response : Response
        What answers.
    communication : array_like, shape (...), default 1
        Chance that a detection is told at all. [-]

    Returns
    -------
    ndarray, shape (...)
        Never more than the chance to be detected and told at all. [-]

    Examples
    --------
    Two doors with a detector each, and no spread: whoever is missed at the first is detected too late.

    >>> doors = Tasks([0.9, 0.9], [90.0, 90.0], [0.0, 0.0], AT_START)
    >>> float(interruption(doors, Response(100.0, 0.0), communication=0.95).round(3))
    0.855
    """
    share = first_detected(tasks.detection) * in_time(tasks, response)
    return np.asarray(np.asarray(communication, dtype=np.float64) * share.sum(axis=-1), dtype=np.float64)


def last_timely(tasks: Tasks, response: Response) -> int | None:
    """Find the critical detection point: the last task of one path that leaves more time than the response takes.

    Parameters
    ----------
    tasks : Tasks
        One path.
    response : Response
        Its spread does not count.

    Returns
    -------
    int or None
        Its place in the path, from 0; None where detection is too late from the first on.
    """
    timely = np.flatnonzero(remaining(tasks)[0] > np.asarray(response.mean, dtype=np.float64))
    return int(timely[-1]) if timely.size else None


def timely_detection(tasks: Tasks, response: Response) -> float:
    """Chance to be detected up to the critical detection point, however much the times spread.

    Parameters
    ----------
    tasks : Tasks
        One path.
    response : Response
        Its spread does not count.

    Returns
    -------
    float
        1 less the product of the chances to be missed. [-]
    """
    timely = remaining(tasks)[0] > np.asarray(response.mean, dtype=np.float64)
    missed = np.where(timely, 1.0 - np.asarray(tasks.detection, dtype=np.float64), 1.0)
    return float(1.0 - missed.prod())

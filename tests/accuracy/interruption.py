"""The interruption estimate held against its published example, and a second calculation of its variants."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from accuracy.rows import Row
from wardwright.trials.interruption import (
    AT_END,
    AT_START,
    IN_THE_MIDDLE,
    Response,
    Tasks,
    first_detected,
    in_time,
    interruption,
    last_timely,
    remaining,
    timely_detection,
)

BOOK = "M. L. Garcia, Design and Evaluation of Physical Protection Systems, the sabotage path"
RECKONED = "the same formulas reckoned apart from this program, to six digits"
SIX = "half of the sixth digit; the logistic stand-in for the normal curve is 0.002 off"
DETECTION = (0.0, 0.0, 0.9, 0.0, 0.9, 0.0)
DELAY = (10.0, 12.0, 90.0, 10.0, 90.0, 120.0)
SPREAD = (3.0, 3.6, 27.0, 3.0, 27.0, 36.0)
TASKS = Tasks(DETECTION, DELAY, SPREAD, (AT_START,) * 6)
RESPONSE = Response(300.0, 90.0)
TOLD = 0.95
TABLE = (
    # task, remaining [s], spread of the difference [s], chance in time, contribution
    ("cut fence", 332.0, 104.331, 0.6205, 0.0),
    ("run to building", 322.0, 104.288, 0.5835, 0.0),
    ("open door", 310.0, 104.226, 0.5382, 0.46018),
    ("run to vital area", 220.0, 100.668, 0.2134, 0.0),
    ("open second door", 210.0, 100.623, 0.1855, 0.01586),
    ("sabotage target", 120.0, 96.933, 0.0317, 0.0),
)


def _replaced(values: tuple[float, ...], **at: float) -> tuple[float, ...]:
    """The same with the values of some tasks, named by t1, t2 and so on, replaced."""
    changed = {int(name[1:]) - 1: value for name, value in at.items()}
    return tuple(changed.get(place, value) for place, value in enumerate(values))


BASE_LEFT = (AT_START,) * 6
VARIANTS: tuple[tuple[str, Tasks, Response, float, float], ...] = (
    ("as published", TASKS, RESPONSE, TOLD, 0.476041),
    ("fence detection 0.9", TASKS._replace(detection=_replaced(DETECTION, t1=0.9)), RESPONSE, TOLD, 0.578106),
    ("fence detection 0.5", TASKS._replace(detection=_replaced(DETECTION, t1=0.5)), RESPONSE, TOLD, 0.532744),
    ("response 240 s, spread 72 s", TASKS, Response(240.0, 72.0), TOLD, 0.701128),
    ("response 200 s, spread 60 s", TASKS, Response(200.0, 60.0), TOLD, 0.830508),
    (
        "target delay 240 s, spread 72 s",
        TASKS._replace(delay=_replaced(DELAY, t6=240.0), spread=_replaced(SPREAD, t6=72.0)),
        RESPONSE,
        TOLD,
        0.784699,
    ),
    ("every detection told", TASKS, RESPONSE, 1.0, 0.501096),
    (
        "first door sensed in the middle",
        TASKS._replace(left=_replaced(BASE_LEFT, t3=IN_THE_MIDDLE)),
        RESPONSE,
        TOLD,
        0.328110,
    ),
    (
        "first door sensed at its end",
        TASKS._replace(left=_replaced(BASE_LEFT, t3=AT_END)),
        RESPONSE,
        TOLD,
        0.198318,
    ),
    (
        "both doors sensed at their ends",
        TASKS._replace(left=_replaced(BASE_LEFT, t3=AT_END, t5=AT_END)),
        RESPONSE,
        TOLD,
        0.185160,
    ),
)
"""Name, path, response, chance that a detection is told, chance of interruption as reckoned apart."""
NO_SPREAD = (TASKS._replace(spread=(0.0,) * 6), Response(300.0, 0.0))


def accuracy_rows() -> list[Row]:
    """The published example task by task, its variants, and timely detection."""
    return [*_published(), *_task_by_task(), *_variants(), *_timely()]


def _published() -> Iterator[Row]:
    why = "the book gives three digits; its page was not seen again"
    found = float(interruption(TASKS, RESPONSE, communication=TOLD))
    yield Row("chance of interruption, published path [-]", BOOK, 0.476, found, 5e-4, why, "from memory")
    fence = VARIANTS[1]
    yield Row(
        "chance of interruption, the same with a fence sensor of 0.9 [-]", BOOK, 0.58,
        float(interruption(fence[1], fence[2], communication=TOLD)), 5e-3, "two digits are remembered", "from memory",
    )  # fmt: skip
    yield Row(
        "chance of interruption, the same with no spread [-]", "0.9 x 0.95, by hand", 0.855,
        float(interruption(*NO_SPREAD, communication=TOLD)), 1e-12, "nothing is drawn or summed up", "derived",
    )  # fmt: skip


def _task_by_task() -> Iterator[Row]:
    mean, variance = remaining(TASKS)
    chances = in_time(TASKS, RESPONSE)
    shares = TOLD * first_detected(DETECTION) * chances
    both = np.sqrt(variance + 90.0**2)
    for i, (name, left, spread, chance, share) in enumerate(TABLE):
        for what, expected, computed, off in (
            ("time left [s]", left, mean[i], 1e-9),
            ("spread of time left less response [s]", spread, both[i], 5e-4),
            ("chance in time [-]", chance, chances[i], 5e-5),
            ("share of the estimate [-]", share, shares[i], 5e-6),
        ):
            why = "half of the last digit given" if off > 1e-9 else "sums of whole seconds"
            yield Row(f"{name}: {what}", RECKONED, expected, float(computed), off, why, "prototype")


def _variants() -> Iterator[Row]:
    for name, tasks, response, told, expected in VARIANTS:
        found = float(interruption(tasks, response, communication=told))
        yield Row(f"chance of interruption, {name} [-]", RECKONED, expected, found, 5e-7, SIX, "prototype")


def _timely() -> Iterator[Row]:
    last = last_timely(TASKS, RESPONSE)
    by_hand, why = "310 s are left, 300 s are needed; after it 220 s, by hand", "a place in a list"
    yield Row(
        "critical detection point of the published path, counted from 1 [-]", by_hand, 3.0,
        float("nan") if last is None else last + 1.0, 0.0, why, "derived",
    )  # fmt: skip
    found = timely_detection(TASKS, RESPONSE)
    yield Row("chance of timely detection [-]", "by hand", 0.9, found, 1e-12, "one product", "derived")
    yield Row(
        "chance of timely detection that is told [-]", "0.9 x 0.95, by hand", 0.855, TOLD * found, 1e-12,
        "one product", "derived",
    )  # fmt: skip
    # The course example gives 30 s to detect and assess and 60 s to respond: together what the path must leave.
    parts = Response(30.0 + 60.0, 0.0)
    yield Row(
        "response of two parts, 30 s and 60 s: last timely task, counted from 1 [-]",
        "the parts of a published course example on this path: 120 s are left at the last task, by hand", 6.0,
        float("nan") if (at := last_timely(TASKS, parts)) is None else at + 1.0, 0.0, why, "derived",
    )  # fmt: skip

"""All radio links re-answered after one device has moved, against a full answer, in the same process.

The full answer includes what hangs on the house alone: every memo of the package is cleared first. The control unit
is not moved: with it every link changes. Both are times of this process, so that a busy machine tells the same.
"""

from __future__ import annotations

import json
import statistics
import time
from collections.abc import Callable
from typing import Any

from ask_after_a_move import forget, movable, moved, plain

from wardwright.questions.will_it_reach import without_mends
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SAMPLE = "bungalow"
BUDGET = 20.0
NOT_MOVED = ("control-unit", "repeater")
"""Kinds that other devices are heard by."""


def timed(work: Callable[[], Any]) -> float:
    """How long this process is at it. [s]"""
    start = time.process_time()
    work()
    return time.process_time() - start


def run(repeats: int = 5, sample: str = SAMPLE) -> dict[str, Any]:
    """Time both for every such device on a wall, compare the answers; figures, ratio and budget."""
    site, catalogue = read_sample(sample), load_catalogue()
    without_mends(site, catalogue)  # imports and the like are paid for
    fresh: list[float] = []
    ratios: dict[str, float] = {}
    is_same = True
    chosen = [
        device
        for device in movable(site)
        if (sheet := catalogue.sheet(device.sheet)).link == "radio" and sheet.kind not in NOT_MOVED
    ]
    for device in chosen:
        again = []
        for turn in range(repeats):
            forget()
            fresh.append(timed(lambda: without_mends(site, catalogue)))
            there = moved(site, device, turn + 1)
            again.append(timed(lambda there=there: without_mends(there, catalogue)))
        there = moved(site, device, repeats)
        remembered = without_mends(there, catalogue)
        forget()
        is_same = is_same and plain(remembered) == plain(without_mends(there, catalogue))
        ratios[device.id] = statistics.median(fresh[-repeats:]) / statistics.median(again)
    worst = min(ratios.values())
    return {
        "name": "radio links re-answered after one device has moved, against a full answer",
        "figures": {
            "full_ms": round(statistics.median(fresh) * 1e3, 1),
            **{f"times_sooner_{name.replace('-', '_')}": round(ratio, 1) for name, ratio in ratios.items()},
            "same_answers_as_a_fresh_program": is_same,
        },
        "ratio": round(worst, 1),
        "budget": f"at least {BUDGET:g} times faster whichever device on a wall moves, with the same answers",
        "is_met": bool(worst >= BUDGET and is_same),
    }


if __name__ == "__main__":
    print(json.dumps(run(), indent=1))

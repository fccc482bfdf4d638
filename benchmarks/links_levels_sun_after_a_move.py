"""All radio links, sound levels and sun years re-answered after one device has moved, against a full answer.

Questions 6, 9 and 13 with their mends, in one process. The full answer includes what hangs on the house alone: every
memo of the package is cleared first. The answers after the move must be those that a fresh program gives for the
moved house. Both are times of this process, so that a busy machine tells the same. The control unit is moved too,
though every link changes with it.
"""

from __future__ import annotations

import json
import statistics
from typing import Any

from ask_after_a_move import forget, movable, moved, plain, timed

from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SAMPLE = "terrace"
ASKED = {"links": 6, "levels": 13, "sun years": 9}
BUDGET = 20.0


def run(repeats: int = 5, sample: str = SAMPLE) -> dict[str, Any]:
    """Time both for every device on a wall, compare the answers; figures, ratio and budget."""
    site, catalogue = read_sample(sample), load_catalogue()
    numbers = tuple(ASKED.values())
    ask(site, catalogue, numbers)  # imports and the like are paid for
    fresh: list[float] = []
    ratios: dict[str, float] = {}
    alone: dict[str, list[float]] = {what: [] for what in ASKED}
    is_same = True
    for device in movable(site):
        again: list[float] = []
        before = len(fresh)
        for turn in range(repeats):
            forget()
            fresh.append(timed(lambda: ask(site, catalogue, numbers)))
            there = moved(site, device, turn + 1)
            again.append(timed(lambda there=there: ask(there, catalogue, numbers)))
        for what, number in ASKED.items():
            forget()
            full = timed(lambda number=number: ask(site, catalogue, (number,)))
            there = moved(site, device, repeats + 1)
            alone[what].append(
                full / timed(lambda number=number, there=there: ask(there, catalogue, (number,)))
            )
        there = moved(site, device, repeats)
        remembered = ask(there, catalogue, numbers)
        forget()
        is_same = is_same and plain(remembered) == plain(ask(there, catalogue, numbers))
        ratios[device.id] = statistics.median(fresh[before:]) / statistics.median(again)
    worst = min(ratios.values())
    return {
        "name": "links, levels and sun years re-answered after one device has moved, against a full answer",
        "figures": {
            "full_ms": round(statistics.median(fresh) * 1e3, 1),
            **{f"times_sooner_{name.replace('-', '_')}": round(ratio, 1) for name, ratio in ratios.items()},
            **{
                f"{what.replace(' ', '_')}_alone_at_worst": round(min(found), 1)
                for what, found in alone.items()
            },
            "same_answers_as_a_fresh_program": is_same,
        },
        "ratio": round(worst, 1),
        "budget": f"at least {BUDGET:g} times faster whichever device on a wall moves, with the same answers",
        "is_met": bool(worst >= BUDGET and is_same),
    }


if __name__ == "__main__":
    print(json.dumps(run(), indent=1))

"""Asking again after one device has moved, against asking everything afresh, in the same process.

"Afresh" is the same house with all that was remembered forgotten: every memo of the package is cleared first. The
answers after the move must be those that a fresh program gives for the moved house. Both are times of this process,
so that a busy machine tells the same.
"""

from __future__ import annotations

import json
import statistics
import sys
import time
from collections.abc import Callable
from functools import _lru_cache_wrapper
from typing import Any

from wardwright.model.device import Device, WallMount
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SAMPLE = "terrace"
STEP_M = 0.05
BUDGET = 20.0


def movable(site: Site) -> tuple[Device, ...]:
    """The devices on walls."""
    return tuple(device for device in site.devices if isinstance(device.mount, WallMount))


def moved(site: Site, device: Device, steps: int) -> Site:
    """The site with one device some steps along its wall."""
    mount = device.mount
    assert isinstance(mount, WallMount)  # noqa: S101 - chosen so
    there = device.model_copy(
        update={"mount": mount.model_copy(update={"offset_m": mount.offset_m + steps * STEP_M})}
    )
    devices = tuple(there if one.id == device.id else one for one in site.devices)
    return site.model_copy(update={"devices": devices})


def forget() -> None:
    """Clear every memo of the package."""
    for name, module in list(sys.modules.items()):
        if name.startswith("wardwright"):
            for value in vars(module).values():
                if isinstance(value, _lru_cache_wrapper):
                    value.cache_clear()


def timed(work: Callable[[], Any]) -> float:
    """How long this process is at it. [s]"""
    start = time.process_time()
    work()
    return time.process_time() - start


def run(repeats: int = 5, sample: str = SAMPLE) -> dict[str, Any]:
    """Time both for every device on a wall, compare the answers; figures, ratio and budget."""
    site, catalogue = read_sample(sample), load_catalogue()
    ask(site, catalogue)  # imports and the like are paid for
    fresh: list[float] = []
    ratios: dict[str, float] = {}
    is_same = True
    for device in movable(site):
        again = []
        for turn in range(repeats):
            forget()
            fresh.append(timed(lambda: ask(site, catalogue)))
            there = moved(site, device, turn + 1)
            again.append(timed(lambda there=there: ask(there, catalogue)))
        there = moved(site, device, repeats)
        remembered = ask(there, catalogue)
        forget()
        is_same = is_same and plain(remembered) == plain(ask(there, catalogue))
        ratios[device.id] = statistics.median(fresh[-repeats:]) / statistics.median(again)
    worst = min(ratios.values())
    return {
        "name": "ask after one device has moved, against a full ask",
        "figures": {
            "full_ms": round(statistics.median(fresh) * 1e3, 1),
            **{f"times_sooner_{name.replace('-', '_')}": round(ratio, 1) for name, ratio in ratios.items()},
            "same_answers_as_a_fresh_program": is_same,
        },
        "ratio": round(worst, 1),
        "budget": f"at least {BUDGET:g} times faster whichever device on a wall moves, with the same answers",
        "is_met": bool(worst >= BUDGET and is_same),
    }


def plain(answers: tuple[Answer, ...]) -> str:
    """Answers as text, to compare them whole."""
    return json.dumps([answer.model_dump(mode="json") for answer in answers])


if __name__ == "__main__":
    print(json.dumps(run(), indent=1))

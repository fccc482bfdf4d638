"""All sound levels again after one device has moved, against working them out afresh, in the same process.

"Afresh" is the same house with all that was remembered forgotten. The levels after the move must be those that a
fresh program gives for the moved house. A sounder is the worst to move: most other devices move no level.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from functools import _lru_cache_wrapper
from typing import Any

from wardwright.model.device import Device, WallMount
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.what_is_heard import answers
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SAMPLE = "terrace-better"
STEP_M = 0.05
BUDGET = 20.0
KINDS = ("sounder", "control-unit", "movement-detector")


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
    """How long this process is at it, so that a busy machine tells the same. [s]"""
    start = time.process_time()
    work()
    return time.process_time() - start


def levels(found: tuple[Answer, ...]) -> dict[str, float | None]:
    """The number of each answer."""
    return {one.subject_id: None if one.estimate is None else one.estimate.value for one in found}


def run(repeats: int = 9, sample: str = SAMPLE) -> dict[str, Any]:
    """Time both for one device of each kind, compare the levels; figures, ratio and budget."""
    site, catalogue = read_sample(sample), load_catalogue()
    answers(site, catalogue)  # imports and the like are paid for
    ratios: dict[str, float] = {}
    is_same = True
    for kind in KINDS:
        device = next(
            one
            for one in site.devices
            if catalogue.sheet(one.sheet).kind == kind and isinstance(one.mount, WallMount)
        )
        fresh, again = [], []
        for turn in range(repeats):
            forget()
            fresh.append(timed(lambda: answers(site, catalogue)))
            there = moved(site, device, turn + 1)
            again.append(timed(lambda there=there: answers(there, catalogue)))
        there = moved(site, device, repeats)
        remembered = levels(answers(there, catalogue))
        forget()
        is_same = is_same and remembered == levels(answers(there, catalogue))
        ratios[device.id] = min(fresh) / min(again)
    worst = min(ratios.values())
    return {
        "name": "sound levels again after one device has moved, against afresh",
        "figures": {
            **{name: round(ratio, 1) for name, ratio in ratios.items()},
            "same_levels_as_a_fresh_program": is_same,
        },
        "ratio": round(worst, 1),
        "budget": f"at least {BUDGET:g} times faster, with the same levels",
        "is_met": bool(worst >= BUDGET and is_same),
    }


if __name__ == "__main__":
    for key, value in run().items():
        print(f"{key}: {value}")

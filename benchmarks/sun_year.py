"""The sun of a year on all detectors and panes of the terrace, against pvlib and a general-purpose ray caster.

The other side is one vectorised call of pvlib over the same 262 800 steps of 2 minutes, and one batch of embree rays
from every detector toward the sun at every step at which it is up: each ray may leave by any pane. Our side gives
more: by which pane, and when the sun lies on floor in view. Beams are compared on places of both storeys that the sun
reaches, since on the terrace it reaches no detector. Then one detector is moved, and all is asked for anew.
"""

from __future__ import annotations

import json
import math
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np

for folder in ("benchmarks", "tests"):
    sys.path.insert(0, str(Path(__file__).resolve().parents[1] / folder))

from ask_after_a_move import forget, moved  # noqa: E402 - the path must be set first

from common.sun_by_rays import STEPS_A_DAY, cast, caster_of, sky_of  # noqa: E402 - the same
from wardwright.geometry.raster import BoolArray  # noqa: E402 - the same
from wardwright.model.catalogue import Catalogue  # noqa: E402 - the same
from wardwright.model.placement import standing  # noqa: E402 - the same
from wardwright.model.site import Site  # noqa: E402 - the same
from wardwright.physics.detection.from_site import watch  # noqa: E402 - the same
from wardwright.physics.sunlight.from_site import beams_on, sun_of  # noqa: E402 - the same
from wardwright.physics.sunlight.shine import Lens  # noqa: E402 - the same
from wardwright.rules.kit import movement_detectors  # noqa: E402 - the same
from wardwright.rules.sun_on_detectors import sun_on  # noqa: E402 - the same
from wardwright.store.catalogue import load_catalogue  # noqa: E402 - the same
from wardwright.store.samples import read_sample  # noqa: E402 - the same

SAMPLE = "terrace"
LENSES = (
    Lens("ground", 2.71, 1.38, 1.3), Lens("ground", 3.79, 2.76, 1.7), Lens("ground", 4.33, 0.46, 1.0),
    Lens("ground", 1.38, 5.81, 1.3), Lens("first", 0.54, 1.89, 4.0), Lens("first", 2.71, 0.99, 4.0),
    Lens("first", 4.33, 0.33, 3.7),
)  # fmt: skip
MOST_RATIO, LEAST_SOONER, MOST_LATE = 2.0, 20.0, 0.002


def timed(work: Callable[[], Any]) -> float:
    """How long it takes. [s]"""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def ends_of(mask: BoolArray) -> list[list[int]]:
    """First and last step of each beam."""
    change = np.diff(mask.astype(int), prepend=0, append=0)
    return [np.nonzero(change == 1)[0].tolist(), (np.nonzero(change == -1)[0] - 1).tolist()]


def late_ends(site: Site) -> tuple[int, int]:
    """How many starts and ends of beams there are on the places, and how many are off by more than 2 minutes."""
    sun, place = sun_of(site), site.place
    north = math.radians(place.north_deg or 0.0)
    sky = sky_of(place.latitude_deg or 0.0, place.longitude_deg or 0.0)
    theirs = cast(caster_of(site), [lens[1:] for lens in LENSES], sky, north=north)
    total = late = 0
    for lens, other in zip(LENSES, theirs, strict=True):
        mine = np.zeros(365 * STEPS_A_DAY, dtype=np.bool_)
        for beam in beams_on(site, lens, north=north, spread=0.0):
            steps = sun.year.day[beam.steps] * STEPS_A_DAY + (sun.year.minute[beam.steps] / 2.0).astype(int)
            mine[steps] = True
        for own, others in zip(ends_of(mine), ends_of(other), strict=True):
            off = np.abs(np.subtract.outer(own, others)).min(axis=1)
            total, late = total + len(own), late + int((off > 1).sum())
    return total, late


def run(repeats: int = 5) -> dict[str, Any]:
    """Time both sides and the move, compare the beams; figures, ratio and budget."""
    site, catalogue = read_sample(SAMPLE), load_catalogue()
    place, detectors = site.place, [device for device, _ in movement_detectors(site, catalogue)]
    north = math.radians(place.north_deg or 0.0)
    eyes = [
        (at.x_m, at.y_m, site.storey(at.storey).elevation_m + at.height_m)
        for at in (standing(site, device) for device in detectors)
    ]
    caster = caster_of(site)

    def own(asked: Site) -> None:
        for device, _ in movement_detectors(asked, catalogue):
            sun_on(asked, catalogue, device)

    def other() -> None:
        sky = sky_of(place.latitude_deg or 0.0, place.longitude_deg or 0.0)
        cast(caster, eyes, sky, north=north)

    fresh, again = [], []
    for turn in range(repeats):
        forget()
        seen(site, catalogue)
        fresh.append(timed(lambda: own(site)))
        there = moved(site, detectors[turn % len(detectors)], turn + 1)
        seen(there, catalogue)
        again.append(timed(lambda there=there: own(there)))
    theirs = min(timed(other) for _ in range(3))
    total, late = late_ends(site)
    ratio, sooner = min(fresh) / theirs, statistics.median(fresh) / statistics.median(again)
    return {
        "name": "the sun of a year on the terrace, against pvlib and a batch of embree rays",
        "figures": {
            "steps": 365 * STEPS_A_DAY,
            "detectors": len(detectors),
            "own_ms": round(min(fresh) * 1e3, 1),
            "pvlib_and_embree_ms": round(theirs * 1e3, 1),
            "times_sooner_after_one_detector_moved": round(sooner, 1),
            "starts_and_ends_of_beams_compared": total,
            "of_them_off_by_more_than_2_minutes": late,
        },
        "ratio": round(ratio, 3),
        "budget": f"at most {MOST_RATIO:g} times; at least {LEAST_SOONER:g} times sooner after a move; at most "
        f"{MOST_LATE:.1%} of starts and ends off by more than 2 minutes",
        "is_met": bool(ratio <= MOST_RATIO and sooner >= LEAST_SOONER and late <= MOST_LATE * total),
    }


def seen(site: Site, catalogue: Catalogue) -> None:
    """What detectors watch is another engine's work, paid for by question 11."""
    for device, _ in movement_detectors(site, catalogue):
        watch(site, catalogue, device)


if __name__ == "__main__":
    print(json.dumps(run(), indent=1))

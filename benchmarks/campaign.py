"""A campaign of 100 000 intrusions against what it cannot do without: numpy's draws and one Dijkstra an opening.

Our side draws, walks, hears the alarm, and loses each detector in turn; the tables of the house's legs are known, as
after a first campaign on it. `cold` is the same with nothing remembered: ways on foot and noticing along every leg in
both door scenes come on top, once for a house, and `cold_ratio` says how far that is from the same other side. The
other side draws as many normal, even and exponential variates and runs scipy's Dijkstra from every opening over the
same floor, cells of 0.1 m with 16 neighbours; it joins and plays nothing.
"""

from __future__ import annotations

import functools
import gc
import resource
import time
from collections.abc import Callable
from typing import Any

import numpy as np
from scipy.sparse.csgraph import dijkstra

from wardwright.geometry.least_cost import web_of_cells
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Figure
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import way_in_spot
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.barriers import CELL_M, stack_of, standing_cells, standing_floor
from wardwright.trials.campaign.inputs import drawn
from wardwright.trials.campaign.run import Campaign, campaign
from wardwright.trials.campaign.setting import Setting, setting_of
from wardwright.trials.campaign.streams import Streams
from wardwright.trials.draws import SEED

TRIALS = 100_000
_REMEMBERING = type(functools.lru_cache(lambda: None))
SAMPLES = ("terrace-better", "bungalow")
MOST_RATIO = 10.0
MOST_MB = 1000.0


class _Counted(Streams):
    """Streams that count how many variates of each sort are drawn."""

    def __init__(self, seed: int) -> None:
        super().__init__(seed)
        self.sorts = {"normal": 0, "even": 0, "exponential": 0}

    def stream(self, key: str) -> np.random.Generator:
        """Counted as an exponential where it is asked for plainly: `even` and `of` take theirs off again."""
        self.sorts["exponential"] += 1
        return super().stream(key)

    def even(self, key: str, count: int) -> FloatArray:
        """Counted as even."""
        self.sorts["even"] += 1
        self.sorts["exponential"] -= 1
        return super().even(key, count)

    def of(self, key: str, figure: Figure, count: int) -> FloatArray:
        """Counted as normal."""
        self.sorts["normal"] += 1
        self.sorts["exponential"] -= 1
        return super().of(key, figure, count)


def variates_of(setting: Setting) -> dict[str, int]:
    """How many variates of each sort one intrusion takes."""
    streams = _Counted(SEED)
    drawn(streams, load_catalogue(), setting.who, room=setting.room, count=10)
    return streams.sorts


def other(setting: Setting, sorts: dict[str, int], trials: int) -> Callable[[], None]:
    """The work that the budget is stated in; the floor is joined before the clock starts."""
    house = setting.site.bare
    floor = standing_floor(house)
    web = web_of_cells(floor.cells, np.ones(floor.cells.shape), cell=CELL_M)
    stack = stack_of(house)
    starts = []
    for opening in {way.opening.id: way.opening for way in setting.ways}.values():
        spot = way_in_spot(house, opening)
        row, column = standing_cells(house, spot)[0].tolist()
        rows, columns = stack.parts[spot.storey]
        starts.append((row + rows.start) * stack.shape[1] + column + columns.start)

    def run() -> None:
        rng = np.random.default_rng(SEED)
        for sort, draw in (
            ("normal", rng.standard_normal),
            ("even", rng.random),
            ("exponential", rng.standard_exponential),
        ):
            for _ in range(sorts[sort]):
                draw(trials)
        for start in starts:
            dijkstra(web, directed=False, indices=start)

    return run


def forget() -> None:
    """Empty everything that is remembered in this process."""
    for thing in gc.get_objects():
        if isinstance(thing, _REMEMBERING):
            thing.cache_clear()


def measured(name: str, trials: int, times: int) -> dict[str, float]:
    """Processor time of both sides on one sample, the least of some runs each: others may run beside. [s]"""
    catalogue = load_catalogue()

    def ours(site: Site) -> Campaign:
        return campaign(site, catalogue, trials=trials)

    setting = setting_of(read_sample(name), catalogue)
    sorts = variates_of(setting)
    reference = min(_timed(other(setting, sorts, trials)) for _ in range(times))
    cold = []
    for _ in range(times):
        site = read_sample(name)
        forget()
        cold.append(_timed(functools.partial(ours, site)))
    warm = min(_timed(functools.partial(ours, site)) for _ in range(times))
    return {
        "reference": reference,
        "cold": min(cold),
        "warm": warm,
        "variates": float(sum(sorts.values())),
        "caught": float(ours(site).sounder_in_time.mean()),
    }


def run() -> dict[str, Any]:
    """Time both sides; figures, ratio and budget."""
    found = {name: measured(name, TRIALS, 3) for name in SAMPLES}
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    ratio, cold = (max(one[what] / one["reference"] for one in found.values()) for what in ("warm", "cold"))
    return {
        "name": "a campaign of 100 000 intrusions on a house whose legs are known",
        "figures": {
            **{
                f"{name} {what} [ms]": round(one[what] * 1e3, 1)
                for name, one in found.items()
                for what in ("reference", "cold", "warm")
            },
            "variates an intrusion": int(max(one["variates"] for one in found.values())),
            "memory_mb": round(memory),
            "cold_ratio": round(cold, 1),
        },
        "ratio": round(ratio, 2),
        "budget": "at most 10 times numpy's draws and one Dijkstra an opening; memory under 1000 MB",
        "is_met": bool(ratio <= MOST_RATIO and memory < MOST_MB),
    }


def _timed(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


if __name__ == "__main__":
    for key, value in run().items():
        print(f"{key}: {value}")

"""How long the work takes: minutes of every task over all that is uncertain, by phase and by device."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np

from wardwright.costing.rates import PER_HOUR, TRAVEL
from wardwright.costing.tasks import Phase, Task, tasks_of
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.trials.draws import Cases, Input, cases_of, estimate_of

ANYTHING, DAY = "allow-anything", "job-day"
ON_SITE: tuple[Phase, ...] = ("fit", "prove", "hand over", "contingency")


@dataclass(frozen=True, eq=False)
class Labour:
    """The work of a job in minutes: one object for the same work, so that what hangs on it is remembered by it."""

    tasks: tuple[Task, ...]
    cases: Cases
    by_phase: Mapping[str, FloatArray]
    """Phase -> minutes in every row of the cases; `travel` among them. [min]"""
    journeys: int
    """Single ways: there and back for the survey and for each day of work."""

    @cached_property
    def minutes(self) -> FloatArray:
        """All of it, in every row. [min]"""
        return np.asarray(np.sum(list(self.by_phase.values()), axis=0), dtype=np.float64)

    @cached_property
    def hours(self) -> Estimate:
        """All of it. [h]"""
        return estimate_of(self.minutes / PER_HOUR, self.cases, unit="h")

    @cached_property
    def hours_by_phase(self) -> Mapping[str, Estimate]:
        """Phase -> how long it takes. [h]"""
        return {
            phase: estimate_of(minutes / PER_HOUR, self.cases, unit="h")
            for phase, minutes in self.by_phase.items()
        }

    @property
    def days(self) -> int:
        """Days of work on site, the survey left out."""
        return self.journeys // 2 - 1

    def likely_min(self, phase: str) -> float:
        """One phase at its likely value. [min]"""
        return float(self.by_phase[phase][0])


def labour_of(site: Site, catalogue: Catalogue, more: tuple[Input, ...] = ()) -> Labour | None:
    """The work of fitting all that is not there yet.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets and times.
    more : tuple of Input, default ()
        Inputs that are drawn along, such as rates; one of the travel time takes the place of the catalogue's.

    Returns
    -------
    Labour or None
        None where nothing is to be fitted.
    """
    tasks = tasks_of(site, catalogue)
    return _labour(tasks, catalogue, more) if tasks else None


@lru_cache(maxsize=256)
def _labour(tasks: tuple[Task, ...], catalogue: Catalogue, more: tuple[Input, ...]) -> Labour:
    known = {one.key for one in more}
    named = sorted({figure for task in tasks for figure in task.figures} | {ANYTHING, TRAVEL})
    own = tuple(Input.of(catalogue.figure(name)) for name in named if name not in known)
    cases = cases_of((*own, *more))
    by_phase: dict[str, FloatArray] = {}
    for task in tasks:
        by_phase[task.phase] = by_phase.get(task.phase, np.zeros(cases.total)) + minutes_of(task, cases)
    on_site = np.sum([by_phase[one] for one in ON_SITE if one in by_phase], axis=0)
    spare = on_site * cases.rows[ANYTHING]
    by_phase["contingency"] = by_phase.get("contingency", np.zeros(cases.total)) + spare
    # Whole days by the likely value: a job is planned once, however it then goes.
    days = max(1, math.ceil(float(on_site[0] + spare[0]) / catalogue.figure(DAY).value - 1e-9))
    journeys = 2 * (1 + days)
    by_phase["travel"] = journeys * cases.rows[TRAVEL]
    return Labour(tasks, cases, by_phase, journeys)


def minutes_of(task: Task, cases: Cases) -> FloatArray:
    """One task in every row.

    Parameters
    ----------
    task : Task
        It.
    cases : Cases
        Rows that hold all its figures.

    Returns
    -------
    ndarray, shape (rows,)
        How long it takes. [min]
    """
    found: FloatArray = np.full(cases.total, task.times)
    for figure in task.figures:
        found = found * cases.rows[figure]
    return found


def likely_minutes(tasks: tuple[Task, ...], catalogue: Catalogue) -> float:
    """Some tasks at their likely values. [min]"""
    return math.fsum(
        task.times * math.prod(catalogue.figure(one).value for one in task.figures) for task in tasks
    )

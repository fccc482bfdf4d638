"""The deciding number of a trip from bed: when it rings, what is left of an entry time, or the least clearance."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.household import Person
from wardwright.model.site import Site
from wardwright.questions.answer import Verdict
from wardwright.questions.night_times import Walked, night_cases, walked_s
from wardwright.rules.kit import NIGHT
from wardwright.trials.barriers import grids_of
from wardwright.trials.draws import estimate_of, share_met
from wardwright.trials.household_walk import walk
from wardwright.trials.leaves_opened import Leaves
from wardwright.trials.night_rings import Ring, active_in, noticed_by
from wardwright.trials.night_trips import NightTrip
from wardwright.trials.night_walk import Moment, steps_on, walked_until
from wardwright.trials.trip_floor import Ends, clearance
from wardwright.trials.trips import CODE

MEASURES = {
    "rings": "into the trip, the alarm",
    "clear": "from the floor of the trip to where a detector of the night part may notice",
    "left": "left of the entry time when the alarm is unset",
}


class NightCase(NamedTuple):
    """One trip, and how it goes."""

    trip: NightTrip
    ends: Ends
    ring: Ring | None
    leaves: Leaves
    """How leaves stand where it rings."""


def night_number(
    site: Site, catalogue: Catalogue, case: NightCase
) -> tuple[Verdict, str, Estimate | None, float | None]:
    """The deciding number of a trip.

    Parameters
    ----------
    site : Site
        The house, its devices, its zones and its programme.
    catalogue : Catalogue
        Sheets and figures.
    case : NightCase
        The trip, and how it goes.

    Returns
    -------
    tuple
        Verdict, what the number is, the number, and for a time the chance that it suffices. The number is when it
        rings; else what is left of an entry time [s], or the least clearance [m].
    """
    trip, ring = case.trip, case.ring
    cases = night_cases(catalogue, trip.person)
    if ring is not None:
        walked = _walked(site, catalogue, case, moment=ring.moment)
        verdict: Verdict = "bad" if case.leaves == "night" else "thin"
        return verdict, MEASURES["rings"], _rings(catalogue, trip.person, walked, waits_s=ring.waits_s), None
    left = _time_left(site, catalogue, case)
    if left is not None:
        estimate = estimate_of(left, cases, unit="s")
        verdict = "good" if estimate.low > 0.0 else "thin"
        return verdict, MEASURES["left"], estimate, share_met(left, cases)
    return "good", MEASURES["clear"], _clear(site, catalogue, case), None


def until(site: Site, catalogue: Catalogue, case: NightCase, *, moment: Moment) -> FloatArray:
    """When a moment of a trip comes, in every row. [s]"""
    return walked_s(catalogue, case.trip.person, _walked(site, catalogue, case, moment=moment))


def _walked(site: Site, catalogue: Catalogue, case: NightCase, *, moment: Moment) -> Walked:
    steps = steps_on(site.bare, catalogue, case.ends)
    return Walked(0.0, 0.0, 0.0) if steps is None else Walked(*walked_until(steps, moment))


@lru_cache(maxsize=512)
def _rings(catalogue: Catalogue, person: Person, walked: Walked, *, waits_s: float) -> Estimate:
    """When an alarm starts, by what is walked until it is given: a detector that moves a little changes few."""
    rings = walked_s(catalogue, person, walked) + waits_s
    return estimate_of(rings, night_cases(catalogue, person), unit="s")


def _time_left(site: Site, catalogue: Catalogue, case: NightCase) -> FloatArray | None:
    """What is left of an entry time as the alarm is unset; None where none starts. [s]"""
    if case.trip.control is None:
        return None
    starting = [
        moment
        for _, behaviour, moment in noticed_by(site, catalogue, case.trip, leaves="most")
        if behaviour.starts_entry
    ]
    if not starting:
        return None
    first: FloatArray = np.minimum.reduce(
        [until(site, catalogue, case, moment=moment) for moment in starting]
    )
    return first + site.programme.entry_time_s - unset_after(site, catalogue, case)


def unset_after(site: Site, catalogue: Catalogue, case: NightCase) -> FloatArray:
    """When the alarm is unset at the keypad that a trip ends at, in every row. [s]"""
    return _unset_after(catalogue, case.trip.person, _to_its_end(site, catalogue, case))


def unset_estimate(site: Site, catalogue: Catalogue, case: NightCase) -> Estimate:
    """When the alarm is unset at the keypad that a trip ends at. [s]"""
    return _unset_estimate(catalogue, case.trip.person, _to_its_end(site, catalogue, case))


def _to_its_end(site: Site, catalogue: Catalogue, case: NightCase) -> Walked:
    route = walk(site.bare, catalogue, case.ends.start, goal=case.ends.goal)
    last = 0 if route is None else len(route.points) - 1
    return _walked(site, catalogue, case, moment=Moment(last))


def _unset_after(catalogue: Catalogue, person: Person, walked: Walked) -> FloatArray:
    return walked_s(catalogue, person, walked) + night_cases(catalogue, person).rows[CODE]


@lru_cache(maxsize=512)
def _unset_estimate(catalogue: Catalogue, person: Person, walked: Walked) -> Estimate:
    unset = _unset_after(catalogue, person, walked)
    return estimate_of(unset, night_cases(catalogue, person), unit="s")


def _clear(site: Site, catalogue: Catalogue, case: NightCase) -> Estimate | None:
    nearest = nearest_detector(site, catalogue, case)
    if nearest is None:
        return None
    metres, device = nearest
    half = max(one.cell for one in grids_of(site.bare).values()) / 2.0
    return Estimate(
        value=metres,
        low=max(0.0, metres - half),
        high=metres + half,
        unit="m",
        basis=site.device(device).basis_of("mount"),
    )


def nearest_detector(site: Site, catalogue: Catalogue, case: NightCase) -> tuple[float, str] | None:
    """The active movement detector whose floor is nearest to that of a trip [m]; None: none sees its storeys."""
    found = [
        (clearance(site.bare, catalogue, device, ends=case.ends), device.id)
        for device, _ in active_in(site, NIGHT)
        if catalogue.sheet(device.sheet).kind == "movement-detector"
    ]
    found = [one for one in found if np.isfinite(one[0])]
    return min(found, default=None)

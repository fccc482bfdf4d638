"""Coming in and leaving by one door, played and told in short sentences."""

from __future__ import annotations

import math
from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.household import Person
from wardwright.model.site import Site
from wardwright.trials.alarm import detectors_alone
from wardwright.trials.arrival import arrive, wrong_turns
from wardwright.trials.leaving import leave
from wardwright.trials.trips import Trip, controls_of, trips_to


def arrival_notes(site: Site, catalogue: Catalogue, trip: Trip, *, slowest: Person) -> tuple[str, ...]:
    """What happens at one door: an ordinary arrival and leaving, a forgotten code, wrong turns.

    Parameters
    ----------
    site : Site
        The house, its devices and its programme.
    catalogue : Catalogue
        Sheets and figures.
    trip : Trip
        The way in.
    slowest : Person
        Who comes and leaves.

    Returns
    -------
    tuple of str
        Nothing where no zone is programmed: then nothing would happen.
    """
    if not site.zones:
        return ()
    controls = () if trip.control is None else controls_of(site, catalogue)
    plain = detectors_alone(site, catalogue)
    return _notes(plain, catalogue, controls, door=trip.door.id, slowest=slowest)


@lru_cache(maxsize=64)
def _notes(
    site: Site, catalogue: Catalogue, controls: tuple[Device, ...], *, door: str, slowest: Person
) -> tuple[str, ...]:
    """By the detectors and the keypads: the rest does not matter to whoever comes in."""
    trip = next(one for one in trips_to(site.bare, catalogue, controls) if one.door.id == door)
    found = []
    came = arrive(site, catalogue, trip, person=slowest)
    if came.by is None:
        starts = next((one.subject for one in came.timeline if one.what == "entry time starts"), None)
        by = "nothing" if starts is None else site.device(starts).name
        found.append(f"coming in: {by} starts the entry time, unset after {came.unset_s:.0f} s")
    else:
        found.append(f"coming in: {site.device(came.by).name} gives the alarm after {came.alarm_s:.0f} s")
    left = leave(site, catalogue, trip, person=slowest)
    if left.outcome != "set":
        by = "the door" if left.by is None else site.device(left.by).name
        found.append(f"leaving: {left.outcome} by {by} after {left.at_s:.0f} s")
    forgot = arrive(site, catalogue, trip, person=slowest, knows_code=False)
    if forgot.by is not None:
        found.append(
            f"a forgotten code: the alarm after {forgot.alarm_s:.0f} s by {site.device(forgot.by).name},"
            f" its message may leave after {forgot.message_due_s:.0f} s"
        )
    turns = wrong_turns(site, catalogue, trip, person=slowest)
    rung = [
        f"{one.space.name} after {one.played.alarm_s:.0f} s ({site.device(one.played.by).name})"
        for one in turns
        if one.played.by is not None and math.isfinite(one.played.alarm_s)
    ]
    if rung:
        found.append("a wrong turn is an alarm in " + ", ".join(rung))
    quiet = [one.space.name for one in turns if one.played.by is None]
    if quiet:
        found.append("a wrong turn gives no alarm in " + ", ".join(quiet))
    return tuple(found)

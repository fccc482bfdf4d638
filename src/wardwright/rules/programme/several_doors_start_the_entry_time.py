"""PRG107: more than one way in starts the entry time."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import OpeningMount
from wardwright.model.opening import Opening
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.rules.entry_routes import entry_routes
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import is_instant
from wardwright.rules.programme_times import behaviours_used
from wardwright.rules.registry import rule


@rule(
    code="PRG107",
    name="several-doors-start-the-entry-time",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def several_doors_start_the_entry_time(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Zones that start the entry time beside the one of the household's own door.

    What it checks
        Which zones start the entry time. One door should: the entry door with the quickest way to a keypad. Each
        further zone that starts it is a finding.
    Why it matters
        At such a door, window or detector an intruder has the whole entry time before anything sounds or tells:
        time to find the control unit and break it, so that no message ever leaves.
    How to put it right
        Let one door start the entry time, and make the others instant. A household that comes in by two doors does
        better to unset before coming in, by a keyfob, than to delay both.
    What it cannot know
        Which doors this household will go on using, whatever is programmed; a second door that truly needs its own
        time, such as for somebody who cannot use the first.

    Parameters
    ----------
    site : Site
        The house, its zones and its programme.
    catalogue : Catalogue
        The devices' sheets, and the household's pace.

    Yields
    ------
    Finding
        One for each zone beside the first, with the zone's behaviour as the mend.

    Raises
    ------
    NotComputable
        If there is no zone, or none starts the entry time.
    """
    this = several_doors_start_the_entry_time
    starting = [zone for zone, behaviour in behaviours_used(site) if behaviour.starts_entry]
    if not starting:
        raise NotComputable("no zone starts the entry time", cure="Say which door the household comes in by")
    times = _times(site, catalogue) if len(starting) > 1 else {}
    ranked = sorted(starting, key=lambda zone: (_rank(site, zone, times), zone.number, zone.id))
    kept = ranked[0]
    openings = {opening.id for opening in _openings(site, kept)}
    better = [one.id for one in site.behaviours if is_instant(one) and not one.delays_message]
    for zone in ranked[1:]:
        ways = _openings(site, zone)
        if ways and {opening.id for opening in ways} <= openings:
            continue  # the other leaf of the same door
        name = min(better, key=lambda one: (one != "instant", one), default=None)
        yield this.finding(
            zone.id,
            f"{zone.name}: it starts the entry time, and so does {kept.name}; whoever breaks in here has"
            f" {site.programme.entry_time_s:g} s before anything sounds",
            cure="Make this zone instant, and come in by one door"
            if any(opening.is_entry_door for opening in ways)
            else "Make this zone instant: nobody is told to come in by it",
            mends=()
            if name is None
            else (Mend(action="change-behaviour", subject=zone.id, values=(("behaviour", name),)),),
            related=(*zone.devices, *(opening.id for opening in ways)),
        )


def _openings(site: Site, zone: Zone) -> tuple[Opening, ...]:
    mounts = (site.device(name).mount for name in zone.devices)
    return tuple(site.opening(mount.opening) for mount in mounts if isinstance(mount, OpeningMount))


def _times(site: Site, catalogue: Catalogue) -> dict[str, float]:
    """Seconds from each entry door to its keypad; empty where no keypad is known."""
    try:
        routes = entry_routes(site, catalogue)
    except NotComputable:
        return {}
    # To the tenth: doors as near as that are told apart by their zones' numbers, not by rounding.
    return {one.door.id: round(float(one.route.clock[-1]), 1) for one in routes if one.route is not None}


def _rank(site: Site, zone: Zone, times: dict[str, float]) -> tuple[bool, float]:
    """Entry doors first, the quickest way to a keypad first among them."""
    doors = [opening for opening in _openings(site, zone) if opening.is_entry_door]
    return not doors, min((times.get(door.id, math.inf) for door in doors), default=math.inf)

"""People who stay somewhere rather than walk: they may be anywhere in a space, with a part set or nothing."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.household import Person
from wardwright.model.programme import Behaviour
from wardwright.model.site import Site
from wardwright.rules.kit import NIGHT
from wardwright.trials.arrival import heard_devices
from wardwright.trials.home_goals import middle_of
from wardwright.trials.leaves_opened import Leaves
from wardwright.trials.night_rings import active_in
from wardwright.trials.night_walk import noticed_in_room
from wardwright.trials.trip_played import UNSET, HouseholdTrip, Kind
from wardwright.trials.zone_response import Signal, respond


def stays(site: Site, catalogue: Catalogue) -> Iterator[HouseholdTrip]:
    """Play everybody in each space where they are told that they may be while a part is set.

    Parameters
    ----------
    site : Site
        The house, its people, devices, zones and programme.
    catalogue : Catalogue
        Sheets and figures.

    Yields
    ------
    HouseholdTrip
        The clock starts as they come into the space.
    """
    for person in site.people:
        for part in sorted({one.part for one in person.passes}):
            named = {space for one in person.passes if one.part == part for space in one.may}
            active = active_in(site, part)
            for space in sorted(named):
                if person.may_be_in(space, part):
                    yield from _in_room(site, catalogue, person, part=part, space=space, active=active)


def at_home_unset(site: Site, catalogue: Catalogue) -> Iterator[HouseholdTrip]:
    """Play everybody in each of our spaces with nothing set: only what is always active could ring.

    Parameters
    ----------
    site : Site
        The house, its people, devices, zones and programme.
    catalogue : Catalogue
        Sheets and figures.

    Yields
    ------
    HouseholdTrip
        None where no movement detector is always active.
    """
    active = tuple(
        (device, behaviour) for device, behaviour in heard_devices(site) if behaviour.is_always_active
    )
    if any(catalogue.sheet(device.sheet).kind == "movement-detector" for device, _ in active):
        for person in site.people:
            for space in site.spaces:
                if space.is_protected:
                    yield from _in_room(site, catalogue, person, part=UNSET, space=space.id, active=active)


def _in_room(
    site: Site,
    catalogue: Catalogue,
    person: Person,
    *,
    part: str,
    space: str,
    active: tuple[tuple[Device, Behaviour], ...],
) -> Iterator[HouseholdTrip]:
    """Somebody who is anywhere in one space; the clock starts as they come into it."""
    room = site.space(space)
    if not room.is_protected:
        return
    kinds: tuple[Leaves, ...] = ("night" if part == NIGHT else "usual", "most")
    kind: Kind = "unset" if part == UNSET else "stay"
    for leaves in kinds:
        signals = [
            Signal(0.0, behaviour, device.id)
            for device, behaviour in active
            if behaviour.alarms
            and catalogue.sheet(device.sheet).kind == "movement-detector"
            and noticed_in_room(site.bare, catalogue, device, room=room, leaves=leaves)
        ]
        answer = respond(signals, site.programme)
        first = next((one for one in answer.timeline if one.what in ("alarm", "entry time ends")), None)
        by = None if first is None else first.subject
        yield HouseholdTrip(
            person.id, kind, part, space, leaves, answer.alarm_s, by,
            next((one.id for device, one in active if device.id == by), None),
            middle_of(room) if by else None, answer.message_due_s,
        )  # fmt: skip

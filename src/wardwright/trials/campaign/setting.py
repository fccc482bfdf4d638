"""What a campaign is run on: a site's house, alarm, ways in and goals, made ready once."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.device import Device
from wardwright.model.place import Place
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import way_in_spot
from wardwright.trials.alarm import alarm_of
from wardwright.trials.campaign.entries import Entries, entries_of
from wardwright.trials.campaign.goals import Goal, goals_of
from wardwright.trials.campaign.ground import Ground, ground_of
from wardwright.trials.campaign.inputs import Who
from wardwright.trials.campaign.play import Kit
from wardwright.trials.independent import notices_of
from wardwright.trials.watchers import devices_of, has_sounder
from wardwright.trials.ways_in import WayIn, ways_in
from wardwright.trials.ways_on_foot import on_foot


class Sounder(NamedTuple):
    """A sounder, and what sounds without it."""

    device: Device
    others: bool
    """Whether anything else sounds."""
    others_alone: bool
    """Whether anything else sounds by itself when it loses the control unit."""


class Setting(NamedTuple):
    """All that intrusions are played on."""

    site: Site
    part: str
    ways: tuple[WayIn, ...]
    """Those from which some goal can be reached on foot."""
    closed: tuple[WayIn, ...]
    """Those from which none can."""
    entries: Entries
    goals: tuple[Goal, ...]
    devices: tuple[Device, ...]
    """Detectors that are heard: movement detectors first, each in the order of ids."""
    sounders: tuple[Sounder, ...]
    ground: Ground
    kit: Kit
    who: Who
    room: Figure
    """Room temperatures while set. [deg C]"""


def setting_of(site: Site, catalogue: Catalogue, *, part: str = "full") -> Setting:
    """Make a site ready for a campaign.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets, figures and entry shares.
    part : str, default "full"
        What is set.

    Returns
    -------
    Setting
        For `play`.

    Raises
    ------
    NotComputable
        If there is no way in, nothing to go for, or no way on foot between them.
    """
    house = site.bare
    every, _ = ways_in(site, catalogue)
    if not every:
        raise NotComputable("no way in is drawn")
    goals = goals_of(site, catalogue, every)
    if not goals:
        raise NotComputable("no control unit and no targets: nothing to go for")
    open_to = [way for way in every if _leads(house, catalogue, way, goals=goals)]
    if not open_to:
        raise NotComputable("no way on foot leads from any way in to the control unit or a target")
    heard = {device.id: behaviour for device, behaviour in alarm_of(site, catalogue, part).heard}
    by_kind = [
        tuple(
            one
            for one in sorted(site.devices, key=lambda d: d.id)
            if one.id in heard and is_mover is _moves(catalogue, one)
        )
        for is_mover in (True, False)
    ]
    ways, devices = tuple(open_to), (*by_kind[0], *by_kind[1])
    unit = next((i for i, goal in enumerate(goals) if goal.target is None), None)
    room = room_of(site.place)
    entries = entries_of(site, catalogue, ways)
    return Setting(
        site=site,
        part=part,
        ways=ways,
        closed=tuple(way for way in every if way not in open_to),
        entries=entries,
        goals=goals,
        devices=devices,
        sounders=tuple(
            Sounder(device, has_sounder(rest, catalogue), _sounds_alone(rest, catalogue))
            for device in devices_of(site, catalogue, "sounder")
            for rest in (_without(site, device),)
        ),
        ground=ground_of(
            house,
            catalogue,
            ways=ways,
            goals=tuple(goal.spot for goal in goals),
            unit=unit,
            movement=by_kind[0],
            at_openings=by_kind[1],
            rooms_c=_rooms(room),
        ),
        kit=Kit(
            behaviours=tuple(heard[one.id] for one in devices),
            sleeps=np.array([_sleep(catalogue, one) for one in by_kind[0]]),
            programme=site.programme,
            sounds=alarm_of(site, catalogue, part).sounds,
            sounds_alone=_sounds_alone(site, catalogue),
            groups=_groups(site, devices),
        ),
        who=Who(
            ways=tuple((way.opening.id, way.manner) for way in ways),
            shares=tuple(entries.shares[way.opening.id] for way in ways),
            goals=tuple(goal.id for goal in goals),
            unit=unit,
            movement=tuple(one.id for one in by_kind[0]),
            at_openings=tuple(one.id for one in by_kind[1]),
            paths=_paths(site, catalogue),
        ),
        room=room,
    )


def room_of(place: Place) -> Figure:
    """Room temperatures while set: as warm as the warm room in one case of twenty, as much colder in another."""
    usual, warm = place.usual_room_c, max(place.usual_room_c, place.warm_room_c)
    return Figure(
        id="room",
        name="room temperature while set",
        value=usual,
        low=usual - (warm - usual),
        high=warm,
        unit="deg C",
        source="own",
        mark="assumption",
    )


def _rooms(room: Figure) -> tuple[float, ...]:
    """The usual temperature, half way to the warm one, the warm one, and half as much warmer again."""
    step = (room.high - room.value) / 2.0
    return tuple(room.value + share * step for share in (0.0, 1.0, 2.0, 3.0)) if step > 0.0 else (room.value,)


def _leads(house: Site, catalogue: Catalogue, way: WayIn, *, goals: tuple[Goal, ...]) -> bool:
    start = way_in_spot(house, way.opening)
    try:
        return any(on_foot(house, catalogue, start=start, goal=goal.spot) is not None for goal in goals)
    except NotComputable:
        return False


def _moves(catalogue: Catalogue, device: Device) -> bool:
    return catalogue.sheet(device.sheet).kind == "movement-detector"


def _sleep(catalogue: Catalogue, device: Device) -> float:
    """How long a battery detector stays quiet after a signal; one with another supply does not sleep. [s]"""
    sheet = catalogue.sheet(device.sheet)
    return sheet.movement.sleep_s if sheet.movement is not None and sheet.power == "cell" else 0.0


def _without(site: Site, device: Device) -> Site:
    return site.model_copy(update={"devices": tuple(one for one in site.devices if one.id != device.id)})


def _sounds_alone(site: Site, catalogue: Catalogue) -> bool:
    sheets = [catalogue.sheet(device.sheet).sounder for device in site.devices]
    return any(one is not None and one.is_self_powered for one in sheets)


def _paths(site: Site, catalogue: Catalogue) -> frozenset[str]:
    """Message paths that transmitters give; none where no transmitter is told."""
    transmitters = [
        catalogue.sheet(device.sheet).transmitter for device in devices_of(site, catalogue, "transmitter")
    ]
    return frozenset(path for one in transmitters if one is not None for path in one.paths)


def _groups(site: Site, devices: tuple[Device, ...]) -> np.ndarray[tuple[int], np.dtype[np.int64]]:
    """Which devices are one notice, by number; -1: it confirms nothing, and is confirmed by nothing."""
    numbers: dict[str, int] = {}
    names = notices_of(site, devices)
    found = [
        -1 if name is None else numbers.setdefault(name, len(numbers))
        for name in (names[device.id] for device in devices)
    ]
    return np.array(found, dtype=np.int64)

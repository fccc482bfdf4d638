"""Which radio device talks to which, straight or by a repeater, and what each end sends and takes."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, FreeMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.fixture import Outlet
from wardwright.model.placement import Standing
from wardwright.model.record import Point3
from wardwright.model.site import Site
from wardwright.physics.radio.from_site import radio_paths, radio_place
from wardwright.rules.keyfob_places import pressed_at

WITHOUT_LINK = ("control-unit", "transmitter", "router")
"""Kinds that others talk to, or that are wired."""
HEARERS: tuple[DeviceKind, DeviceKind] = ("control-unit", "repeater")
"""Kinds that hear the alarm's own devices."""
SAME_BAND_MHZ = 20.0
"""Two radios farther apart than this do not hear each other. [MHz] (assumption)"""
PRESSED_BY_HAND = ("keyfob", "hold-up-button")
"""Kinds with a body beside them when they send."""


class End(NamedTuple):
    """One end of a hop."""

    ident: str
    """The device's id."""
    name: str
    place: Point3
    """Above the house's zero. [m]"""
    power_dbm: float | None
    sensitivity_dbm: float | None
    is_two_way: bool


class Hop(NamedTuple):
    """One stretch through the air, from a device to what hears it."""

    sender: End
    receiver: End
    frequency_mhz: float
    has_body: bool

    @property
    def key(self) -> str:
        """What its own shadow hangs on: the two ends, whoever sends."""
        return "|".join(sorted((self.sender.ident, self.receiver.ident)))


class Way(NamedTuple):
    """One way of a device's signal: a hop, or two by a repeater; for a keyfob, from where it is pressed."""

    hops: tuple[Hop, ...]
    place: Standing | None
    place_words: str


def linked_devices(site: Site, catalogue: Catalogue) -> tuple[tuple[Device, DeviceSheet], ...]:
    """Radio devices that have to be heard, with their sheets, by id."""
    return tuple(
        (device, sheet)
        for device in sorted(site.devices, key=lambda one: one.id)
        for sheet in (catalogue.sheet(device.sheet),)
        if sheet.link == "radio" and sheet.kind not in WITHOUT_LINK
    )


class Heard(NamedTuple):
    """What can hear a device: hashable, so that links are remembered by it."""

    units: tuple[Device, ...]
    repeaters: tuple[Device, ...]
    routers: tuple[Device, ...]


def heard_by(site: Site, catalogue: Catalogue) -> Heard:
    """The control units, repeaters and routers of a site, with a radio."""
    return _heard_by(site.devices, site.outlets, catalogue)


@lru_cache(maxsize=256)
def _heard_by(devices: tuple[Device, ...], outlets: tuple[Outlet, ...], catalogue: Catalogue) -> Heard:
    every = [(device, catalogue.sheet(device.sheet)) for device in sorted(devices, key=lambda one: one.id)]
    units, repeaters = (
        tuple(device for device, sheet in every if sheet.kind == kind and sheet.link == "radio")
        for kind in HEARERS
    )
    routers = tuple(device for device, sheet in every if sheet.kind == "router")
    return Heard(units, repeaters, routers or _drawn_routers(outlets, catalogue))


@lru_cache(maxsize=64)
def _drawn_routers(outlets: tuple[Outlet, ...], catalogue: Catalogue) -> tuple[Device, ...]:
    """Routers that are drawn as points of the house: taken to have the radio of the catalogue's first.

    One object for one router: links are remembered by what hears them, and found again without comparing.
    """
    row = next((one for one in catalogue.sheets if one.kind == "router" and one.radio is not None), None)
    drawn = [one for one in outlets if one.kind == "router"] if row is not None else []
    return tuple(
        Device(
            id=one.id,
            name=one.name,
            sheet=row.id,
            mount=FreeMount(storey=one.storey, at_m=one.at_m, height_m=one.height_m),
        )
        for one in drawn
        if row is not None
    )


def ways_of(
    house: Site, catalogue: Catalogue, device: Device, *, heard: Heard
) -> tuple[tuple[Way, ...], ...]:
    """The ways of a device's signal.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        The devices' sheets.
    device : Device
        A radio device.
    heard : Heard
        What can hear it.

    Returns
    -------
    tuple of tuple of Way
        For each place that it sends from (one, but for a keyfob), the ways from there: straight first.

    Raises
    ------
    NotComputable
        If its sheet or that of all that could hear it is silent, nothing is there to hear it, or their bands differ.
    """
    return _ways_of(house, catalogue, device, heard=heard)


@lru_cache(maxsize=4096)
def _ways_of(
    house: Site, catalogue: Catalogue, device: Device, *, heard: Heard
) -> tuple[tuple[Way, ...], ...]:
    sheet = catalogue.sheet(device.sheet)
    band = _band(sheet, device)
    mine = _end(house, catalogue, device)
    if mine.power_dbm is None:
        raise NotComputable(
            f"the sheet of {device.name} does not say what its radio sends",
            cure="Add [sheet.radio] to its sheet",
        )
    goals = _goals(catalogue, heard, sheet=sheet, band=band)
    has_body = sheet.kind in PRESSED_BY_HAND
    found = []
    for end, place, words in _sent_from(house, mine, sheet=sheet):
        ways = [
            Way((Hop(end, _end(house, catalogue, goal), band, has_body),), place, words) for goal in goals
        ]
        for repeater in heard.repeaters if sheet.kind not in ("repeater", "camera") else ():
            middle = _end(house, catalogue, repeater)
            if abs(_band(catalogue.sheet(repeater.sheet), repeater) - band) > SAME_BAND_MHZ:
                continue
            first = Hop(end, middle, band, has_body)
            if middle.sensitivity_dbm is None or middle.power_dbm is None:
                continue
            ways += [
                Way((first, Hop(middle, _end(house, catalogue, goal), band, has_body=False)), place, words)
                for goal in goals
            ]
        found.append(tuple(ways))
    return tuple(found)


def _band(sheet: DeviceSheet, device: Device) -> float:
    if sheet.frequency_mhz is None:
        raise NotComputable(
            f"the sheet of {device.name} does not say in which band it sends",
            cure="Add frequency_mhz to its sheet",
        )
    return sheet.frequency_mhz


def _goals(catalogue: Catalogue, heard: Heard, *, sheet: DeviceSheet, band: float) -> tuple[Device, ...]:
    """What has to hear it in the end."""
    is_camera = sheet.kind == "camera"
    all_goals = heard.routers if is_camera else heard.units
    what = "router" if is_camera else "control unit"
    if not all_goals:
        raise NotComputable(f"no {what} that could hear it", cure=f"Add the {what}")
    rows = [(goal, catalogue.sheet(goal.sheet)) for goal in all_goals]
    said = [(goal, row) for goal, row in rows if row.radio is not None and row.frequency_mhz is not None]
    said = [
        (goal, row) for goal, row in said if row.radio is not None and row.radio.sensitivity_dbm is not None
    ]
    if not said:
        raise NotComputable(
            f"no sheet of a {what} says what its radio takes",
            cure="Add frequency_mhz and [sheet.radio] to its sheet",
        )
    found = tuple(
        goal
        for goal, row in said
        if row.frequency_mhz is not None and abs(row.frequency_mhz - band) <= SAME_BAND_MHZ
    )
    if not found:
        raise NotComputable(
            f"it sends at {band:g} MHz, where no {what} listens", cure="Use one kind of radio"
        )
    return found


def _end(house: Site, catalogue: Catalogue, device: Device) -> End:
    radio = catalogue.sheet(device.sheet).radio
    place = radio_place(house, device)
    if radio is None:
        return End(device.id, device.name, place, None, None, is_two_way=False)
    return End(device.id, device.name, place, radio.power_dbm, radio.sensitivity_dbm, radio.is_two_way)


def _sent_from(house: Site, mine: End, *, sheet: DeviceSheet) -> list[tuple[End, Standing | None, str]]:
    """Where it sends from: its own place, or for a keyfob each place where it is pressed."""
    if sheet.kind != "keyfob":
        return [(mine, None, "")]
    try:
        pressed = pressed_at(house)
    except NotComputable:
        return [(mine, None, "")]
    floors = {storey.id: storey.elevation_m for storey in house.storeys}
    found: list[tuple[End, Standing | None, str]] = []
    for one in pressed:
        at = (one.place.x_m, one.place.y_m, floors[one.place.storey] + one.place.height_m)
        found.append((mine._replace(place=at), one.place, one.words))
    return found


def work_out_together(house: Site, catalogue: Catalogue, hops: Sequence[Hop]) -> None:
    """Work the paths of all hops out at once: each is then asked for one by one, and remembered."""
    for band in sorted({hop.frequency_mhz for hop in hops}):
        ends = [(hop.sender.place, hop.receiver.place) for hop in hops if hop.frequency_mhz == band]
        radio_paths(house, catalogue, ends, frequency=band * 1e6)

"""What is protected and what is not, opening by opening and room by room: facts without a time, a way or a place.

For the customer's risk record: nothing in it hangs on where the control unit is.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

import numpy as np

from wardwright.errors import CatalogueError, NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, OpeningMount
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in, sides_of_opening, space_at, standing
from wardwright.model.record import Id, Record
from wardwright.model.site import Site
from wardwright.trials.undetected import active_devices, undetected
from wardwright.trials.undetected_floor import reaches_space
from wardwright.trials.watchers import at_the_way_in, heard_in
from wardwright.trials.ways_in import WayIn, by_opening, ways_in

Noticed = Literal["at once", "in the room", "further in", "not"]
"""`at once`: as it is opened or broken. `in the room`: before any other room can be entered. `further in`: another
room can be entered first. `not`: nothing that is on would surely notice."""
WATCHING: tuple[DeviceKind, ...] = ("movement-detector", "glass-break-detector", "shock-detector")
"""Kinds that watch a room."""


class OpeningCover(Record):
    """How coming in by one opening is noticed in one part."""

    opening: Id
    space: Id | None
    """The room of ours that it leads into."""
    opened: Noticed | None
    """None: it does not open, or nobody is taken to come in so."""
    glass: Noticed | None
    """The same through its glass; None: it has none that is broken quickly."""
    is_counted: bool
    """Whether anybody is taken to come in by it."""


class RoomCover(Record):
    """What watches one room in one part."""

    space: Id
    by: tuple[DeviceKind, ...]
    """Kinds of device in it that watch it; empty: none."""
    openings: tuple[Id, ...]
    """Its doors and windows to the outside that have a device that tells of them."""


class Cover(Record):
    """What one part covers."""

    part: Id
    openings: tuple[OpeningCover, ...]
    rooms: tuple[RoomCover, ...]


def protection(site: Site, catalogue: Catalogue) -> tuple[Cover, ...]:
    """What each part covers.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Sheets, locks and panes.

    Returns
    -------
    tuple of Cover
        One for each part, in the site's order; openings and rooms storey by storey, by name.
    """
    return tuple(_cover(site, catalogue, part.id) for part in site.parts)


def _cover(site: Site, catalogue: Catalogue, part: str) -> Cover:
    ways, _ = ways_in(site, catalogue)
    counted = {manners[0].opening.id: manners for manners in by_opening(ways)}
    openings = sorted(
        (one for one in site.openings if is_way_in(site, one)), key=lambda one: (_level(site, one), one.name)
    )
    storeys = {storey.id: storey.elevation_m for storey in site.storeys}
    rooms = sorted(
        (one for one in site.spaces if one.is_protected), key=lambda one: (storeys[one.storey], one.name)
    )
    heard = frozenset(device for device, behaviour in heard_in(site, part).items() if behaviour.alarms)
    return Cover(
        part=part,
        openings=tuple(
            _opening(site, catalogue, one, ways=counted.get(one.id, ()), part=part) for one in openings
        ),
        rooms=tuple(_room(site, catalogue, one.id, heard=heard) for one in rooms),
    )


def _opening(
    site: Site, catalogue: Catalogue, opening: Opening, *, ways: tuple[WayIn, ...], part: str
) -> OpeningCover:
    found = {way.manner: _noticed(site, catalogue, way, part=part) for way in ways}
    return OpeningCover(
        opening=opening.id,
        space=_led_into(site, opening),
        opened=found.get("opened"),
        glass=found.get("through the glass"),
        is_counted=bool(ways),
    )


@lru_cache(maxsize=1024)
def _noticed(site: Site, catalogue: Catalogue, way: WayIn, *, part: str) -> Noticed:
    devices = active_devices(site, catalogue, part)
    if not devices:
        return "not"
    if at_the_way_in(site, catalogue, devices, way=way):
        return "at once"
    # The longest walk that is possible past the movement detectors: a promise is made only of what is surely
    # noticed, and whoever has come in another way need not open a leaf with a contact.
    walked = undetected(_moving(site, catalogue), catalogue, way=way, side="surely", part=part)
    free = undetected(site.model_copy(update={"zones": ()}), catalogue, way=way, side="surely", part=part)
    if all(np.array_equal(walked.exact[storey], floor) for storey, floor in free.exact.items()):
        return "not"
    first = _led_into(site, way.opening)
    others = (one.id for one in site.spaces if one.is_protected and one.id != first)
    for space in others:
        try:
            if reaches_space(walked, space) is not None:
                return "further in"
        except NotComputable:
            continue
    return "in the room"


def _moving(site: Site, catalogue: Catalogue) -> Site:
    """The site with its movement detectors alone on its zones."""
    kinds = {device.id: _kind(catalogue, device) for device in site.devices}
    zones = tuple(
        zone.model_copy(
            update={"devices": tuple(one for one in zone.devices if kinds.get(one) == "movement-detector")}
        )
        for zone in site.zones
    )
    return site.model_copy(update={"zones": zones})


def _room(site: Site, catalogue: Catalogue, space: str, *, heard: frozenset[str]) -> RoomCover:
    kinds: set[DeviceKind] = set()
    told: set[str] = set()
    for device in site.devices:
        if device.id not in heard:
            continue
        kind = _kind(catalogue, device)
        if isinstance(device.mount, OpeningMount):
            opening = site.opening(device.mount.opening)
            if is_way_in(site, opening) and _led_into(site, opening) == space:
                told.add(opening.id)
        elif kind in WATCHING and _stands_in(site, device) == space:
            kinds.add(kind)
    return RoomCover(
        space=space, by=tuple(kind for kind in WATCHING if kind in kinds), openings=tuple(sorted(told))
    )


def _kind(catalogue: Catalogue, device: Device) -> DeviceKind | None:
    try:
        return catalogue.sheet(device.sheet).kind
    except CatalogueError:
        return None


def _stands_in(site: Site, device: Device) -> str | None:
    at = standing(site, device)
    space = space_at(site, at.storey, (at.x_m, at.y_m))
    return None if space is None else space.id


def _led_into(site: Site, opening: Opening) -> str | None:
    """The room of ours on the inner side of an opening."""
    sides = (side for side in sides_of_opening(site, opening) if side is not None)
    return next((side for side in sides if site.space(side).is_protected), None)


def _level(site: Site, opening: Opening) -> float:
    return site.storey(site.wall(opening.wall).storey).elevation_m

"""CTL105: a router that is reached before anything alarms."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from wardwright.errors import NoneOfAKind, NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fixture import Outlet
from wardwright.model.placement import space_at, standing
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.walking.from_site import premises_network
from wardwright.rules.entry_routes import place_before, rooms_on_the_way
from wardwright.rules.finding import Finding
from wardwright.rules.instant_watch import watched_at_once
from wardwright.rules.kit import devices_of
from wardwright.rules.registry import rule
from wardwright.rules.suggestion import suggestions
from wardwright.rules.unit_spots import moved_to_watched_spot
from wardwright.rules.wall_spots import room_of


class Router(NamedTuple):
    """A router, drawn as a device or as a point of the house."""

    id: str
    name: str
    storey: str
    at_m: Point2
    """Where somebody stands who pulls its plug. [m]"""
    device: Device | None


@rule(
    code="CTL105",
    name="router-not-protected",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def router_not_protected(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Routers on the entry route, or in a room that nothing watches which alarms at once.

    What it checks
        For each router, whether its room is on the way from an entry door to the keypad, and whether the place
        before it is watched by a device that alarms at once. Left out where no message path on the plan uses
        broadband.
    Why it matters
        Where messages leave by broadband, the router is part of the alarm: one plug pulled during the entry time,
        and nobody outside learns of it.
    How to put it right
        Move the router to a watched room off the entry route, or watch its room with a device that alarms at once,
        or add a second message path.
    What it cannot know
        The socket, the box where the line comes in, and the line itself, outside or in a shared hall.

    Parameters
    ----------
    site : Site
        The house, its routers, devices and zones.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each router that is not protected.

    Raises
    ------
    NoneOfAKind
        If there is no router.
    NotComputable
        If no zone says how a device answers.
    """
    this = router_not_protected
    routers = _routers(site, catalogue)
    if not _uses_broadband(site, catalogue):
        return
    if not site.zones:
        raise NotComputable(
            "no zone is programmed, so no device is known to alarm at once",
            cure="Add the zones and their behaviours",
        )
    on_route = rooms_on_the_way(site, catalogue) or frozenset()
    watched = watched_at_once(site, catalogue)
    for router in routers:
        room = room_of(site, router.storey, router.at_m)
        if not room:
            yield this.not_run(router.id, f"{router.name}: it stands in no space", cure="Draw its room")
            continue
        is_on_route = any(space.id in on_route for space in room)
        if not is_on_route and watched.by(router.storey, router.at_m, room=room):
            continue
        mends = () if router.device is None else moved_to_watched_spot(site, catalogue, router.device)
        new = suggestions(site, mends)
        yield this.finding(
            router.id,
            f"{router.name}: "
            + ("it is on the entry route" if is_on_route else "nothing that alarms at once watches it"),
            cure=f"Move it to the place given, in {new[0].label}"
            if new
            else "Move it to a watched room, watch its room, or add a second message path",
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=router.storey, points=(router.at_m,), label=router.name),
                *new,
            ),
        )


def _routers(site: Site, catalogue: Catalogue) -> tuple[Router, ...]:
    """All routers, by id; NoneOfAKind if there is none."""
    found = [
        Router(one.id, one.name, one.storey, _before(site, one), None)
        for one in site.outlets
        if one.kind == "router"
    ]
    for device, _ in devices_of(site, catalogue, "router"):
        before, place = place_before(site, device), standing(site, device)
        at = (before.x, before.y)
        found.append(Router(device.id, device.name, place.storey, at, device))
    if not found:
        raise NoneOfAKind("no router", kind="router", cure="Add the router where it stands")
    return tuple(sorted(found, key=lambda one: one.id))


def _before(site: Site, outlet: Outlet) -> Point2:
    """Where somebody stands before a point of the house: the nearest free floor of ours. [m]"""
    network = premises_network(site)
    if outlet.storey not in network.storeys or space_at(site, outlet.storey, outlet.at_m) is None:
        return outlet.at_m
    x, y = network.snapped(network.storeys.index(outlet.storey), np.asarray(outlet.at_m))
    return (float(x), float(y))


def _uses_broadband(site: Site, catalogue: Catalogue) -> bool:
    """Whether a message may leave by broadband: also where no message path is known."""
    paths = [sheet.transmitter for _, sheet in devices_of(site, catalogue, "transmitter")]
    return not paths or any(one is not None and "broadband" in one.paths for one in paths)

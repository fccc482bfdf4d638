"""Places where the control unit could go, each scored, and those of them that no other beats in everything."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fixture import Outlet
from wardwright.model.placement import Standing, space_at, standing
from wardwright.model.record import Point3
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.unit_elsewhere import soonest_reached
from wardwright.questions.unit_place import Place, Scores, beats
from wardwright.rules.entry_routes import rooms_on_the_way
from wardwright.rules.likely_margins import likely_margins, margins_of
from wardwright.rules.outside_view import seen_from_outside, usual_height
from wardwright.rules.radio_belief import ReadDevice, read_devices
from wardwright.rules.radio_hops import Hop, heard_by, linked_devices, ways_of
from wardwright.rules.radio_spots import spot_place
from wardwright.rules.unit_spots import UNFIT_USES, USUAL_HEIGHT_M
from wardwright.rules.wall_spots import WallSpot, wall_spots

ANYWHERE: Point3 = (0.0, 0.0, 0.0)
PLACES = 4
"""So many places are told at most. [-]"""


class Places(NamedTuple):
    """The present place of a control unit, and the trade-off line of others."""

    present: Place
    line: tuple[Place, ...]
    """Places that no other beats in everything, that which is reached last first."""


def places_for(site: Site, catalogue: Catalogue, unit: Device) -> Places:
    """The places that a control unit could go to.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets, losses and figures.
    unit : Device
        The control unit.

    Returns
    -------
    Places
        The present one, and at most four others.

    Raises
    ------
    NotComputable
        If no radio device is there whose link to it can be worked out.
    """
    links = _links(site, catalogue, unit)
    if not links:
        raise NotComputable(
            "no radio device whose link to it can be worked out", cure="Add the devices that are planned"
        )
    route = rooms_on_the_way(site, catalogue) or frozenset()
    height = usual_height(unit, USUAL_HEIGHT_M)
    return _places(
        site.bare, catalogue, links, unit=unit, height_m=height, route=route, outlets=site.outlets,
        readings=read_devices(site),
    )  # fmt: skip


def _links(site: Site, catalogue: Catalogue, unit: Device) -> tuple[tuple[str, Hop], ...]:
    """The straight hop of each device to this unit."""
    heard = heard_by(site, catalogue)._replace(repeaters=())
    found: list[tuple[str, Hop]] = []
    for device, sheet in linked_devices(site, catalogue):
        if sheet.kind == "camera":
            continue
        try:
            places = ways_of(site.bare, catalogue, device, heard=heard)
        except NotComputable:
            continue
        hops = [way.hops[0] for ways in places for way in ways if way.hops[0].receiver.ident == unit.id]
        found.extend((device.name, hop) for hop in hops)
    return tuple(found)


@lru_cache(maxsize=64)
def _places(
    house: Site,
    catalogue: Catalogue,
    links: tuple[tuple[str, Hop], ...],
    *,
    unit: Device,
    height_m: float,
    route: frozenset[str],
    outlets: tuple[Outlet, ...],
    readings: tuple[ReadDevice, ...],
) -> Places:
    at = standing(house, unit)
    spots, places, power = _spots(house, height_m, outlets)
    named = sorted(links, key=lambda link: link[0])  # of links that are alike the first by name is told
    each = _margins(house, catalogue, named, places=places, readings=readings)
    as_it_is = np.array(margins_of(house, catalogue, [hop for _, hop in named], readings=readings))
    close = _worth_a_closer_look(tuple(spot.space for spot in spots), each.min(axis=0).tobytes(), power)
    space = space_at(house, at.storey, (at.x_m, at.y_m))
    here_name = "" if space is None else space.name
    is_on_route = space is not None and space.id in route
    near = () if space is None else _power_in(house, outlets).get(space.id, ())
    to_power = _nearest_m(near, (at.x_m, at.y_m))
    now = Place(
        None, here_name, at, *_worst(named, as_it_is), *_walked_and_seen(house, catalogue, at), is_on_route,
        to_power, _in_order(named, as_it_is),
    )  # fmt: skip
    found: list[tuple[Scores, Place, int]] = []
    for i in close:
        spot = spots[i]
        there = spot.standing(height_m)
        scores = (
            *_worst(named, each[:, i]),
            *_walked_and_seen(house, catalogue, there),
            spot.space in route,
            power[i],
        )
        place = Place(spot, house.space(spot.space).name, there, *scores)
        found.append((place.scores, place, i))
    rivals = {now.scores, *(mine for mine, *_ in found)}
    line = [one for one in found if not any(beats(rival, one[0]) for rival in rivals)]
    # Of places that are alike in everything the first is told.
    alike = {mine: (place, i) for mine, place, i in reversed(line) if mine != now.scores}
    ranked = sorted(alike.values(), key=lambda one: (-one[0].reached_s, -one[0].margin_db, one[0].space))
    best = ((place, _in_order(named, each[:, i])) for place, i in ranked[:PLACES])
    return Places(now, tuple(place._replace(margins=margins) for place, margins in best))


@lru_cache(maxsize=32)
def _spots(
    house: Site, height_m: float, outlets: tuple[Outlet, ...]
) -> tuple[tuple[WallSpot, ...], tuple[Point3, ...], tuple[float, ...]]:
    """All spots in dry rooms of ours, where they are in the house, and how far off power is. [m]"""
    spots = tuple(
        spot
        for space in sorted(house.spaces, key=lambda one: one.id)
        if space.is_protected and space.use not in UNFIT_USES
        for spot in wall_spots(house, space, height_m=height_m)
    )
    there = _power_in(house, outlets)
    power = tuple(_nearest_m(there.get(spot.space, ()), (spot.x_m, spot.y_m)) for spot in spots)
    return spots, tuple(spot_place(house, spot, height_m) for spot in spots), power


def _margins(
    house: Site,
    catalogue: Catalogue,
    links: Sequence[tuple[str, Hop]],
    *,
    places: tuple[Point3, ...],
    readings: tuple[ReadDevice, ...],
) -> FloatArray:
    """The likely margin of each link from each place, shape (links, places). [dB]"""
    return np.array(
        [
            _link_margins(house, catalogue, _from_anywhere(hop), places=places, readings=readings)
            for _, hop in links
        ]
    )


def _worst(links: Sequence[tuple[str, Hop]], margins: FloatArray) -> tuple[float, str]:
    """The worst margin at one place, and whose it is."""
    worst = int(margins.argmin())
    return float(margins[worst]), links[worst][0]


def _in_order(links: Sequence[tuple[str, Hop]], margins: FloatArray) -> tuple[tuple[float, str], ...]:
    pairs = zip(margins.tolist(), (hop.sender.ident for _, hop in links), strict=True)
    return tuple(sorted(pairs))


def _from_anywhere(hop: Hop) -> Hop:
    """A hop that does not tell where it is heard now, so that what is remembered by it outlives the unit's moves."""
    return hop._replace(receiver=hop.receiver._replace(place=ANYWHERE))


@lru_cache(maxsize=512)
def _link_margins(
    house: Site,
    catalogue: Catalogue,
    hop: Hop,
    *,
    places: tuple[Point3, ...],
    readings: tuple[ReadDevice, ...],
) -> tuple[float, ...]:
    """The likely margins of one link, the unit at each of some places: another device's move leaves them."""
    ways = [(hop.sender.place, place) for place in places]
    return tuple(likely_margins(house, catalogue, hop, ways=ways, readings=readings))


@lru_cache(maxsize=32)
def _power_in(house: Site, outlets: tuple[Outlet, ...]) -> dict[str, list[tuple[float, float]]]:
    """Where power is in each space that has any. [m]"""
    found: dict[str, list[tuple[float, float]]] = {}
    for one in outlets:
        space = space_at(house, one.storey, one.at_m) if one.kind in ("power", "fused-spur") else None
        if space is not None:
            found.setdefault(space.id, []).append(one.at_m)
    return found


def _nearest_m(power: Sequence[tuple[float, float]], place: tuple[float, float]) -> float:
    """From a place to the nearest of the power points of its space; infinite where that has none. [m]"""
    return min((math.dist(place, at) for at in power), default=math.inf)


@lru_cache(maxsize=64)
def _worth_a_closer_look(rooms: tuple[str, ...], worst: bytes, power: tuple[float, ...]) -> tuple[int, ...]:
    """Of each room the best place for radio, and the nearest to a power point.

    Remembered by the worst margins themselves: most moves leave them as they were.
    """
    spots: dict[str, list[int]] = {}
    for i, room in enumerate(rooms):
        spots.setdefault(room, []).append(i)
    margin, far = np.round(np.frombuffer(worst), 6).tolist(), np.round(power, 6).tolist()
    found: set[int] = set()
    for mine in spots.values():
        found.add(min(mine, key=lambda i: (-margin[i], i)))
        found.add(min(mine, key=lambda i: (far[i], -margin[i], i)))
    return tuple(sorted(found))


@lru_cache(maxsize=1024)
def _walked_and_seen(house: Site, catalogue: Catalogue, at: Standing) -> tuple[float, int]:
    """When the quickest of all ways in reaches a place [s], and through how many panes it is seen."""
    reached = soonest_reached(house, catalogue, Spot(at.storey, at.x_m, at.y_m))
    return reached, len(seen_from_outside(house, at))

"""The fastest way on foot from a way in to a place, and how far along it each point is."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray, IntArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.leaves import state_of
from wardwright.model.placement import opening_line, standing
from wardwright.model.record import Line2
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import Walks, walks_of
from wardwright.physics.walking.from_site import (
    BODY_RADIUS_M,
    Leg,
    Paces,
    Route,
    Spot,
    fastest_route,
    premises_network,
    way_in_spot,
)
from wardwright.trials.paces import paces_of
from wardwright.trials.ways_in import WayIn, ways_in


class Progress(NamedTuple):
    """How far along a route each of its points is."""

    flat: FloatArray
    """Walked on the flat. [m]"""
    stairs: FloatArray
    """Walked on stairs. [m]"""
    doors: FloatArray
    """Doors opened. [-]"""
    plan: FloatArray
    """Walked as the plan shows it, stairs without their rise: as the detection engine counts. [m]"""


class ShutLeaf(NamedTuple):
    """A shut leaf that is opened on the way. Nobody is seen through it before, however far a body reaches into it."""

    near: int
    """The first point from which a body reaches to it. [-]"""
    come_to: int
    """The point at which it is come to ... [-]"""
    opened: int
    """... and that at which it is open. [-]"""
    line: Line2
    """Where it stands. [m]"""

    def seen_at(self, index: IntArray) -> IntArray:
        """Points at which somebody is noticed who would be at some points if the leaf were not there."""
        reaches_in = (index >= self.near) & (index <= self.come_to)
        return np.where(reaches_in, self.opened, index)


class OnFoot(NamedTuple):
    """One way on foot; remembered whole, since every race and every detector asks."""

    route: Route
    progress: Progress
    shut: tuple[ShutLeaf, ...]
    passes: Mapping[str, int]
    """Door -> the point at which it is first come to."""


def spot_of(site: Site, device: Device) -> Spot:
    """Where somebody stands to lay hands on a device."""
    at = standing(site, device)
    return Spot(at.storey, at.x_m, at.y_m)


def route_to(site: Site, catalogue: Catalogue, *, way: WayIn, goal: Spot) -> Route | None:
    """The fastest way from a way in to a goal; None where there is none."""
    found = on_foot(site, catalogue, start=way_in_spot(site, way.opening), goal=goal)
    return None if found is None else found.route


def on_foot(site: Site, catalogue: Catalogue, *, start: Spot, goal: Spot) -> OnFoot | None:
    """The fastest way between two places with how far along it each point is; None where there is none."""
    return _on_foot(site.bare, start, goal, paces=paces_of(catalogue))


@lru_cache(maxsize=1024)
def _on_foot(house: Site, start: Spot, goal: Spot, *, paces: Paces) -> OnFoot | None:
    route = fastest_route(premises_network(house), start, goal, paces=paces)
    if route is None:
        return None
    # The first time counts: a later one overwrites nothing.
    passes = {leg.subject: leg.first for leg in reversed(route.legs) if leg.kind == "door" and leg.subject}
    opened = ((leg, house.opening(leg.subject)) for leg in opened_legs(route) if leg.subject)
    shut = (_shut_leaf(house, route, leg) for leg, one in opened if state_of(one, "told") == "shut")
    return OnFoot(route, progress_of(route), tuple(shut), passes)


def _shut_leaf(house: Site, route: Route, leg: Leg) -> ShutLeaf:
    """A leaf with the points from which a body reaches to it on the way to it."""
    opening = house.opening(str(leg.subject))
    line = opening_line(house.wall(opening.wall), opening)
    start, end = np.array(line)
    length = float(np.hypot(*(end - start)))
    off, way = route.points[: leg.first + 1] - start, (end - start) / length
    aside, along = np.abs(off[:, 1] * way[0] - off[:, 0] * way[1]), off @ way
    reaches = (aside < BODY_RADIUS_M) & (along > -BODY_RADIUS_M) & (along < length + BODY_RADIUS_M)
    before = np.flatnonzero(~reaches)
    return ShutLeaf(int(before[-1]) + 1 if len(before) else 0, leg.first, leg.last, line)


@lru_cache(maxsize=64)
def walks_from(
    house: Site, catalogue: Catalogue, goal: Spot, *, starts: tuple[Spot, ...]
) -> tuple[tuple[Spot, ...], Walks]:
    """The fastest ways to a goal from some places, laid end to end for the detectors; and from which there is one."""
    found: dict[Spot, OnFoot] = {}
    for start in starts:
        try:
            way = on_foot(house, catalogue, start=start, goal=goal)
        except NotComputable:
            continue  # it stands on no floor of ours: who asks for this way alone is told so
        if way is not None:
            found[start] = way
    return tuple(found), walks_along(found.values())


@lru_cache(maxsize=64)
def starts_of(house: Site, catalogue: Catalogue) -> tuple[Spot, ...]:
    """Where one stands who has just come in, for every opening that leads in."""
    openings = {way.opening.id: way.opening for way in ways_in(house, catalogue)[0]}
    return tuple(dict.fromkeys(way_in_spot(house, one) for one in openings.values()))


def walks_along(ways: Iterable[OnFoot]) -> Walks:
    """Ways laid end to end for the detectors, with their points on stairs and those at shut leaves."""
    known = tuple(ways)
    routes = [one.route for one in known]
    walks = walks_of(
        ((one.points, one.storeys, one.clock) for one in routes), flights=(flights_of(one) for one in routes)
    )
    return walks.with_leaves(
        # As it is open the body stands at it still, and comes in view with its next step.
        (number, leaf.near, leaf.opened, np.array(leaf.line))
        for number, one in enumerate(known)
        for leaf in one.shut
    )


def flights_of(route: Route) -> list[str]:
    """The flight of stairs that each point of a route is on, its ends among them; "" where none."""
    found = [""] * len(route.points)
    for leg in route.legs:
        if leg.kind.startswith("stairs"):
            found[leg.first : leg.last + 1] = [str(leg.subject)] * (leg.last + 1 - leg.first)
    return found


def opened_legs(route: Route) -> tuple[Leg, ...]:
    """The legs of a route at which a leaf that is shut or ajar is opened."""
    return tuple(leg for leg in route.legs if leg.kind == "door" and leg.last > leg.first)


def progress_of(route: Route) -> Progress:
    """How far along a route each of its points is."""
    n = len(route.points)
    flat, stairs, doors = np.zeros(n), np.zeros(n), np.zeros(n)
    steps = np.hypot(*np.diff(route.points, axis=0).T)
    for leg in route.legs:
        if leg.kind == "door":
            # A leaf that stands open is a leg of one point: nothing is opened there.
            if leg.last > leg.first:
                doors[leg.last :] += 1.0
            continue
        target = flat if leg.kind == "floor" else stairs
        walked = np.cumsum(steps[leg.first : leg.last])
        whole = float(steps[leg.first : leg.last].sum())
        if whole > 0.0:
            target[leg.first + 1 : leg.last] += walked[:-1] / whole * leg.length
        target[leg.last :] += leg.length
    return Progress(flat, stairs, doors, np.concatenate([[0.0], np.cumsum(steps)]))

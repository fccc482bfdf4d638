"""The fastest way on foot from a way in to a place, and how far along it each point is."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import (
    Leg,
    Paces,
    Route,
    Spot,
    fastest_route,
    premises_network,
    way_in_spot,
)
from wardwright.trials.paces import paces_of
from wardwright.trials.ways_in import WayIn


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


def spot_of(site: Site, device: Device) -> Spot:
    """Where somebody stands to lay hands on a device."""
    at = standing(site, device)
    return Spot(at.storey, at.x_m, at.y_m)


def route_to(site: Site, catalogue: Catalogue, *, way: WayIn, goal: Spot) -> Route | None:
    """The fastest way from a way in to a goal; None where there is none."""
    return _route(site.bare, way_in_spot(site, way.opening), goal, paces=paces_of(catalogue))


@lru_cache(maxsize=4096)
def _route(house: Site, start: Spot, goal: Spot, *, paces: Paces) -> Route | None:
    return fastest_route(premises_network(house), start, goal, paces=paces)


def shut_doors(route: Route) -> tuple[Leg, ...]:
    """The legs of a route at which a leaf is opened."""
    return tuple(leg for leg in route.legs if leg.kind == "door" and leg.last > leg.first)


def progress_of(route: Route) -> Progress:
    """How far along a route each of its points is."""
    n = len(route.points)
    flat, stairs, doors = np.zeros(n), np.zeros(n), np.zeros(n)
    for leg in route.legs:
        if leg.kind == "door":
            # A leaf that stands open is a leg of one point: nothing is opened there.
            if leg.last > leg.first:
                doors[leg.last :] += 1.0
            continue
        share = np.zeros(n)
        steps = np.hypot(*np.diff(route.points[leg.first : leg.last + 1], axis=0).T)
        whole = float(steps.sum())
        if whole > 0.0:
            share[leg.first + 1 : leg.last + 1] = np.cumsum(steps) / whole
        share[leg.last :] = 1.0
        target = flat if leg.kind == "floor" else stairs
        target += share * leg.length
    plan = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(route.points, axis=0).T))])
    return Progress(flat, stairs, doors, plan)

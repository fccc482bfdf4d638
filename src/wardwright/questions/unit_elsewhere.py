"""Would the control unit be safer by another power point? The one that is reached last, from every way in."""

from __future__ import annotations

import math
from contextlib import suppress
from functools import lru_cache
from typing import NamedTuple

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import FreeMount
from wardwright.model.fixture import Outlet
from wardwright.model.placement import space_at
from wardwright.model.revision import with_device
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, fastest_time, premises_network, way_in_spot
from wardwright.trials.paces import paces_of
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import ways_in
from wardwright.trials.ways_on_foot import spot_of

HEIGHT_M = 1.4
"""Height at which a control unit is thought of by a power point. [m] (common practice)"""


class Elsewhere(NamedTuple):
    """A power point, and how soon the quickest way in reaches it."""

    outlet: str
    spot: Spot
    reached_s: float


def best_elsewhere(site: Site, catalogue: Catalogue) -> Elsewhere | None:
    """The power point in another space that the quickest of all ways in reaches last.

    Parameters
    ----------
    site : Site
        With a control unit and power points.
    catalogue : Catalogue
        Sheets and figures.

    Returns
    -------
    Elsewhere or None
        None if there is no unit, or no other power point is reached later than the unit is where it stands.
    """
    units = control_units(site, catalogue)
    if not units:
        return None
    return _best(site.bare, catalogue, spot_of(site, units[0]), outlets=site.outlets)


@lru_cache(maxsize=64)
def _best(house: Site, catalogue: Catalogue, now: Spot, *, outlets: tuple[Outlet, ...]) -> Elsewhere | None:
    here = space_at(house, now.storey, (now.x, now.y))
    found = [Elsewhere("", now, soonest_reached(house, catalogue, now))]
    for outlet in sorted(outlets, key=lambda one: one.id):
        space = space_at(house, outlet.storey, outlet.at_m)
        if outlet.kind not in ("power", "fused-spur") or space is None or space.belongs != "ours":
            continue
        if here is None or space.id != here.id:
            spot = Spot(outlet.storey, *outlet.at_m)
            found.append(Elsewhere(outlet.id, spot, soonest_reached(house, catalogue, spot)))
    best = max(found, key=lambda one: (one.reached_s, one.outlet))
    return best if best.outlet and best.reached_s > found[0].reached_s else None


def moved_to(site: Site, catalogue: Catalogue, spot: Spot) -> Site:
    """The site with its control unit at another spot."""
    unit = control_units(site, catalogue)[0]
    mount = FreeMount(storey=spot.storey, at_m=(spot.x, spot.y), height_m=HEIGHT_M)
    return with_device(site, unit.model_copy(update={"mount": mount, "heading_deg": None}))


@lru_cache(maxsize=1024)
def soonest_reached(house: Site, catalogue: Catalogue, goal: Spot) -> float:
    """When the quickest of all ways in reaches a spot, climbing in included. [s]

    Remembered by the spot: where power is stays the same while the unit moves.
    """
    climb = catalogue.figure("climb-in").value
    found = []
    for start, climbs in _comes_in(house, catalogue):
        with suppress(NotComputable):
            clock = fastest_time(premises_network(house.bare), start, goal, paces=paces_of(catalogue))
            found.append(clock + (climb if climbs else 0.0))
    return min((one for one in found if math.isfinite(one)), default=0.0)


@lru_cache(maxsize=64)
def _comes_in(house: Site, catalogue: Catalogue) -> tuple[tuple[Spot, bool], ...]:
    """Where one stands who has come in, and whether by climbing."""
    return tuple(
        dict.fromkeys((way_in_spot(house, way.opening), way.climbs) for way in ways_in(house, catalogue)[0])
    )

"""Would the control unit be safer by another power point? The races run again with it there."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import FreeMount
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.trials.race import race
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import ways_in

HEIGHT_M = 1.4
"""Height at which a control unit is thought of by a power point. [m] (common practice)"""
MOST_TRIED = 6
"""At most this many power points are tried, by id. [-]"""


class Elsewhere(NamedTuple):
    """A power point and the least time in hand that any way in leaves there."""

    outlet: str
    spot: Spot
    least_hand_s: float


@lru_cache(maxsize=32)
def best_elsewhere(site: Site, catalogue: Catalogue) -> Elsewhere | None:
    """The power point in another space where the worst way in leaves most time in hand.

    Parameters
    ----------
    site : Site
        With a control unit and power points.
    catalogue : Catalogue
        Sheets and figures.

    Returns
    -------
    Elsewhere or None
        None if there is no unit, no other power point, or none is better than where it is.
    """
    units = control_units(site, catalogue)
    if not units:
        return None
    at = standing(site, units[0])
    here = space_at(site, at.storey, (at.x_m, at.y_m))
    found = [Elsewhere("", Spot(at.storey, at.x_m, at.y_m), _least_hand(site, catalogue, at[:3]))]
    tried = 0
    for outlet in sorted(site.outlets, key=lambda one: one.id):
        space = space_at(site, outlet.storey, outlet.at_m)
        if outlet.kind not in ("power", "fused-spur") or space is None or space.belongs != "ours":
            continue
        if here is not None and space.id == here.id:
            continue
        spot = Spot(outlet.storey, *outlet.at_m)
        found.append(
            Elsewhere(outlet.id, spot, _least_hand(moved_to(site, catalogue, spot), catalogue, spot))
        )
        tried += 1
        if tried == MOST_TRIED:
            break
    best = max(found, key=lambda one: (one.least_hand_s, one.outlet))
    return best if best.outlet and best.least_hand_s > found[0].least_hand_s else None


def moved_to(site: Site, catalogue: Catalogue, spot: Spot) -> Site:
    """The site with its control unit at another spot."""
    unit = control_units(site, catalogue)[0]
    mount = FreeMount(storey=spot.storey, at_m=(spot.x, spot.y), height_m=HEIGHT_M)
    moved = unit.model_copy(update={"mount": mount, "heading_deg": None})
    devices = tuple(moved if one.id == unit.id else one for one in site.devices)
    return site.model_copy(update={"devices": devices})


def _least_hand(site: Site, catalogue: Catalogue, at: tuple[str, float, float]) -> float:
    """The least of all ways in, likely case: message before broken, sounder before reached. [s]"""
    goal = Spot(*at)
    stay = catalogue.figure("stay").value
    least = np.inf
    for way in ways_in(site, catalogue)[0]:
        try:
            one = race(site, catalogue, way=way, goal=goal)
        except NotComputable:
            continue
        hands = [one.broken - one.message] + ([] if one.sounder is None else [one.reached - one.sounder])
        least = min(least, *(max(float(hand[0]), -stay) for hand in hands))
    return float(least)

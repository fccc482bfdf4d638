"""Where the intruders of a campaign go."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import shapely

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.household import Target
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.trials.barriers import grids_of, walked_metres
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import WayIn
from wardwright.trials.ways_on_foot import spot_of

UNIT = "control unit"


class Goal(NamedTuple):
    """Where an intruder goes."""

    id: str
    name: str
    spot: Spot
    target: Target | None
    """None: it is the control unit."""


def goals_of(site: Site, catalogue: Catalogue, ways: tuple[WayIn, ...]) -> tuple[Goal, ...]:
    """The control unit, if there is one, and the targets that can be got to, in the order of ids.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets.
    ways : tuple of WayIn
        The ways in: a target that is anywhere in its room is where the first of them comes to it first.

    Returns
    -------
    tuple of Goal
        Empty where there is nothing to go for.
    """
    units = control_units(site, catalogue)
    found = [Goal(UNIT, units[0].name, spot_of(site, units[0]), None)] if units else []
    for target in sorted(site.targets, key=lambda one: one.id):
        spot = _spot(site, target, ways)
        if spot is not None:
            found.append(Goal(f"target {target.id}", target.name, spot, target))
    return tuple(found)


def _spot(site: Site, target: Target, ways: tuple[WayIn, ...]) -> Spot | None:
    """Where a target is: told, or the point of its space that is come to first from the first way in."""
    space = site.space(target.space)
    if target.at_m is not None:
        return Spot(space.storey, *target.at_m)
    for way in ways:
        try:
            one = walked_metres(site.bare, way_in_spot(site.bare, way.opening)).get(space.storey)
        except NotComputable:
            continue
        if one is None:
            continue
        centres = grids_of(site.bare)[space.storey].centres()
        inside = shapely.contains_xy(shapely.Polygon(space.outline_m), centres[..., 0], centres[..., 1])
        metres = np.where(inside & np.isfinite(one.times), one.times, np.inf)
        if np.isfinite(metres).any():
            x, y = centres[np.unravel_index(int(metres.argmin()), metres.shape)].tolist()
            return Spot(space.storey, x, y)
    return None

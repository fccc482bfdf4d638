"""Glass to the outside that a detector would look at."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray
from wardwright.model.floor import StoreyParts, lets_through, solid_walls, storey_parts
from wardwright.model.opening import Opening
from wardwright.model.placement import along, opening_footprint, opening_line
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.outdoors import outdoor_side

PANE_STEP_M = 0.1
"""Between the places of a pane that are looked at. [m] (assumption)"""
FAR_M = 60.0
"""Longer than any straight view in a home. [m] (assumption)"""


class Pane(NamedTuple):
    """Glass seen near an axis."""

    opening: str
    off_axis_deg: float
    """Between the axis and the nearest seen place of the pane. [deg]"""
    distance_m: float
    """To that place. [m]"""


class View(NamedTuple):
    """What can be seen from one place: glass, and how far each way is free."""

    eye: Point2
    blockers: shapely.Geometry
    openings: tuple[str, ...]
    """Of each seen place of glass, the opening."""
    bearings: FloatArray
    """Of each, the bearing, anticlockwise from plan x. [deg]"""
    distances: FloatArray
    """Of each, the distance. [m]"""

    def panes(self, heading_deg: float, *, half_deg: float, reach_m: float) -> tuple[Pane, ...]:
        """Glass within a half angle of an axis and within reach, nearest to the axis first, one for each opening."""
        off = np.abs((self.bearings - heading_deg + 180.0) % 360.0 - 180.0)
        best: dict[str, Pane] = {}
        for i in np.flatnonzero((off <= half_deg) & (self.distances <= reach_m)).tolist():
            pane = Pane(self.openings[i], float(off[i]), float(self.distances[i]))
            if pane.opening not in best or pane[1:] < best[pane.opening][1:]:
                best[pane.opening] = pane
        return tuple(sorted(best.values(), key=lambda pane: (pane.off_axis_deg, pane.opening)))

    def free_length(self, heading_deg: float) -> float:
        """How far it is to the first wall or shut door along an axis. [m]"""
        angle = math.radians(heading_deg)
        far = (self.eye[0] + FAR_M * math.cos(angle), self.eye[1] + FAR_M * math.sin(angle))
        hit = shapely.LineString([self.eye, far]).intersection(self.blockers)
        return FAR_M if hit.is_empty else float(shapely.Point(self.eye).distance(hit))


def view_from(site: Site, storey: str, eye: Point2) -> View:
    """Look round from a place of the plan, over furniture and whatever the height of the glass.

    Parameters
    ----------
    site : Site
        The house, doors as they stand when it is set.
    storey : str
        Which storey.
    eye : (float, float)
        Where on its plan. [m]

    Returns
    -------
    View
        Glass of doors and windows to the open air that no shutter covers.
    """
    return _view_from(site.bare, storey, eye)


@lru_cache(maxsize=1024)
def _view_from(site: Site, storey: str, eye: Point2) -> View:
    blockers, places, names = _scene(storey_parts(site, storey), _panes(site, storey))
    rays = shapely.linestrings(np.stack([np.broadcast_to(eye, places.shape), places], axis=1))
    is_seen = ~shapely.intersects(blockers, rays) if len(places) else np.zeros(0, dtype=np.bool_)
    seen = places[is_seen]
    away = seen - np.asarray(eye)
    return View(
        eye,
        blockers,
        tuple(name for name, kept in zip(names, is_seen.tolist(), strict=True) if kept),
        np.degrees(np.arctan2(away[:, 1], away[:, 0])),
        np.hypot(away[:, 0], away[:, 1]),
    )


@lru_cache(maxsize=64)
def _panes(site: Site, storey: str) -> tuple[Opening, ...]:
    """Glass of a storey to the open air that no shutter covers."""
    return tuple(
        o
        for o in storey_parts(site, storey).openings
        if o.glazing is not None
        and o.covering != "shutter"
        and o.kind != "rooflight"
        and outdoor_side(site, o) is not None
    )


@lru_cache(maxsize=64)
def _scene(
    parts: StoreyParts, panes: tuple[Opening, ...]
) -> tuple[shapely.Geometry, FloatArray, tuple[str, ...]]:
    """What stops the view on a storey; places along each pane, shape (n, 2) [m]; the opening of each."""
    walls = {wall.id: wall for wall in parts.walls}
    glass = [
        shapely.Polygon(opening_footprint(walls[o.wall], o)).buffer(0.002, join_style="mitre") for o in panes
    ]
    shut = [
        shapely.Polygon(opening_footprint(walls[o.wall], o))
        for o in parts.openings
        if lets_through(o) and o.kind != "gap" and o.habit == "shut" and o not in panes
    ]
    blockers = shapely.union_all([solid_walls(parts).difference(shapely.union_all(glass)), *shut])
    shapely.prepare(blockers)
    places: list[Point2] = []
    names: list[str] = []
    for opening in panes:
        line = opening_line(walls[opening.wall], opening)
        steps = max(2, math.ceil(opening.width_m / PANE_STEP_M))
        for i in range(steps):
            places.append(along(line, opening.width_m * (i + 0.5) / steps))
            names.append(opening.id)
    return blockers, np.asarray(places, dtype=np.float64).reshape(-1, 2), tuple(names)

"""Sloped ceilings and rooflights of a building file, from the undersides of its roofs."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import shapely

from wardwright.intake.ifc.file import IfcHouse, called
from wardwright.intake.ifc.openings import is_in_roof
from wardwright.intake.ifc.shapes import Solid, normals, plan_outline
from wardwright.intake.ifc.spaces import Floor
from wardwright.intake.outlines import largest, ring_of
from wardwright.intake.report import counted
from wardwright.model.fabric import Slope, Space, Storey, Wall
from wardwright.model.opening import Opening
from wardwright.model.placement import direction, space_at
from wardwright.model.site import Site

LEAST_SLOPE, MOST_SLOPE = 0.09, 0.99
"""Between these shares of the whole normal, its upright part makes a face a slope: about 8 to 85 degrees. [-]"""
MAIN_FACE = 0.2
"""A face smaller than this share of its roof's shadow is an edge of it. [-] (assumption)"""
EAVES_M = 0.6
"""Slopes are kept this far beyond the rooms. [m] (assumption)"""
WALL_NEAR_M = 3.0
"""A rooflight is written on a wall no farther than this. [m] (assumption)"""


class Plane(NamedTuple):
    """A sloped face: its shadow, and the plane z = a x + b y + c."""

    area: shapely.Polygon
    a: float
    b: float
    c: float

    def at(self, points: np.ndarray) -> np.ndarray:
        """Heights over points of the plan. [m]"""
        return self.a * points[:, 0] + self.b * points[:, 1] + self.c


def sloped_storeys(house: IfcHouse, storeys: list[Storey], spaces: list[Space]) -> list[Storey]:
    """The storeys with the sloped ceilings that come lower than their rooms' tops."""
    roofs = [e for e in house.of("IfcRoof", "IfcSlab") if e.is_a("IfcRoof") or e.PredefinedType == "ROOF"]
    solids = [solid for roof in roofs if (solid := house.solid(roof)) is not None]
    planes = [plane for solid in solids for plane in faces(solid, downward=True)]
    made = []
    for flat in storeys:
        storey = flat
        rooms = shapely.union_all([shapely.Polygon(s.outline_m) for s in spaces if s.storey == storey.id])
        slopes = [slope for plane in planes if (slope := _slope(plane, storey, rooms)) is not None]
        if slopes:
            house.draft.read(f"{counted(len(slopes), 'sloped ceiling')} over {storey.name}")
            marks = (*storey.basis, ("slopes", "measured"))
            storey = storey.model_copy(update={"slopes": tuple(slopes), "basis": marks})
        made.append(storey)
    return made


def faces(solid: Solid, *, downward: bool) -> list[Plane]:
    """The main sloped faces of a solid that look down, or up."""
    normal = normals(solid) * (-1.0 if downward else 1.0)
    size = np.linalg.norm(normal, axis=1)
    unit = normal / np.where(size > 0, size, 1.0)[:, None]
    chosen = (size > 1e-9) & (unit[:, 2] > LEAST_SLOPE) & (unit[:, 2] < MOST_SLOPE)
    offset = (unit * solid.points[solid.faces[:, 0]]).sum(axis=1)
    keys = np.concatenate([unit.round(2), offset.round(1)[:, None]], axis=1)
    shadow = float(plan_outline(solid).area)
    found = []
    for key in np.unique(keys[chosen], axis=0):
        same = chosen & (keys == key).all(axis=1)
        area = largest(plan_outline(Solid(solid.points, solid.faces[same])))
        if area is None or area.area < MAIN_FACE * shadow:
            continue
        # All faces of the group lie in one plane: the largest gives it.
        first = int(np.flatnonzero(same)[np.argmax(size[same])])
        (nx, ny, nz), d = unit[first], offset[first]
        found.append(Plane(area, float(-nx / nz), float(-ny / nz), float(d / nz)))
    return found


def _slope(plane: Plane, storey: Storey, rooms: shapely.Geometry) -> Slope | None:
    """The part of a plane over a storey's rooms, where it comes lower than their ceiling."""
    over = largest(plane.area.intersection(rooms.buffer(EAVES_M, join_style="mitre").convex_hull))
    inner = plane.area.intersection(rooms)
    if over is None or inner.area < 0.2:
        return None
    heights = plane.at(shapely.get_coordinates(inner)) - storey.elevation_m
    if heights.min() > storey.height_m - 0.02 or heights.max() < 0.5 or heights.min() < -1.0:
        return None
    ring = np.array(ring_of(over))
    tops = plane.at(ring) - storey.elevation_m
    return Slope(
        corners_m=tuple(
            (float(x), float(y), round(float(z), 4)) for (x, y), z in zip(ring, tops, strict=True)
        )
    )


def rooflights_of(house: IfcHouse, site: Site, floors: list[Floor]) -> list[Opening]:
    """The windows in roofs over rooms of ours, each written on the nearest wall of its room's storey."""
    found: list[Opening] = []
    for entity in house.of("IfcWindow"):
        solid = house.solid(entity) if is_in_roof(entity) else None
        if solid is None:
            continue
        name = called(entity)
        below = [f for f in floors if f.elevation < solid.low]
        middle = shapely.centroid(plan_outline(solid))
        place = (float(middle.x), float(middle.y))
        room = space_at(site, below[-1].id, place) if below else None
        if room is None or room.belongs != "ours":
            house.draft.leave_out("rooflight", "over no room of ours", name)
            continue
        wall = _nearest(site, room, middle)
        if wall is None:
            house.draft.leave_out("rooflight", "near no wall that it could be written on", name)
            continue
        found.append(_rooflight(house, site, solid, where=(room, wall, place)))
    return found


def _nearest(site: Site, room: Space, middle: shapely.Point) -> Wall | None:
    walls = [w for w in site.walls if w.storey == room.storey]
    near = min(walls, key=lambda w: shapely.LineString(w.line_m).distance(middle), default=None)
    return near if near and shapely.LineString(near.line_m).distance(middle) <= WALL_NEAR_M else None


def _rooflight(
    house: IfcHouse, site: Site, solid: Solid, *, where: tuple[Space, Wall, tuple[float, float]]
) -> Opening:
    room, wall, place = where
    (ux, uy), (nx, ny), length = direction(wall.line_m)
    dx, dy = place[0] - wall.line_m[0][0], place[1] - wall.line_m[0][1]
    along = solid.points[:, :2] @ np.array((ux, uy))
    across = solid.points[:, :2] @ np.array((nx, ny))
    # A flat one is as high, for whoever climbs through it, as it is deep on the plan.
    depth = max(float(np.ptp(across)), solid.high - solid.low)
    width = round(min(float(along.max() - along.min()), length), 4)
    offset = round(min(max(dx * ux + dy * uy, width / 2), length - width / 2), 4)
    floor = site.storey(room.storey).elevation_m
    is_left = dx * nx + dy * ny >= 0
    made = house.new_id(f"{room.name} rooflight", "rooflight")
    fields: dict[str, object] = {
        "name": f"{room.name} rooflight", "kind": "rooflight", "wall": wall.id, "offset_m": offset, "width_m": width,
        "sill_m": round(solid.low - floor, 4), "head_m": round(solid.low - floor + depth, 4), "hinge": "top",
        "swing": "none", "glazing": "double-plain", "lock": "unknown",
        "joins": (room.id, None) if is_left else (None, room.id),
    }  # fmt: skip
    basis = dict.fromkeys(("id", *fields), "measured")
    for fact in ("wall", "offset_m", "head_m", "hinge", "glazing", "lock"):
        basis[fact] = "guessed"
        house.draft.guess(fact.removesuffix("_m"), "rooflight", made)
    return Opening.model_validate({"id": made, "basis": basis, **fields})

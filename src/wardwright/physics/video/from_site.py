"""The video engine's inputs from a site: cameras as they hang, what stands in the way, points that have a name.

Limits: light goes straight; what is reflected, curtains that are drawn by day only, bare trees in winter and glare
are left out. Trees count as boxes.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.panels import Blockers, box, extruded, joined
from wardwright.geometry.polar import Through
from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.geometry.rays import ray_ranges
from wardwright.model.device import Device
from wardwright.model.device_sheets import CameraSheet
from wardwright.model.opening import Opening
from wardwright.model.placement import along, sides_of_opening, space_at, standing, wall_footprint
from wardwright.model.sightlines import blockers_about, floors_about
from wardwright.model.site import Site
from wardwright.model.surfaces import level_of, levels_by_stairs
from wardwright.physics.video.projection import Drawn, Lens, axes_of, drawn

FACE_M = 1.6
"""Of a face above what one stands on. [m] (assumption)"""
BEFORE_DOOR_M = 0.8
"""Where somebody stands who is at a door, off its wall. [m] (assumption)"""
CELL_M = 0.5
"""Of the ground and of floors that are asked about. [m]"""
CHEST_M = 1.0
"""Ground counts as seen where somebody's chest above it would be. [m] (assumption)"""
STREET_M = 4.0
"""Ground within this distance of the road's middle counts as street. [m] (assumption)"""
NEAR_M = 1e-6


class Named(NamedTuple):
    """A place that has a name, and where a face would be there."""

    name: str
    ident: str
    storey: str
    at: tuple[float, float, float]
    """x, y and height above the house's zero. [m]"""
    is_entry: bool


class Shown(NamedTuple):
    """How a camera shows one place."""

    named: Named
    density: float
    """Of its width; 0 where it is not shown. [px/m]"""
    down_deg: float
    """How steeply it is looked down at. [deg]"""
    why_not: str
    """Empty where it is shown."""


def lens_of(site: Site, device: Device, sheet: CameraSheet) -> Lens:
    """A camera as it hangs.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        The camera.
    sheet : CameraSheet
        Its lens.

    Returns
    -------
    Lens
        With heights above the house's zero.
    """
    at = standing(site, device)
    height = site.storey(at.storey).elevation_m + at.height_m
    return Lens(
        (at.x_m, at.y_m, height), math.radians(at.heading_deg), math.radians(device.tilt_deg), sheet.across_px,
        sheet.down_px, math.radians(sheet.angle_deg),
    )  # fmt: skip


@lru_cache(maxsize=64)
def _outside_scene(house: Site) -> Blockers:
    """All that stops light on the way from a camera in the open: the house as a block, and what stands on the ground.

    Nobody looks through a house by two of its windows; what is in its rooms need not be asked.
    """
    level = house.ground.level_m
    parts = [
        box(np.asarray(thing.outline_m), low=level + thing.base_m, high=level + thing.height_m)
        for thing in house.ground.things
        if len(thing.outline_m) > 2 and thing.kind not in ("gate", "car")
    ]
    for storey in house.storeys:
        one = level_of(house, storey.id)
        rooms = [shapely.Polygon(space.outline_m) for space in one.parts.spaces if not space.is_outdoors]
        walls = [shapely.Polygon(wall_footprint(wall)) for wall in one.parts.walls if wall.height_m is None]
        block = shapely.union_all([*rooms, *walls]).buffer(0.0)
        parts.append(extruded(block, low=one.floor_m, high=one.ceiling_m))
        for wall in one.parts.walls:
            if wall.height_m is not None:
                foot = one.floor_m + wall.base_m
                lone = shapely.Polygon(wall_footprint(wall))
                parts.append(extruded(lone, low=foot, high=foot + wall.height_m))
    return joined(parts)


def _scene(house: Site, storey: str, *, is_inside: bool) -> tuple[Blockers, tuple[Through, ...]]:
    if not is_inside:
        return _outside_scene(house), ()
    level, others = level_of(house, storey), levels_by_stairs(house, storey)
    return blockers_about(level, others, medium="light"), floors_about(level, others)


def is_inside(site: Site, device: Device) -> bool:
    """Whether a camera hangs in a room.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        The camera.

    Returns
    -------
    bool
        False on an outer face, a balcony or a terrace.
    """
    at = standing(site, device)
    space = space_at(site, at.storey, (at.x_m, at.y_m))
    return space is not None and not space.is_outdoors


def _free_of(site: Site, device: Device, *, eye: tuple[float, float, float], points: FloatArray) -> BoolArray:
    """To which points, shape (n, 3) [m], nothing stands in the way of light; shape (n,)."""
    if not len(points):
        return np.zeros(0, dtype=np.bool_)
    blockers, through = _scene(site.bare, standing(site, device).storey, is_inside=is_inside(site, device))
    away = points - np.asarray(eye)
    reach = np.hypot(away[:, 0], away[:, 1])
    rise = away[:, 2] / np.maximum(reach, NEAR_M)
    ranges = ray_ranges(eye, (np.arctan2(away[:, 1], away[:, 0]), rise), blockers, through=through)
    found: BoolArray = ranges >= reach - 1e-6
    return found


def named_points(site: Site, device: Device) -> tuple[Named, ...]:
    """Places that have a name: outside doors, gates and where a car stands; indoors the doors of its own room.

    Parameters
    ----------
    site : Site
        The house and what stands outside.
    device : Device
        The camera.

    Returns
    -------
    tuple of Named
        Entry doors first, then by name.
    """
    at = standing(site, device)
    inside = space_at(site, at.storey, (at.x_m, at.y_m)) if is_inside(site, device) else None
    return _named(site.bare, None if inside is None else inside.id)


@lru_cache(maxsize=256)
def _named(house: Site, room: str | None) -> tuple[Named, ...]:
    found = [one for opening in house.openings if (one := _at_door(house, opening, room)) is not None]
    if room is None:
        for thing in house.ground.things:
            if thing.kind in ("gate", "car"):
                x, y = np.asarray(thing.outline_m).mean(axis=0).tolist()
                name = thing.name if thing.kind == "gate" else f"drive, by {thing.name}"
                at = (x, y, house.ground.level_m + FACE_M)
                found.append(Named(name, thing.id, _lowest(house), at, is_entry=False))
    return tuple(sorted(found, key=lambda one: (not one.is_entry, one.name, one.ident)))


def _lowest(house: Site) -> str:
    return min(house.storeys, key=lambda one: (abs(one.elevation_m), one.id)).id


def _at_door(house: Site, opening: Opening, room: str | None) -> Named | None:
    """Where a face is that is at a door: outside it, or inside it for a camera in a room."""
    if opening.kind not in ("door", "garage-door", "gap"):
        return None
    sides = sides_of_opening(house, opening)
    wall = house.wall(opening.wall)
    if room is None:
        outdoors = [side is None or house.space(side).is_outdoors for side in sides]
        if outdoors[0] == outdoors[1]:
            return None
        left = outdoors[0]
    elif room in sides:
        left = sides[0] == room
    else:
        return None
    off = (wall.thickness_m / 2 + BEFORE_DOOR_M) * (1.0 if left else -1.0)
    x, y = along(wall.line_m, opening.offset_m, left_m=off)
    floor = house.storey(wall.storey).elevation_m
    is_at_ground = (
        room is None and sides[0 if left else 1] is None and abs(floor - house.ground.level_m) < 1.0
    )
    foot = house.ground.level_m if is_at_ground else floor
    return Named(opening.name, opening.id, wall.storey, (x, y, foot + FACE_M), is_entry=opening.is_entry_door)


def shown(site: Site, device: Device, lens: Lens) -> tuple[Shown, ...]:
    """How a camera shows each place that has a name.

    Parameters
    ----------
    site : Site
        The house and what stands outside.
    device : Device
        The camera.
    lens : Lens
        As it hangs.

    Returns
    -------
    tuple of Shown
        In the order of `named_points`.
    """
    places = named_points(site, device)
    points = np.array([one.at for one in places]).reshape(-1, 3)
    picture, is_free = drawn(lens, points), _free_of(site, device, eye=lens.eye, points=points)
    found = []
    for i, one in enumerate(places):
        why = (
            "not in the picture"
            if not picture.is_in[i]
            else "something is in the way"
            if not is_free[i]
            else ""
        )
        density = 0.0 if why else float(picture.width_density[i])
        found.append(Shown(one, density, math.degrees(float(picture.depression[i])), why))
    return tuple(found)


class Ground(NamedTuple):
    """Ground that a camera sees, cell by cell."""

    points: FloatArray
    """Middles of the cells that it sees, shape (n, 3), at the ground. [m]"""
    is_beyond: BoolArray
    """Whether each lies beyond the boundary, shape (n,)."""
    is_street: BoolArray
    """Whether it is of the street, shape (n,)."""
    picture: Drawn
    """Where each is in the picture."""

    def area_m2(self, chosen: BoolArray) -> float:
        """Area of some of them. [m2]"""
        return float(np.count_nonzero(chosen)) * CELL_M**2


def ground_seen(site: Site, device: Device, lens: Lens, *, reach: float) -> Ground | None:
    """The ground that a camera sees, on our side of the boundary and beyond.

    Parameters
    ----------
    site : Site
        The house, its boundary and its road.
    device : Device
        The camera.
    lens : Lens
        As it hangs.
    reach : float
        How far away it still shows enough to count. [m]

    Returns
    -------
    Ground or None
        None where no boundary is drawn.
    """
    ring = site.ground.boundary_m
    if ring is None:
        return None
    n = math.ceil(reach / CELL_M)
    # Cells are laid along the camera's own axes, so that a turned house has the same ones.
    steps = (np.arange(-n, n) + 0.5) * CELL_M
    right, _, _ = axes_of(lens._replace(tilt=0.0))
    ahead = np.array([math.cos(lens.heading), math.sin(lens.heading)])
    aside, forth = np.meshgrid(steps, steps[steps > 0.0])
    flat = np.asarray(lens.eye[:2]) + aside.reshape(-1, 1) * right[:2] + forth.reshape(-1, 1) * ahead
    level = site.ground.level_m
    points = np.column_stack([flat, np.full(len(flat), level + CHEST_M)])
    keep = drawn(lens, points).is_in & (np.hypot(*(flat - lens.eye[:2]).T) <= reach + NEAR_M)
    keep[keep] = _free_of(site, device, eye=lens.eye, points=points[keep])
    flat = flat[keep]
    places = shapely.points(flat)
    under_roof = shapely.union_all(
        [shapely.Polygon(one.outline_m) for one in site.spaces] or [shapely.Polygon()]
    )
    is_open = ~shapely.covers(under_roof, places)
    flat, places = flat[is_open], places[is_open]
    beyond: BoolArray = ~shapely.covers(shapely.Polygon(ring).buffer(1e-6), places)
    street: BoolArray = np.zeros(len(flat), dtype=np.bool_)
    if site.ground.road_m is not None and len(site.ground.road_m) > 1:
        street = shapely.distance(shapely.LineString(site.ground.road_m), places) <= STREET_M
    at_ground = np.column_stack([flat, np.full(len(flat), level)])
    return Ground(at_ground, beyond, beyond & street, drawn(lens, at_ground))


def windows_seen(site: Site, device: Device, lens: Lens) -> tuple[str, ...]:
    """Names of neighbours' windows, and of neighbouring buildings, that a camera sees.

    Parameters
    ----------
    site : Site
        The house, its neighbours' rooms and the buildings about it.
    device : Device
        The camera.
    lens : Lens
        As it hangs.

    Returns
    -------
    tuple of str
        In the order of names; empty where it sees none of what is drawn.
    """
    found = set()
    for opening in site.openings:
        sides = sides_of_opening(site, opening)
        is_theirs = any(side is not None and site.space(side).belongs == "neighbour" for side in sides)
        if not is_theirs or (opening.kind not in ("window", "rooflight") and opening.glazing is None):
            continue
        wall = site.wall(opening.wall)
        height = site.storey(wall.storey).elevation_m + (opening.sill_m + opening.head_m) / 2
        off = wall.thickness_m / 2 + 0.02
        faces = np.array(
            [(*along(wall.line_m, opening.offset_m, left_m=side), height) for side in (off, -off)]
        )
        if (drawn(lens, faces).is_in & _free_of(site, device, eye=lens.eye, points=faces)).any():
            found.add(opening.name)
    for thing in site.ground.things:
        if thing.kind != "building" or len(thing.outline_m) < 3:
            continue
        around = shapely.Polygon(thing.outline_m).buffer(0.05, join_style="mitre").exterior
        along_it = [around.interpolate(share, normalized=True) for share in np.arange(0.0, 1.0, 0.02)]
        height = site.ground.level_m + min(1.5, thing.height_m)
        places = np.array([(one.x, one.y, height) for one in along_it])
        if (drawn(lens, places).is_in & _free_of(site, device, eye=lens.eye, points=places)).any():
            found.add(thing.name)
    return tuple(sorted(found))


def rooms_seen(site: Site, device: Device, lens: Lens, *, uses: tuple[str, ...]) -> tuple[str, ...]:
    """Ids of our rooms of some uses that a camera in a room sees into, its own among them.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        The camera.
    lens : Lens
        As it hangs.
    uses : tuple of str
        Uses of rooms that are asked about.

    Returns
    -------
    tuple of str
        In the order of ids; empty for a camera in the open.
    """
    if not is_inside(site, device):
        return ()
    at = standing(site, device)
    own = space_at(site, at.storey, (at.x_m, at.y_m))
    found = []
    for space in sorted(site.spaces, key=lambda one: one.id):
        if space.use not in uses or space.storey != at.storey:
            continue
        area = shapely.Polygon(space.outline_m).buffer(-0.1)
        x0, y0, x1, y1 = shapely.Polygon(space.outline_m).bounds
        xs, ys = np.meshgrid(np.arange(x0 + 0.125, x1, 0.25), np.arange(y0 + 0.125, y1, 0.25))
        flat = np.column_stack([xs.ravel(), ys.ravel()])
        flat = flat[shapely.covers(area, shapely.points(flat))]
        height = site.storey(space.storey).elevation_m + CHEST_M
        points = np.column_stack([flat, np.full(len(flat), height)])
        is_own = own is not None and own.id == space.id
        if is_own or (drawn(lens, points).is_in & _free_of(site, device, eye=lens.eye, points=points)).any():
            found.append(space.id)
    return tuple(found)

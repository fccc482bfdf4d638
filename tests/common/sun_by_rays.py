"""The sun on a lens by other hands: pvlib for its place, a mesh of boxes and embree for what it meets."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
import pandas as pd
import pvlib
import shapely
import trimesh
from trimesh.ray.ray_pyembree import RayMeshIntersector

from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.model.fabric import Storey
from wardwright.model.leaves import state_of
from wardwright.model.opening import Opening
from wardwright.model.placement import fixture_outline, wall_footprint
from wardwright.model.site import Site

STEP_MIN = 2
STEPS_A_DAY = 1440 // STEP_MIN


class Sky(NamedTuple):
    """The sun at every step of 2026, day by local mean time, shape (365 x 720,)."""

    elevation: FloatArray
    """As seen, with refraction. [rad]"""
    azimuth: FloatArray
    """From true north, clockwise. [rad]"""


def sky_of(latitude_deg: float, longitude_deg: float) -> Sky:
    """One vectorised call of pvlib over the whole year."""
    start = pd.Timestamp("2026-01-01", tz="UTC") - pd.Timedelta(minutes=4.0 * longitude_deg)
    times = pd.date_range(start, periods=365 * STEPS_A_DAY, freq=f"{STEP_MIN}min")
    found = pvlib.solarposition.spa_python(
        times, latitude_deg, longitude_deg, pressure=101325, temperature=12, delta_t=69.2, how="numpy"
    )
    return Sky(np.radians(found["apparent_elevation"].to_numpy()), np.radians(found["azimuth"].to_numpy()))


def caster_of(site: Site) -> RayMeshIntersector:
    """The house as closed boxes: walls pieced round their openings, shut leaves, furniture, what stands outside.

    Leaves that stand open are left out: only for places that they hide no pane from.
    """
    meshes = [mesh for storey in site.storeys for mesh in _storey(site, storey)]
    ground = site.ground.level_m
    for thing in site.ground.things:
        if thing.kind in {"wall", "fence", "shed", "flat-roof", "building", "overhang"}:
            outline = shapely.Polygon(thing.outline_m)
            meshes += _drawn_up(outline, ground + thing.base_m, ground + thing.height_m)
    return RayMeshIntersector(trimesh.util.concatenate(meshes))


def _storey(site: Site, storey: Storey) -> Iterator[trimesh.Trimesh]:
    """Walls, ceiling, what stands there, and the floor where it stands out over what is below."""
    floor, top = storey.elevation_m, storey.elevation_m + storey.height_m
    walls = [wall for wall in site.walls if wall.storey == storey.id]
    openings = [one for one in site.openings if site.wall(one.wall).storey == storey.id]
    clear = shapely.union_all([_hole(site, one) for one in openings])
    for wall in walls:
        high = top if wall.height_m is None else min(top, floor + wall.base_m + wall.height_m)
        solid = shapely.Polygon(wall_footprint(wall)).buffer(0).difference(clear)
        yield from _drawn_up(solid, floor + wall.base_m, high)
    for one in openings:
        hole = _hole(site, one).buffer(-0.002, join_style="mitre")
        yield from _drawn_up(hole, floor, floor + one.sill_m)
        yield from _drawn_up(hole, floor + one.head_m, top)
        is_opaque = one.kind not in {"gap", "window"} and one.glazing is None
        if is_opaque and state_of(one, "told") == "shut":
            yield from _drawn_up(hole, floor + one.sill_m, floor + one.head_m)
    for fixture in site.fixtures:
        if fixture.storey == storey.id:
            low = floor + fixture.base_m
            yield from _drawn_up(shapely.Polygon(fixture_outline(fixture)), low, low + fixture.height_m)
    rooms = [shapely.Polygon(space.outline_m) for space in site.spaces if space.storey == storey.id]
    yield from _drawn_up(shapely.union_all(rooms).buffer(0.05, join_style="mitre"), top, top + 0.2)
    for room in rooms if floor > 0.0 else []:
        yield from _drawn_up(room, floor - 0.2, floor)


def _hole(site: Site, opening: Opening) -> shapely.Polygon:
    """A hair wider than the wall."""
    wall = site.wall(opening.wall)
    line = shapely.LineString(wall.line_m)
    half = opening.width_m / 2
    ends = [line.interpolate(opening.offset_m + side) for side in (-half, half)]
    return shapely.LineString(ends).buffer(wall.thickness_m / 2 + 0.002, cap_style="flat")


def _drawn_up(area: shapely.Geometry, low: float, high: float) -> list[trimesh.Trimesh]:
    if high - low < 1e-6:
        return []
    found = []
    for part in shapely.get_parts(area):
        if part.geom_type != "Polygon" or part.area < 1e-9:
            continue
        for triangle in shapely.get_parts(shapely.constrained_delaunay_triangles(part)):
            corners = shapely.get_coordinates(triangle)[:3]
            points = np.vstack([np.column_stack([corners, np.full(3, z)]) for z in (low, high)])
            faces = [(0, 1, 2), (3, 4, 5)] + [
                face for i, j in ((0, 1), (1, 2), (2, 0)) for face in ((i, j, j + 3), (i, j + 3, i + 3))
            ]
            found.append(trimesh.Trimesh(points, faces, process=False))
    return found


def cast(
    caster: RayMeshIntersector, eyes: list[tuple[float, float, float]], sky: Sky, *, north: float
) -> BoolArray:
    """Whether the middle of the sun shines on each of some eyes at each step, in one batch; shape (eyes, steps)."""
    up = np.nonzero(sky.elevation > 0.0)[0]
    bearing = math.pi / 2.0 + north - sky.azimuth[up]
    flat = np.cos(sky.elevation[up])
    ways = np.stack([flat * np.cos(bearing), flat * np.sin(bearing), np.sin(sky.elevation[up])], axis=1)
    starts = np.repeat(np.asarray(eyes), len(up), axis=0)
    hit = caster.intersects_any(starts, np.tile(ways, (len(eyes), 1)))
    shines = np.zeros((len(eyes), len(sky.elevation)), dtype=np.bool_)
    shines[:, up] = ~hit.reshape(len(eyes), len(up))
    return shines

"""The house on the plan: walls in solid ink, stairs, fixtures, the ground, names."""

from __future__ import annotations

import math

import shapely
import shapely.affinity

from wardwright.documents.drawing.hatching import rings_of
from wardwright.documents.drawing.inks import INKS, text_width_mm
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.recording import Recorder
from wardwright.model.fabric import Stair, Wall
from wardwright.model.fixture import Fixture
from wardwright.model.opening import Opening
from wardwright.model.placement import fixture_outline, opening_footprint, opening_line, wall_footprint
from wardwright.model.site import Site

ON_ITSELF = 0.31
"""What a name may cost that lies on its own fixture and on nothing else. [-]"""
RISER_M = 0.19
"""Height of a step where only the storeys are known: for the number of treads drawn. [m] (assumption)"""

LOOKED_OVER_M = 1.2
"""A wall whose top is lower, such as a parapet, is drawn by its faces alone. [m] (assumption: an eye is higher)"""
TOUCH_M = 0.1
"""A wall this near to a space is about it. [m] (assumption)"""


def blocks(site: Site, storey_id: str) -> shapely.Geometry:
    """All walls of a storey as one area, openings and all, their corners filled. [m]"""
    walls = [wall for wall in site.walls if wall.storey == storey_id]
    parts = [shapely.Polygon(wall_footprint(wall)).buffer(0) for wall in walls]
    ends: dict[tuple[float, float], list[Wall]] = {}
    for wall in walls:
        for x, y in wall.line_m if wall.footprint_m is None else ():
            ends.setdefault((round(x, 2), round(y, 2)), []).append(wall)
    for (x, y), meeting in ends.items():
        if len(meeting) > 1:
            # Two walls that end in one point leave a notch outside it.
            half = min(wall.thickness_m for wall in meeting) / 2
            square = shapely.box(-half, -half, half, half)
            turn = math.degrees(_angle(meeting[0]))
            parts.append(
                shapely.affinity.translate(shapely.affinity.rotate(square, turn, origin=(0, 0)), x, y)
            )
    return shapely.union_all(parts)


def furniture(site: Site, storey_id: str) -> shapely.Geometry:
    """What labels had better not lie on: fixtures and flights. [m]"""
    parts = [shapely.Polygon(fixture_outline(f)) for f in site.fixtures if f.storey == storey_id]
    parts += [
        shapely.LineString(stair.line_m).buffer(stair.width_m / 2, cap_style="flat")
        for stair in site.stairs
        if storey_id in (stair.lower, stair.upper)
    ]
    return shapely.union_all(parts)


def doorways(site: Site, storey_id: str) -> shapely.Geometry:
    """What labels keep off: where leaves swing and doors stand. [m]"""
    parts = []
    for wall, opening in openings_of(site, storey_id):
        hole = shapely.Polygon(opening_footprint(wall, opening))
        if opening.kind in ("window", "rooflight"):
            continue
        parts.append(hole)
        if opening.hinge in ("start", "end") and opening.swing != "none":
            way = shapely.LineString(opening_line(wall, opening))
            away = opening.width_m / max(1, opening.leaves) + wall.thickness_m / 2
            parts.append(way.buffer(away if opening.swing == "left" else -away, single_sided=True))
    return shapely.union_all(parts)


def _angle(wall: Wall) -> float:
    (ax, ay), (bx, by) = wall.line_m
    return math.atan2(by - ay, bx - ax)


def wall_area(site: Site, storey_id: str) -> shapely.Geometry:
    """All walls of a storey as one area, with every opening cut out. [m]"""
    walls = {wall.id: wall for wall in site.walls if wall.storey == storey_id}
    solid = blocks(site, storey_id)
    holes = [
        shapely.Polygon(opening_footprint(walls[o.wall], o)).buffer(0.001, join_style="mitre")
        for o in site.openings
        if o.wall in walls
    ]
    return solid.difference(shapely.union_all(holes)) if holes else solid


def low_walls(site: Site, storey_id: str) -> shapely.Geometry:
    """What only parapets and other low walls of a storey stand on. [m]"""
    parts: dict[bool, list[shapely.Geometry]] = {True: [], False: []}
    for wall in site.walls:
        if wall.storey == storey_id:
            is_low = wall.height_m is not None and wall.base_m + wall.height_m < LOOKED_OVER_M
            parts[is_low].append(shapely.Polygon(wall_footprint(wall)).buffer(0))
    return shapely.union_all(parts[True]).difference(shapely.union_all(parts[False]))


def openings_of(site: Site, storey_id: str) -> tuple[tuple[Wall, Opening], ...]:
    """The openings of a storey, each with its wall."""
    walls = {wall.id: wall for wall in site.walls if wall.storey == storey_id}
    return tuple((walls[o.wall], o) for o in site.openings if o.wall in walls)


def draw_walls(
    recorder: Recorder, solid: shapely.Geometry, *, faint: shapely.Geometry, low: shapely.Geometry
) -> None:
    """Draw walls as solid ink, those in the faint area faint, low ones by their faces."""
    tall = solid if low.is_empty else solid.difference(low)
    styled = (
        ("wall-low", solid.intersection(low)),
        ("wall-else", tall.intersection(faint)),
        ("wall", tall.difference(faint)),
    )
    for style, part in styled:
        rings = rings_of(part)
        if rings:
            recorder.polygon(style, rings)


def others_part(site: Site, storey_id: str) -> shapely.Geometry:
    """Where a storey is somebody else's: their spaces with the walls about them that are about none of ours. [m]"""
    ours, others = (
        shapely.union_all(
            [
                shapely.make_valid(shapely.Polygon(space.outline_m))
                for space in site.spaces
                if space.storey == storey_id and (space.belongs == "ours") == is_ours
            ]
        )
        for is_ours in (True, False)
    )
    if others.is_empty:
        return others
    walls = [wall for wall in site.walls if wall.storey == storey_id]
    prints = [(wall, shapely.Polygon(wall_footprint(wall)).buffer(0)) for wall in walls]
    wide = max((wall.thickness_m for wall, _ in prints), default=0.0) + TOUCH_M
    mine = [near for _, near in prints if near.distance(ours) < TOUCH_M] if not ours.is_empty else []
    kept = shapely.union_all(mine).intersection(ours.buffer(wide, join_style="mitre"))
    return others.buffer(wide, join_style="mitre").difference(ours.union(kept))


def draw_ground(recorder: Recorder, site: Site, *, bounds: tuple[float, float, float, float]) -> None:
    """Draw the boundary and the things outside, as far as the sheet goes."""
    sheet = shapely.box(*bounds)
    lines = [("ground", site.ground.boundary_m)] if site.ground.boundary_m is not None else []
    lines += [("ground-thing", thing.outline_m) for thing in site.ground.things]
    for style, ring in lines:
        closed = shapely.LineString((*ring, ring[0]))
        for part in shapely.get_parts(shapely.line_merge(closed.intersection(sheet))):
            if part.geom_type == "LineString":
                recorder.polyline(style, tuple((float(x), float(y)) for x, y in part.coords))


def draw_stair(recorder: Recorder, site: Site, stair: Stair, *, storey_id: str) -> None:
    """Draw a flight: its treads, and an arrow that points up it."""
    rise = abs(site.storey(stair.upper).elevation_m - site.storey(stair.lower).elevation_m)
    way = shapely.LineString(stair.line_m)
    if way.length == 0.0:
        return
    outline = way.buffer(stair.width_m / 2, cap_style="flat", join_style="mitre")
    rings = rings_of(outline)
    is_upper = storey_id == stair.upper
    if is_upper and stair.well_m is not None:
        rings = (stair.well_m,)
    recorder.polygon("stair", rings)
    treads = max(2, round(rise / RISER_M))
    for i in range(1, treads):
        here = way.interpolate(i / treads, normalized=True)
        turn = _heading(way, i / treads) + math.pi / 2
        dx, dy = math.cos(turn) * stair.width_m / 2, math.sin(turn) * stair.width_m / 2
        recorder.line("stair", (here.x - dx, here.y - dy), (here.x + dx, here.y + dy))
    points = list(stair.line_m)
    recorder.polyline("stair-way", points)
    recorder.circle("stair-way", points[0], radius_mm=0.6)
    recorder.head("frame-solid", points[-1], turn_deg=math.degrees(_heading(way, 1.0)), length_mm=2.2)


def _heading(way: shapely.LineString, share: float) -> float:
    near = min(max(share, 0.01), 0.99)
    a = way.interpolate(near - 0.01, normalized=True)
    b = way.interpolate(near + 0.01, normalized=True)
    return math.atan2(b.y - a.y, b.x - a.x)


def draw_fixture(recorder: Recorder, fixture: Fixture) -> None:
    """Draw a fixture as a thin box; one that gets warm is hatched."""
    ring = fixture_outline(fixture)
    recorder.polygon("fixture", (ring,))
    if fixture.heat != "none":
        recorder.hatch("hot", (ring,))
    if fixture.kind == "bed":
        a, b = ring[3], ring[2]
        share = 0.28
        recorder.line(
            "fixture",
            (a[0] + (ring[0][0] - a[0]) * share, a[1] + (ring[0][1] - a[1]) * share),
            (b[0] + (ring[1][0] - b[0]) * share, b[1] + (ring[1][1] - b[1]) * share),
        )


def name_fixture(recorder: Recorder, fixture: Fixture, *, board: Board, mm_per_m: float) -> None:
    """Name a fixture that has room for it, where nothing else is."""
    ring = fixture_outline(fixture)
    wide = (max(p[0] for p in ring) - min(p[0] for p in ring)) * mm_per_m
    high = (max(p[1] for p in ring) - min(p[1] for p in ring)) * mm_per_m
    name = fixture.name.lower()
    size = (text_width_mm("small", name) + 1.0, INKS["small"].size_mm * 1.2)
    if fixture.heat != "none" or high <= size[1] or wide <= size[0]:
        return
    if board.cost(fixture.centre_m, size) <= ON_ITSELF:
        board.take(fixture.centre_m, size)
        recorder.text("small", fixture.centre_m, name)

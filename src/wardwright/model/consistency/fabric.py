"""Storeys, spaces, walls, open edges and stairs that do not fit."""

from __future__ import annotations

from collections.abc import Iterator

import shapely

from wardwright.model.consistency.identity import places
from wardwright.model.consistency.problem import Place, Problem, Register, nearest_space, polygon
from wardwright.model.fabric import OpenEdge, Space, Stair, Storey, Wall
from wardwright.model.placement import direction, slope_plane, wall_footprint

LEAST_AREA_M2 = 0.05
"""A space smaller than this is taken for a slip. [m2] (assumption)"""
LEAST_LENGTH_M = 0.01
"""A line shorter than this is taken for a slip. [m] (assumption)"""
PLANE_SLACK_M = 0.05
"""How far a corner of a slope may lie off its plane. [m] (assumption)"""
OVERLAP_M2 = 0.1
"""Spaces that overlap by less are an imperfection of drawing. [m2] (assumption)"""
NAMED_PART_SHARE = 0.9
"""A space with this share of it inside another is a named part of that room. [-] (assumption)"""
NEAR_EDGE_M = 0.4
"""How far the spaces of an open edge may lie from its line: a thick wall's width. [m] (assumption)"""
NEAR_STAIR_M = 0.6
"""How far a stair's foot or head may lie from a space of its storey. [m] (assumption)"""


def storeys(book: Register) -> Iterator[Problem]:
    """Storeys and their slopes."""
    if not book.site.storeys:
        yield Problem("there is no storey", "the document", "Add one to 'storeys'")
    for place, storey in zip(places(book.site, "storeys"), book.site.storeys, strict=True):
        yield from _slopes(place, storey)


def _slopes(place: Place, storey: Storey) -> Iterator[Problem]:
    for number, slope in enumerate(storey.slopes):
        ring = [(x, y) for x, y, _ in slope.corners_m]
        if shapely.Polygon(ring).area < LEAST_AREA_M2:
            yield place.problem(
                f"slopes[{number}] covers no floor", "Give the corners of a sloped ceiling, not of a wall"
            )
            continue
        a, b, c = slope_plane(slope.corners_m)
        off = max(abs(a * x + b * y + c - z) for x, y, z in slope.corners_m)
        if off > PLANE_SLACK_M:
            yield place.problem(
                f"the corners of slopes[{number}] lie up to {off:.2f} m off one plane",
                "Correct a corner, or split it into slopes of three corners",
            )


def spaces(book: Register) -> Iterator[Problem]:
    """Outlines that cross themselves or hold no floor, and spaces in each other's way."""
    sound: list[tuple[Place, Space]] = []
    for place, space in zip(places(book.site, "spaces"), book.site.spaces, strict=True):
        area = polygon(space)
        if area.area < LEAST_AREA_M2 and area.is_valid:
            yield place.problem(
                f"its outline holds only {area.area:.2f} m2", "Give the corners in order round the room"
            )
        elif not area.is_valid:
            reason = shapely.is_valid_reason(area)
            spot = reason.partition("[")[2].rstrip("]")
            near = ", ".join(f"{float(part):.2f}" for part in spot.split()) if spot else "some corner"
            yield place.problem(
                f"its outline crosses itself near {near}", "Give the corners in order round the room"
            )
        else:
            sound.append((place, space))
    yield from _overlaps(sound)
    if book.site.spaces and all(space.belongs != "ours" for space in book.site.spaces):
        yield Problem(
            "no space is ours", "spaces", "Say 'belongs': 'ours' for the spaces to be protected", "noted"
        )


def _overlaps(sound: list[tuple[Place, Space]]) -> Iterator[Problem]:
    tree = shapely.STRtree([polygon(space) for _, space in sound])
    for one, (place, space) in enumerate(sound):
        for other in sorted(int(i) for i in tree.query(polygon(space), predicate="intersects")):
            before = sound[other][1]
            if other >= one or before.storey != space.storey:
                continue
            shared = polygon(space).intersection(polygon(before)).area
            smaller = min(polygon(space).area, polygon(before).area)
            if shared > NAMED_PART_SHARE * smaller and abs(polygon(space).area - polygon(before).area) > 0.01:
                continue
            if shared > 0.001:
                yield place.problem(
                    f"it overlaps the space '{before.id}' by {shared:.2f} m2",
                    "Move the outlines apart, or put one wholly inside the other as a named part of it",
                    weight="stops" if shared > OVERLAP_M2 else "noted",
                )


def walls(book: Register) -> Iterator[Problem]:
    """Walls of no length, with an outline that is none, or one upon another."""
    sound: list[tuple[Place, Wall, shapely.Polygon]] = []
    for place, wall in zip(places(book.site, "walls"), book.site.walls, strict=True):
        if direction(wall.line_m)[2] < LEAST_LENGTH_M:
            yield place.problem("the wall has no length", "Give two different ends to 'line_m'")
            continue
        if wall.footprint_m is not None and len(wall.footprint_m) < 3:
            yield place.problem("'footprint_m' has fewer than 3 corners", "Give its outline, or leave it out")
            continue
        outline = shapely.Polygon(wall_footprint(wall))
        if not outline.is_valid or outline.area < LEAST_LENGTH_M * LEAST_LENGTH_M:
            yield place.problem(
                "'footprint_m' crosses itself or holds no area", "Give its corners in order, or leave it out"
            )
            continue
        if outline.distance(shapely.LineString(wall.line_m)) > 0.0:
            yield place.problem(
                "'footprint_m' lies beside the wall's own line", "Bring the two together", weight="noted"
            )
        sound.append((place, wall, outline))
    yield from _doubled_walls(sound)


def _doubled_walls(sound: list[tuple[Place, Wall, shapely.Polygon]]) -> Iterator[Problem]:
    tree = shapely.STRtree([outline for _, _, outline in sound])
    for one, (place, wall, outline) in enumerate(sound):
        for other in sorted(int(i) for i in tree.query(outline, predicate="intersects")):
            _, before, area = sound[other]
            if other >= one or before.storey != wall.storey or before.base_m != wall.base_m:
                continue
            if outline.intersection(area).area > 0.5 * min(outline.area, area.area):
                yield place.problem(
                    f"it stands where the wall '{before.id}' stands", "Keep one of the two", weight="noted"
                )


def open_edges(book: Register) -> Iterator[Problem]:
    """Open edges of no length, or between spaces that do not touch."""
    for place, edge in zip(places(book.site, "open_edges"), book.site.open_edges, strict=True):
        yield from _open_edge(book, place, edge)


def _open_edge(book: Register, place: Place, edge: OpenEdge) -> Iterator[Problem]:
    if direction(edge.line_m)[2] < LEAST_LENGTH_M:
        yield place.problem("the open edge has no length", "Give two different ends to 'line_m'")
        return
    first, second = (book.spaces.get(name) for name in edge.spaces)
    if first is None or second is None:
        return
    if first.id == second.id:
        yield place.problem("it joins a space to itself", "Name the two spaces that it joins")
        return
    if first.storey != second.storey:
        yield place.problem("its spaces are on different storeys", "Use a stair between storeys")
        return
    apart = polygon(first).distance(polygon(second))
    if apart > NEAR_EDGE_M:
        yield place.problem(
            f"its spaces '{first.id}' and '{second.id}' are {apart:.2f} m apart",
            "Name two spaces that touch, or correct their outlines",
        )
        return
    line = shapely.LineString(edge.line_m)
    far = max(polygon(first).distance(line), polygon(second).distance(line))
    if far > NEAR_EDGE_M:
        yield place.problem(
            f"its line lies {far:.2f} m from one of its spaces", "Draw it where the two spaces meet"
        )


def stairs(book: Register) -> Iterator[Problem]:
    """Stairs that lead nowhere."""
    for place, stair in zip(places(book.site, "stairs"), book.site.stairs, strict=True):
        yield from _stair(book, place, stair)


def _stair(book: Register, place: Place, stair: Stair) -> Iterator[Problem]:
    if shapely.LineString(stair.line_m).length < 0.3:
        yield place.problem("its walking line is shorter than 0.3 m", "Give its line from bottom to top")
        return
    if stair.well_m is not None and (len(stair.well_m) < 3 or not shapely.Polygon(stair.well_m).is_valid):
        yield place.problem("'well_m' is no outline", "Give its corners in order, or leave it out")
    lower, upper = book.storeys.get(stair.lower), book.storeys.get(stair.upper)
    if lower is None or upper is None:
        return
    if upper.elevation_m <= lower.elevation_m:
        yield place.problem(
            f"it leads up to '{upper.id}' ({upper.elevation_m:g} m), which is not above '{lower.id}' "
            f"({lower.elevation_m:g} m)",
            "Swap 'lower' and 'upper' and turn its line round, or correct an elevation",
        )
        return
    for end, storey, point in (("foot", lower, stair.line_m[0]), ("head", upper, stair.line_m[-1])):
        space, far = nearest_space(book, storey.id, point)
        if space is None:
            yield place.problem(
                f"its {end} leads nowhere: the storey '{storey.id}' has no space",
                "Add the space that it leads to",
                weight="noted",
            )
        elif far > NEAR_STAIR_M:
            yield place.problem(
                f"its {end} leads nowhere: the nearest space of '{storey.id}', '{space.id}', is {far:.1f} m away",
                "Correct its line, or add the space that it leads to",
            )

"""What sound goes through from space to space and to the open air: walls, floors, leaves, open edges and wells."""

from __future__ import annotations

import math
from typing import NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.opening import Opening
from wardwright.model.partitions import Facing, area_of, facings, joining, stacked, wells
from wardwright.model.placement import direction, opening_line
from wardwright.model.record import Point2
from wardwright.model.room_shapes import indoors, space_height
from wardwright.model.site import Site
from wardwright.model.sound_make import OPEN, Bands, Makes, floor_losses, leaf_loss, wall_losses


class WallPath(NamedTuple):
    """A stretch of wall, or a floor, between two spaces or a space and the open air, openings taken out."""

    one: str
    other: str | None
    area_m2: float
    makes: Makes
    facing: Facing | None
    """Where it is; None: a floor."""


class LeafPath(NamedTuple):
    """A leaf, a gap, an open edge or a well."""

    one: str
    other: str | None
    area_m2: float
    loss_db: Bands
    """Shut. [dB]"""
    gap_width_m: float
    """Of the gap under it; 0: it shuts tight."""
    opening: Opening | None
    """None: an open edge or a well, which never shuts."""


class OuterPiece(NamedTuple):
    """A piece of the house's outside."""

    space: str
    number: int
    """Its place among the wall paths or the leaf paths."""
    at_m: tuple[float, float, float]
    """Its middle, above the house's zero."""
    normal: Point2
    """Unit vector out of the house."""
    is_leaf: bool


def wall_paths(site: Site, catalogue: Catalogue) -> tuple[WallPath, ...]:
    """All walls and floors that sound goes through.

    Parameters
    ----------
    site : Site
        Its house alone counts.
    catalogue : Catalogue
        The rows of transmission.

    Returns
    -------
    tuple of WallPath
        Walls first. Openings are taken evenly from all stretches between the same two spaces.
    """
    walls = {wall.id: wall for wall in site.walls}
    tall = {space.id: space_height(site, space) for space in indoors(site)}
    taken: dict[frozenset[str | None], float] = {}
    for opening, sides in _holes(site, tall):
        taken[frozenset(sides)] = taken.get(frozenset(sides), 0.0) + area_of(opening)
    found = []
    whole: dict[frozenset[str | None], float] = {}
    for one in facings(site):
        height = tall[one.space] if one.other is None else min(tall[one.space], tall[one.other])
        # A partition between two rooms is met from both sides.
        area = one.length_m * height * (1.0 if one.other is None else 0.5)
        pair = frozenset((one.space, one.other))
        whole[pair] = whole.get(pair, 0.0) + area
        makes = wall_losses(catalogue, tuple(walls[wall] for wall in one.walls))
        found.append(WallPath(one.space, one.other, area, makes, one))
    for index, path in enumerate(found):
        pair = frozenset((path.one, path.other))
        left = max(0.0, 1.0 - taken.get(pair, 0.0) / whole[pair])
        found[index] = path._replace(area_m2=path.area_m2 * left)
    floors = (WallPath(s.lower, s.upper, s.area_m2, floor_losses(catalogue), None) for s in stacked(site))
    return (*found, *floors)


def _holes(site: Site, rooms: dict[str, float]) -> list[tuple[Opening, tuple[str | None, str | None]]]:
    """Openings with the rooms on their sides; a balcony is the open air."""
    found = []
    for opening, sides in joining(site):
        one, other = (side if side in rooms else None for side in sides)
        if one != other:
            found.append((opening, (one, other)))
    return found


def leaf_paths(site: Site, catalogue: Catalogue) -> tuple[LeafPath, ...]:
    """All leaves, gaps, open edges and wells that sound goes through.

    Parameters
    ----------
    site : Site
        Its house alone counts.
    catalogue : Catalogue
        The rows of transmission.

    Returns
    -------
    tuple of LeafPath
        Openings by id first, then open edges, then wells.
    """
    tall = {space.id: space_height(site, space) for space in indoors(site)}
    found = []
    for opening, (one, other) in _holes(site, tall):
        inner, outer = (one, other) if one is not None else (other, one)
        has_gap = opening.kind == "door" and outer is not None
        loss = leaf_loss(catalogue, opening, is_outside=outer is None)
        gap = opening.width_m if has_gap else 0.0
        found.append(LeafPath(inner or "", outer, area_of(opening), loss, gap, opening))
    for edge in sorted(site.open_edges, key=lambda e: e.id):
        a, b = edge.spaces
        if a in tall and b in tall and a != b:
            area = math.dist(*edge.line_m) * min(tall[a], tall[b])
            found.append(LeafPath(a, b, area, OPEN, 0.0, None))
    found.extend(
        LeafPath(hole.lower, hole.upper, hole.area_m2, OPEN, 0.0, None)
        for hole in wells(site)
        if hole.lower in tall and hole.upper in tall
    )
    return tuple(found)


def outer_pieces(
    site: Site, walls: tuple[WallPath, ...], leaves: tuple[LeafPath, ...]
) -> tuple[OuterPiece, ...]:
    """What of the walls and leaves stands in the open air.

    Parameters
    ----------
    site : Site
        The house.
    walls, leaves : tuple
        As `wall_paths` and `leaf_paths` give them.

    Returns
    -------
    tuple of OuterPiece
        Party walls, behind which nothing is drawn, are left out.
    """
    floors = {storey.id: storey.elevation_m for storey in site.storeys}
    found = []
    for number, path in enumerate(walls):
        if path.other is None and path.facing is not None and _is_outer(site, path.facing):
            space = site.space(path.one)
            z = floors[space.storey] + space_height(site, space) / 2
            found.append(
                OuterPiece(path.one, number, (*path.facing.at_m, z), path.facing.normal, is_leaf=False)
            )
    for number, leaf in enumerate(leaves):
        if leaf.other is None and leaf.opening is not None:
            wall = site.wall(leaf.opening.wall)
            (ax, ay), (bx, by) = opening_line(wall, leaf.opening)
            _, (nx, ny), _ = direction(wall.line_m)
            is_room_left = dict(joining(site))[leaf.opening][0] == leaf.one
            sign = -1.0 if is_room_left else 1.0
            z = floors[wall.storey] + (leaf.opening.sill_m + leaf.opening.head_m) / 2
            at = ((ax + bx) / 2, (ay + by) / 2, z)
            found.append(OuterPiece(leaf.one, number, at, (sign * nx, sign * ny), is_leaf=True))
    return tuple(found)


def _is_outer(site: Site, facing: Facing) -> bool:
    return all(site.wall(wall).is_exterior is not False for wall in facing.walls)

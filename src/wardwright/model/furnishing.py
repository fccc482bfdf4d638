"""What swallows sound in a space: its floor, ceiling, walls, panes and leaves, and what stands in it."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.fabric import Space
from wardwright.model.opening import Opening
from wardwright.model.partitions import area_of, facings, joining
from wardwright.model.placement import fixture_outline
from wardwright.model.room_shapes import floor_polygon, space_height
from wardwright.model.site import Site
from wardwright.model.sound_make import Bands, fixture_absorption, swallowed_by


class Swallowing(NamedTuple):
    """What a space holds and what swallows sound in it."""

    volume_m3: float
    surface_m2: float
    """Floor, ceiling and walls."""
    area_m2: Bands
    """Equivalent absorption area by octave band. [m2]"""


def swallowing(site: Site, catalogue: Catalogue, space: Space) -> Swallowing:
    """What swallows sound in a space.

    Parameters
    ----------
    site : Site
        Its house alone counts.
    catalogue : Catalogue
        The rows of absorption.
    space : Space
        The space.

    Returns
    -------
    Swallowing
        Things that are drawn count at least for what such a space usually holds: one more never makes it less.
    """
    return _swallowing(site.bare, catalogue, space)


@lru_cache(maxsize=512)
def _swallowing(site: Site, catalogue: Catalogue, space: Space) -> Swallowing:
    floor = floor_polygon(space)
    height = space_height(site, space)
    openings = _openings_by_space(site).get(space.id, ())
    parts: list[tuple[float, Bands]] = [
        (floor.area, swallowed_by(catalogue, "floor", space=space).coefficients),
        (floor.area, swallowed_by(catalogue, "ceiling", space=space).coefficients),
    ]
    walls = {wall.id: wall for wall in site.walls}
    through = sum(area_of(opening) for opening in openings)
    whole = max(floor.length * height, 1e-6)
    left = max(0.0, 1.0 - through / whole)
    for one in facings(site):
        if one.space == space.id:
            wall = walls[one.walls[0]] if one.walls else None
            row = swallowed_by(catalogue, "wall", space=space, wall=wall)
            parts.append((one.length_m * height * left, row.coefficients))
    parts.extend(_of_opening(catalogue, space, opening) for opening in openings)
    bands = _summed(parts)
    furnished = _furnished(site, catalogue, space, floor=floor)
    total = tuple(a + b for a, b in zip(bands, furnished, strict=True))
    return Swallowing(floor.area * height, 2.0 * floor.area + whole, total)


@lru_cache(maxsize=32)
def _openings_by_space(site: Site) -> dict[str, tuple[Opening, ...]]:
    found: dict[str, tuple[Opening, ...]] = {}
    for opening, sides in joining(site):
        for side in sides:
            if side is not None:
                found[side] = (*found.get(side, ()), opening)
    return found


def _of_opening(catalogue: Catalogue, space: Space, opening: Opening) -> tuple[float, Bands]:
    is_pane = opening.kind in ("window", "rooflight")
    coefficients: Bands = swallowed_by(catalogue, "pane" if is_pane else "leaf", space=space).coefficients
    if opening.covering != "none":
        hung = swallowed_by(catalogue, "covering", space=space).coefficients
        coefficients = tuple(max(pair) for pair in zip(coefficients, hung, strict=True))
    return area_of(opening), coefficients


def _summed(parts: Iterable[tuple[float, Bands]]) -> Bands:
    found = [0.0] * 6
    for area, coefficients in parts:
        for band, one in enumerate(coefficients):
            found[band] += area * one
    return tuple(found)


def _furnished(site: Site, catalogue: Catalogue, space: Space, *, floor: shapely.Polygon) -> Bands:
    """The more, band by band, of what such a space usually holds and of what is drawn."""
    usual = swallowed_by(catalogue, "furnishing", space=space)
    share = usual.floor_share * floor.area
    assumed = [share * one for one in usual.coefficients]
    drawn = []
    for fixture in site.fixtures:
        coefficients = fixture_absorption(catalogue, fixture.kind)
        if coefficients is not None and fixture.storey == space.storey:
            shared = shapely.Polygon(fixture_outline(fixture)).intersection(floor).area
            # A thing that hangs swallows by its upright face, and is thin on the plan.
            face = max(fixture.size_m) * fixture.height_m if fixture.kind in ("curtain", "screen") else shared
            drawn.append((face if shared > 0.0 else 0.0, coefficients))
    return tuple(max(pair) for pair in zip(assumed, _summed(drawn), strict=True))

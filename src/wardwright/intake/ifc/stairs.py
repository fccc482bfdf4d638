"""Stairs of a building file: the walking line from the treads, the hole that each leaves in the floor above."""

from __future__ import annotations

from typing import NamedTuple

import ifcopenshell.util.element
import numpy as np
import shapely

from wardwright.intake.ifc.file import IfcHouse, called
from wardwright.intake.ifc.shapes import FloatArray, Level, Solid, joined, levels, plan_outline
from wardwright.intake.ifc.spaces import Floor
from wardwright.intake.outlines import largest, ring_of
from wardwright.model.fabric import Stair
from wardwright.model.placement import space_at, wall_footprint
from wardwright.model.site import Site

TREAD_M2 = (0.04, 3.0)
"""Level faces smaller or larger than these are no treads or landings. [m2] (assumption)"""
TREADS_AT_LEAST = 3
FLOOR_NEAR_M = 0.2
"""A slab's top this close to a storey's floor is its floor. [m] (assumption)"""
LANDING_M = 0.05
"""How far past the edge of the floor above the walking line ends. [m] (assumption)"""
BALUSTER_NEAR_M = 0.3


class Flight(NamedTuple):
    """The treads of one stair, lowest first: middles and heights."""

    solid: Solid
    treads: list[Level]
    middles: FloatArray
    """Shape (n, 2). [m]"""


def stairs_of(house: IfcHouse, site: Site, floors: list[Floor]) -> list[Stair]:
    """The stairs between kept storeys that ours can walk; `site` holds storeys, spaces, walls."""
    found: list[Stair] = []
    taken: set[int] = set()
    # Stairs first: a flight on its own is one that no stair holds.
    for entity in (*house.of("IfcStair"), *house.of("IfcStairFlight")):
        parts = ifcopenshell.util.element.get_parts(entity)
        if entity.id() in taken:
            continue
        taken |= {part.id() for part in parts}
        solids = [house.solid(e) for e in (entity, *parts) if not e.is_a("IfcRailing")]
        solid = joined(s for s in solids if s is not None)
        name = called(entity)
        flight = None if solid is None else _flight(solid)
        ends = None if flight is None else _ends(flight, floors)
        if flight is None or ends is None:
            reason = "without treads that can be told" if flight is None else "that joins no two kept storeys"
            house.draft.leave_out("stair", reason, name)
            continue
        stair = _stair(house, site, flight, ends=ends)
        if stair is None:
            house.draft.leave_out("stair", "of a neighbour", name)
        else:
            found.append(stair)
    return found


def _flight(solid: Solid) -> Flight | None:
    treads = [t for t in levels(solid, least=TREAD_M2[0]) if t.area.area <= TREAD_M2[1]]
    if len(treads) < TREADS_AT_LEAST:
        return None
    middles = np.array([shapely.get_coordinates(shapely.centroid(t.area))[0] for t in treads])
    return Flight(solid, treads, middles)


def _ends(flight: Flight, floors: list[Floor]) -> tuple[Floor, Floor] | None:
    """The storeys that a flight joins."""
    rise = float(np.median(np.diff([tread.height for tread in flight.treads])))
    foot, head = flight.treads[0].height - rise, flight.treads[-1].height
    lower = min(floors, key=lambda f: abs(f.elevation - foot))
    upper = min(floors, key=lambda f: min(abs(f.elevation - head), abs(f.elevation - head - rise)))
    near = abs(lower.elevation - foot) < 0.5 and abs(upper.elevation - head - rise / 2) < 0.5
    return (lower, upper) if near and upper.elevation > lower.elevation else None


def _stair(house: IfcHouse, site: Site, flight: Flight, *, ends: tuple[Floor, Floor]) -> Stair | None:
    lower, upper = ends
    kept = [t.height <= upper.elevation + 0.05 for t in flight.treads]
    flight = Flight(
        flight.solid,
        [t for t, keep in zip(flight.treads, kept, strict=True) if keep],
        flight.middles[np.array(kept)],
    )
    well = _well(house, site, flight, upper=upper)
    line = _walking_line(flight, well)
    whose = [space_at(site, lower.id, line[0]), space_at(site, upper.id, line[-1])]
    if not any(space is not None and space.belongs == "ours" for space in whose):
        return None
    made = house.new_id("stairs" if whose[0] is None else f"stairs {whose[0].name}", "stairs")
    fields: dict[str, object] = {
        "id": made, "name": "stairs", "lower": lower.id, "upper": upper.id, "line_m": line,
        "width_m": round(_width(flight), 3),
    }  # fmt: skip
    basis = dict.fromkeys(fields, "measured") | {"name": "guessed", "line_m": "guessed"}
    house.draft.guess("walking line (through the middles of the treads)", "stair", made)
    if well is not None:
        fields["well_m"], basis["well_m"] = ring_of(well), "measured"
        if _has_railing(house, well, upper):
            fields["balusters"], basis["balusters"] = "open", "guessed"
            house.draft.guess("balusters (by the railing)", "stair", made)
    return Stair.model_validate({**fields, "basis": basis})


def _walking_line(flight: Flight, well: shapely.Polygon | None) -> tuple[tuple[float, float], ...]:
    """Through the middles of the treads, from the front of the first to past the back of the last. [m]"""
    middles = flight.middles
    start = middles[0] - (middles[1] - middles[0]) / 2
    last = middles[-1] - middles[-2]
    end = middles[-1] + last / 2
    way = last / max(float(np.hypot(*last)), 1e-9)
    for _ in range(12):
        if well is None or not well.buffer(LANDING_M).contains(shapely.Point(end)):
            break
        end = end + way * 0.05
    line = shapely.LineString([start, *middles, end]).simplify(0.01)
    return tuple((round(float(x), 4), round(float(y), 4)) for x, y in line.coords)


def _width(flight: Flight) -> float:
    """The middle one of the treads' widths, across the way. [m]"""
    ways = np.gradient(flight.middles, axis=0)
    widths = []
    for tread, (dx, dy) in zip(flight.treads, ways, strict=True):
        length = float(np.hypot(dx, dy))
        if length > 0:
            across = shapely.get_coordinates(tread.area) @ np.array((-dy, dx)) / length
            widths.append(float(across.max() - across.min()))
    return min(max(float(np.median(widths)), 0.31), 4.0) if widths else 0.9


def _well(house: IfcHouse, site: Site, flight: Flight, *, upper: Floor) -> shapely.Polygon | None:
    """The hole in the floor above that the stair comes up through; None where no slab is drawn. [m]"""
    slabs = []
    for slab in house.of("IfcSlab"):
        solid = house.solid(slab, holes=True) if slab.PredefinedType != "ROOF" else None
        if solid is not None and abs(solid.high - upper.elevation) < FLOOR_NEAR_M:
            slabs.append(plan_outline(solid))
    walls = [shapely.Polygon(wall_footprint(w)).buffer(0) for w in site.walls if w.storey == upper.id]
    rooms = [shapely.Polygon(s.outline_m) for s in site.spaces if s.storey == upper.id]
    if not slabs or not rooms:
        return None
    region = shapely.union_all([*walls, *rooms]).convex_hull
    hole = region.difference(shapely.union_all([*slabs, *walls]).buffer(0.005))
    hole = hole.buffer(-0.05, join_style="mitre").buffer(0.055, join_style="mitre")
    stair = plan_outline(flight.solid)
    parts = [p for p in shapely.get_parts(hole) if p.geom_type == "Polygon" and p.intersects(stair)]
    best = largest(shapely.union_all(parts)) if parts else None
    return best if best is not None and best.area < region.area / 2 else None


def _has_railing(house: IfcHouse, well: shapely.Polygon, upper: Floor) -> bool:
    for railing in house.of("IfcRailing"):
        solid = house.solid(railing)
        if solid is not None and solid.high > upper.elevation + 0.5:
            reach = plan_outline(solid).intersection(well.exterior.buffer(BALUSTER_NEAR_M))
            if not reach.is_empty:
                return True
    return False

"""What is odd about a building as drawn: counted, so that a reader of the plan is not surprised."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

import numpy as np
import shapely

from wardwright.intake.ifc.file import IfcHouse
from wardwright.intake.ifc.shapes import cut
from wardwright.intake.ifc.spaces import Floor, Room
from wardwright.intake.report import counted, listed, number_word
from wardwright.model.fabric import Space, Wall
from wardwright.model.opening import Opening
from wardwright.model.placement import direction, is_way_in, wall_footprint
from wardwright.model.site import Site

PLAN_CUT_M = 1.0
"""The height above the floor at which a plan is usually cut. [m] (assumption)"""
STEP_M = 0.25
"""How far apart the places along a wall are at which its two sides are looked at. [m] (assumption)"""
LINING_M = 0.55
"""How far from a wall's face a flat's room is looked for, linings between. [m] (assumption)"""
SAME_PLACE_SHARE = 0.9
"""Party walls of two storeys that share less than this of their plan stand in differing places. [-] (assumption)"""

_FLAT = re.compile(r"\(([A-Za-z]+)[-_. ]?\d")


def note_oddities(house: IfcHouse, site: Site, *, rooms: Sequence[Room], floors: Sequence[Floor]) -> None:
    """Note rooms that reach through a storey, windows that no plan shows, party walls, names that say nothing."""
    kept = [room for room in rooms if room.name in {space.name for space in site.spaces}]
    for fact in (*_tall_rooms(kept, floors), *_windows(site), *_party_walls(site), *_silent_names(site)):
        house.draft.oddity(fact)


def _tall_rooms(rooms: Sequence[Room], floors: Sequence[Floor]) -> list[str]:
    tops = {floor.level: floor.top for floor in floors}
    tall = sorted(r.name for r in rooms if r.solid.high > tops.get(r.level, math.inf) + 1.0)
    facts = [f"{', '.join(tall)}: reaching through the storey above too"] if tall else []
    for floor in floors:
        met = [r for r in rooms if not cut(r.solid, floor.elevation + PLAN_CUT_M).is_empty]
        strange = sorted(r.name for r in met if r.level != floor.level)
        own = sum(r.level == floor.level for r in met)
        if strange:
            facts.append(
                f"{floor.name}: a plan cut at {PLAN_CUT_M:g} m meets {number_word(len(met))} rooms, but "
                f"{number_word(own)} belong to it; {' and '.join(strange)} reach up from below"
            )
    return facts


def _windows(site: Site) -> list[str]:
    facts = []
    for storey in site.storeys:
        walls = {wall.id for wall in site.walls if wall.storey == storey.id}
        windows = [o for o in site.openings if o.wall in walls and o.kind == "window"]
        missed = [o for o in windows if not _is_cut(o)]
        if missed:
            facts.append(
                f"{storey.name}: {len(missed)} of {counted(len(windows), 'window')} lie wholly below or above "
                f"the {PLAN_CUT_M:g} m at which a plan is cut"
            )
    lights = [o for o in site.openings if o.kind == "rooflight" and is_way_in(site, o)]
    if lights:
        over = sorted({site.space(side).name for o in lights for side in o.joins or () if side is not None})
        verb = "lies" if len(lights) == 1 else "lie"
        facts.append(
            f"{counted(len(lights), 'window')} {verb} in the roof over {', '.join(over)}: kept as rooflights"
        )
    return facts


def _is_cut(opening: Opening) -> bool:
    return opening.sill_m < PLAN_CUT_M < opening.head_m


def _flat_of(space: Space) -> str | None:
    code = _FLAT.search(space.name)
    return code[1].upper() if code else None


def _party_walls(site: Site) -> list[str]:
    """Where two flats adjoin, by their rooms' codes: how many walls part them on each storey, and whether in line."""
    found: dict[tuple[str, str], dict[str, list[Wall]]] = {}
    for storey in site.storeys:
        floors = _floors_of_flats(site, storey.id)
        for wall in site.walls if len(floors) > 1 else ():
            for pair in _parted(wall, floors) if wall.storey == storey.id else ():
                found.setdefault(pair, {}).setdefault(storey.id, []).append(wall)
    facts = []
    for (one, other), by_storey in sorted(found.items()):
        said = [
            f"{counted(len(walls), 'wall')} on {site.storey(storey).name} ({listed(w.id for w in walls)})"
            for storey, walls in by_storey.items()
        ]
        plans = [
            shapely.union_all([shapely.Polygon(wall_footprint(w)) for w in ws]) for ws in by_storey.values()
        ]
        shared = shapely.intersection_all(plans).area / max(plan.area for plan in plans)
        differ = len(plans) > 1 and shared < SAME_PLACE_SHARE
        tail = ", in differing places on each" if differ else ""
        facts.append(f"between the flats {one} and {other} stand {' and '.join(said)}{tail}")
    return facts


def _floors_of_flats(site: Site, storey_id: str) -> dict[str, shapely.Geometry]:
    """The floor of each flat on one storey, by the letter of its rooms' codes. [m]"""
    found: dict[str, list[shapely.Polygon]] = {}
    for space in site.spaces:
        flat = _flat_of(space)
        if space.storey == storey_id and flat is not None:
            found.setdefault(flat, []).append(shapely.Polygon(space.outline_m))
    floors = {flat: shapely.union_all(rooms) for flat, rooms in sorted(found.items())}
    shapely.prepare(list(floors.values()))
    return floors


def _parted(wall: Wall, floors: dict[str, shapely.Geometry]) -> set[tuple[str, str]]:
    """The pairs of flats that a wall has on its two sides, linings looked through."""
    (ux, uy), (nx, ny), length = direction(wall.line_m)
    along = (np.arange(max(int(length / STEP_M), 1)) + 0.5) * STEP_M
    beside = wall.thickness_m / 2 + LINING_M * np.array((1 / 3, 2 / 3, 1.0))
    (ax, ay), _ = wall.line_m
    sides = []
    for side in (1.0, -1.0):
        x = ax + ux * along[:, None] + nx * side * beside
        y = ay + uy * along[:, None] + ny * side * beside
        flats = np.full(len(along), "", dtype=object)
        for far in (2, 1, 0):  # the nearest counts, so it is written last
            for flat, floor in floors.items():
                flats[shapely.contains_xy(floor, x[:, far], y[:, far])] = flat
        sides.append(flats)
    return {
        (min(one, other), max(one, other))
        for one, other in zip(*sides, strict=True)
        if one and other and one != other
    }


def _silent_names(site: Site) -> list[str]:
    silent = sorted(s.name for s in site.spaces if s.use == "other" and s.belongs == "ours")
    return [f"what {', '.join(silent)} is for cannot be told by its name"] if silent else []

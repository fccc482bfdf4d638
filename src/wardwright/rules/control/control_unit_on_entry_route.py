"""CTL101: the control unit stands where everybody, and every intruder, comes in."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.floor import solid_walls, storey_parts
from wardwright.model.placement import Standing, fixture_outline, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.entry_routes import EntryRoute, entry_routes, is_in
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import control_units
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions
from wardwright.rules.unit_spots import moved_to_watched_spot
from wardwright.rules.wall_spots import room_of

BESIDE_ROUTE_M = 1.5
"""A control unit this near the way in is reached in a step, seen or not. [m] (assumption)"""
HIDES_M = 1.5
"""Furniture with its top at least this high hides what is behind or in it. [m] (assumption)"""


@rule(
    code="CTL101",
    name="control-unit-on-entry-route",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def control_unit_on_entry_route(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Control units beside, or in view of, the way from an entry door to the keypad.

    What it checks
        The fastest way, at an ordinary pace, from each entry door to the keypad that is reached first: whether it
        passes within 1.5 m of a control unit in the same room, or anywhere in that room in view of it. Spaces that
        are open to each other count as one room.
    Why it matters
        On this way nothing alarms until the entry time is over. Whoever forces the entry door can find the unit and
        break it before anything sounds or any message leaves.
    How to put it right
        Leave the keypad by the door and put the unit in another room that a device watches which alarms at once.
        The finding carries the nearest such place. A unit with its own keypad draws the way to itself: fit a
        separate keypad first.
    What it cannot know
        Which way the household really walks; cupboards, curtains and pictures that hide the unit but are not drawn;
        whether the unit can be heard from the door.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets, and the household's pace.

    Yields
    ------
    Finding
        One for each control unit on a way in, with the least distance between them [m]; one of severity `not run`
        for each entry door with no way to a keypad, and for each unit in no space.

    Raises
    ------
    NotComputable
        If there is no control unit, no entry door or no keypad.
    """
    this = control_unit_on_entry_route
    units = control_units(site, catalogue)
    routes = entry_routes(site, catalogue)
    for one in routes:
        if one.route is None:
            yield this.not_run(
                one.door.id,
                f"no way was found from {one.door.name} to {one.keypad.name}",
                cure="Draw the doors, gaps and open edges between them",
            )
    goals = {one.keypad.id for one in routes}
    for unit, _ in units:
        place = standing(site, unit)
        room = room_of(site, place.storey, (place.x_m, place.y_m))
        if not room:
            yield this.not_run(unit.id, f"{unit.name}: it stands in no space", cure="Draw its room")
            continue
        ways = [(one, one.points_on(place.storey)) for one in routes]
        inside = [(one, points[is_in(room, points)]) for one, points in ways]
        gaps = [(_exposed_at(site, place, points), one) for one, points in inside if len(points)]
        exposed = [(gap, one) for gap, one in gaps if gap is not None]
        if exposed:
            gap, worst = min(exposed, key=lambda pair: (pair[0], pair[1].door.id))
            is_goal = unit.id in goals  # then the way would move with it
            mends = () if is_goal else moved_to_watched_spot(site, catalogue, unit)
            new = suggestions(site, mends)
            yield _finding(unit, place, gap=gap, worst=worst, mends=mends, new=new, is_goal=is_goal)


def _finding(
    unit: Device,
    place: Standing,
    *,
    gap: float,
    worst: EntryRoute,
    mends: tuple[Mend, ...],
    new: tuple[Sketch, ...],
    is_goal: bool,
) -> Finding:
    is_beside = gap <= BESIDE_ROUTE_M
    if new:
        cure = f"Move it to the place given, in {new[0].label}, and leave the keypad where it is"
    elif is_goal:
        cure = "Fit a separate keypad by the door and move the unit to a room that alarms at once"
    else:
        cure = "Watch another room with a device that alarms at once, and move the unit there"
    way = tuple((float(x), float(y)) for x, y in worst.points_on(place.storey)[::10])
    here = (place.x_m, place.y_m)
    return control_unit_on_entry_route.finding(
        unit.id,
        f"{unit.name}: it is {'beside' if is_beside else 'in view of'} the way from {worst.door.name}"
        f" to {worst.keypad.name}",
        cure=cure,
        estimate=exactly(gap, "m", weakest(unit.basis_of("mount"), worst.keypad.basis_of("mount"))),
        limit=BESIDE_ROUTE_M if is_beside else None,
        mends=mends,
        sketches=(
            Sketch(role="walk", storey=place.storey, points=way, label=worst.door.name),
            Sketch(role="fault", storey=place.storey, points=(here,), label=unit.name),
            *new,
        ),
        related=(worst.door.id, worst.keypad.id),
    )


def _exposed_at(site: Site, place: Standing, points: FloatArray) -> float | None:
    """The least distance from points of a way in the same room; None where none is near and none has a view. [m]"""
    here = np.asarray((place.x_m, place.y_m))
    distances = np.hypot(*(points - here).T)
    if distances.min() <= BESIDE_ROUTE_M:
        return float(distances.min())
    parts = storey_parts(site, place.storey)
    tall = [shapely.Polygon(fixture_outline(f)) for f in parts.fixtures if f.base_m + f.height_m >= HIDES_M]
    blockers = shapely.union_all([solid_walls(parts), *tall])
    lines = shapely.linestrings(np.stack([np.broadcast_to(here, points.shape), points], axis=1))
    seen = ~shapely.intersects(blockers, lines)
    return float(distances[seen].min()) if seen.any() else None

"""KEY101: a keypad that is too long a walk from the door."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import space_at
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.walking.from_site import Route, Spot, way_in_spot
from wardwright.rules.entry_routes import EntryRoute, entry_routes, household_way, place_at
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.held_to import severity_by
from wardwright.rules.keypads.keypad_seen_through_glass import USUAL_KEYPAD_M
from wardwright.rules.outside_view import seen_from_outside, usual_height
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions
from wardwright.rules.wall_spots import Value, joined_to, wall_spots


@rule(
    code="KEY101",
    name="keypad-far-from-the-entry-door",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def keypad_far_from_the_entry_door(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Keypads that are a long walk from an entry door.

    What it checks
        From just inside each entry door, the walk to the place before the keypad that is reached first, against 5
        m: a few steps. That figure is common practice; no published source was found.
    Why it matters
        Each step more is entry time, which an intruder has as well; and whatever is seen on the way has to be entry
        route, which alarms late.
    How to put it right
        Hang the keypad, or a second one, in the room of the door; the finding carries the nearest such place that
        nobody outside sees.
    What it cannot know
        Which door the household really uses; who unsets by keyfob before coming in.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets, the household's pace, the length of the walk.

    Yields
    ------
    Finding
        One for each entry door from which it is farther, with the walk [m]; one of severity `not run` for each with
        no way to a keypad.

    Raises
    ------
    NoneOfAKind
        If there is no keypad.
    NotComputable
        If there is no entry door.
    """
    this = keypad_far_from_the_entry_door
    limit = catalogue.limit("keypad-to-entry-door", site.place.rule_pack)
    for one in entry_routes(site, catalogue):
        if one.route is None:
            yield this.not_run(
                one.door.id,
                f"no way was found from {one.door.name} to {one.keypad.name}",
                cure="Draw the doors, gaps and open edges between them",
            )
            continue
        walk = walked(one.route)
        if walk <= limit.value:
            continue
        mends = _moved(site, catalogue, one, most_m=limit.value)
        new = suggestions(site, mends)
        storey = site.wall(one.door.wall).storey
        way = tuple((float(x), float(y)) for x, y in one.points_on(storey)[::10])
        yield this.finding(
            one.door.id,
            f"{one.keypad.name}: it is a long walk from {one.door.name}",
            cure=f"Hang it, or a second one, at the place given, in {new[0].label}"
            if new
            else "Hang a keypad by the door, or unset by keyfob",
            severity=severity_by(limit),
            estimate=exactly(walk, "m", weakest(one.keypad.basis_of("mount"), one.door.basis_of("offset_m"))),
            limit=limit.value,
            mends=mends,
            sketches=(Sketch(role="walk", storey=storey, points=way, label=one.door.name), *new),
            related=(one.keypad.id,),
        )


def walked(route: Route) -> float:
    """The length of a walk, stairs by their slope. [m]"""
    return float(sum(leg.length for leg in route.legs))


def _moved(site: Site, catalogue: Catalogue, one: EntryRoute, *, most_m: float) -> tuple[Mend, ...]:
    """To the place of the door's own room with the shortest walk that nobody outside sees."""
    start = way_in_spot(site, one.door)
    space = space_at(site, start.storey, (start.x, start.y))
    if space is None:
        return ()
    height = usual_height(one.keypad, USUAL_KEYPAD_M)
    found = []
    for room in joined_to(site, space):
        for spot in wall_spots(site, room, height_m=height):
            way = (start, Spot(spot.storey, *place_at(site, spot)))
            route = household_way(site, catalogue, way)
            if route is not None and walked(route) <= most_m:
                found.append((round(walked(route), 3), spot))
    for _, spot in sorted(found):
        if not seen_from_outside(site, spot.standing(height)):
            return _hung(site, catalogue, one, values=spot.values(height), most_m=most_m)
    return ()


def _hung(
    site: Site, catalogue: Catalogue, one: EntryRoute, *, values: tuple[tuple[str, Value], ...], most_m: float
) -> tuple[Mend, ...]:
    """The keypad itself, or another one where it is built in or serves another door."""
    serves = [
        other
        for other in entry_routes(site, catalogue)
        if other.keypad.id == one.keypad.id and other.route is not None and walked(other.route) <= most_m
    ]
    is_separate = catalogue.sheet(one.keypad.sheet).kind == "keypad"
    if is_separate and not serves:
        return (Mend(action="move-device", subject=one.keypad.id, values=values),)
    rows = [one.keypad.sheet] if is_separate else [row.id for row in catalogue.sheets if row.kind == "keypad"]
    if not rows:
        return ()
    return (Mend(action="add-device", subject=one.door.id, values=(("sheet", rows[0]), *values)),)

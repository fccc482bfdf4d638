"""Doors, windows and gaps that do not fit their wall or their own kind."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.consistency.identity import places
from wardwright.model.consistency.problem import Place, Problem, Register
from wardwright.model.fabric import Wall
from wardwright.model.opening import Opening
from wardwright.model.placement import direction, is_way_in, sides_of_opening

SLACK_M = 0.02
"""Within this, edges are taken to meet. [m] (assumption)"""
DRAWING_SLACK_M = 0.1
"""An opening past its wall's end by less is an imperfection of drawing. [m] (assumption)"""
HEAD_SLACK_M = 0.3
"""A head above its wall by less is an imperfection of drawing. [m] (assumption)"""
OVERLAP_M2 = 0.1
"""Openings that overlap by less are an imperfection of drawing. [m2] (assumption)"""


def openings(book: Register) -> Iterator[Problem]:
    """Each opening against its wall, its own kind, and its neighbours."""
    on_wall: dict[str, list[tuple[Place, Opening]]] = {}
    for place, opening in zip(places(book.site, "openings"), book.site.openings, strict=True):
        yield from _own_kind(place, opening)
        wall = book.walls.get(opening.wall)
        if wall is None:
            continue
        if direction(wall.line_m)[2] > 0.0:
            yield from _along_wall(place, opening, wall)
        yield from _up_wall(book, place, opening, wall=wall)
        yield from _joins(book, place, opening, wall=wall)
        yield from _overlaps(place, opening, before=on_wall.setdefault(wall.id, []))
        on_wall[wall.id].append((place, opening))


def _own_kind(place: Place, opening: Opening) -> Iterator[Problem]:
    if opening.sill_m >= opening.head_m:
        yield place.problem(
            f"its sill ({opening.sill_m:g} m) is not below its head ({opening.head_m:g} m)",
            "Correct 'sill_m' or 'head_m'; both are above the storey's floor",
        )
    if opening.is_entry_door and opening.kind not in ("door", "garage-door"):
        yield place.problem(
            f"a {opening.kind} cannot be an entry door", "Take out 'is_entry_door', or change 'kind'"
        )
    if opening.hinge == "fixed" and "open" in (opening.habit, opening.habit_night):
        yield place.problem("it is fixed and yet stands open", "Change 'hinge', or say that it stands shut")
    if opening.kind == "gap" and opening.glazing is not None:
        yield place.problem("a gap has no glass", "Take out 'glazing', or change 'kind'")
    if opening.kind == "gap" and opening.lock not in ("none", "unknown"):
        yield place.problem("a gap has no lock", "Take out 'lock', or change 'kind'")


def _along_wall(place: Place, opening: Opening, wall: Wall) -> Iterator[Problem]:
    length = direction(wall.line_m)[2]
    if opening.width_m > length + SLACK_M:
        yield place.problem(
            f"it is {opening.width_m:g} m wide, but its wall '{wall.id}' is only {length:.2f} m long",
            "Correct 'width_m', or name the wall that it is in",
        )
        return
    half = opening.width_m / 2
    over = max(half - opening.offset_m, opening.offset_m + half - length)
    if over > SLACK_M:
        low, high = half, length - half
        yield place.problem(
            f"it reaches {over:.2f} m past the end of its wall '{wall.id}', which is {length:.2f} m long",
            f"Give 'offset_m' between {low:.2f} and {high:.2f}; it is the middle of the opening",
            weight="stops" if over > DRAWING_SLACK_M else "noted",
        )


def _up_wall(book: Register, place: Place, opening: Opening, *, wall: Wall) -> Iterator[Problem]:
    storey = book.storeys.get(wall.storey)
    if storey is None or opening.kind in ("rooflight", "hatch"):
        return
    if wall.height_m is not None:
        top, what = wall.base_m + wall.height_m, f"the top of its wall '{wall.id}'"
    else:
        heights = [s.height_m for s in book.site.spaces if s.storey == storey.id and s.height_m is not None]
        top, what = max([storey.height_m, *heights]), f"the ceiling of '{storey.id}'"
    over = opening.head_m - top
    if over > SLACK_M:
        yield place.problem(
            f"its head ({opening.head_m:g} m) is {over:.2f} m above {what} ({top:g} m)",
            "Correct 'head_m', or the height of the wall or storey",
            weight="stops" if over > HEAD_SLACK_M else "noted",
        )
    under = wall.base_m - opening.sill_m
    if wall.base_m > 0.0 and under > HEAD_SLACK_M:
        yield place.problem(
            f"its sill ({opening.sill_m:g} m) is below the foot of its wall '{wall.id}' ({wall.base_m:g} m)",
            "Correct 'sill_m', or the wall's 'base_m'",
            weight="noted",
        )


def _joins(book: Register, place: Place, opening: Opening, *, wall: Wall) -> Iterator[Problem]:
    named = [book.spaces.get(name) for name in opening.joins or () if name is not None]
    if None in named:
        return
    if opening.joins is not None and opening.joins == (None, None):
        yield place.problem("'joins' names no space", "Name the space on each side, or leave it out")
    if opening.joins is not None and opening.joins[0] == opening.joins[1] and opening.joins[0] is not None:
        yield place.problem(
            f"it joins the space '{opening.joins[0]}' to itself",
            "Name the space on each side",
            weight="noted",
        )
    if opening.kind not in ("rooflight", "hatch"):
        for space in named:
            if space is not None and space.storey != wall.storey:
                yield place.problem(
                    f"it joins the space '{space.id}', which is not on its wall's storey '{wall.storey}'",
                    "Name spaces of that storey in 'joins'",
                )
    if opening.is_entry_door and opening.kind in ("door", "garage-door") and book.site.spaces:
        sides = sides_of_opening(book.site, opening)
        if not any(sides) or not is_way_in(book.site, opening):
            yield place.problem(
                "it is an entry door, but does not lead in from outside",
                "Take out 'is_entry_door', or correct its wall or 'joins'",
                weight="noted",
            )


def _overlaps(place: Place, opening: Opening, *, before: list[tuple[Place, Opening]]) -> Iterator[Problem]:
    for _, other in before:
        across = (opening.width_m + other.width_m) / 2 - abs(opening.offset_m - other.offset_m)
        up = min(opening.head_m, other.head_m) - max(opening.sill_m, other.sill_m)
        if across > SLACK_M and up > SLACK_M:
            yield place.problem(
                f"it overlaps the opening '{other.id}' on the wall '{opening.wall}' by {across:.2f} m",
                "Correct 'offset_m' or 'width_m' of one of them",
                weight="stops" if across * up > OVERLAP_M2 else "noted",
            )

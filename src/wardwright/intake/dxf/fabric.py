"""Walls and openings of the site, from runs and the gaps between them."""

from __future__ import annotations

from typing import NamedTuple

import shapely

from wardwright.intake.dxf.gaps import Gap
from wardwright.intake.dxf.openings import leaf_of
from wardwright.intake.dxf.spans import Span, merged
from wardwright.intake.dxf.walls import Run, Way
from wardwright.intake.outlines import long_way, ring_of, strip_along
from wardwright.intake.report import ReportDraft
from wardwright.model.fabric import Wall
from wardwright.model.opening import Opening
from wardwright.model.placement import PROBE_M, along, is_way_in, sides_of_opening, space_at
from wardwright.model.site import Site

STOREY = "ground"
MEET_M = 0.012
"""Pieces of a wall this close are one. [m] (assumption)"""


class Built(NamedTuple):
    """The walls of the site, each with the run it was made of, and where each gap is."""

    walls: list[Wall]
    runs: list[Run | None]
    """None of a corner that no run fills."""


def built_of(runs: list[Run], corners: list[shapely.Polygon], gaps: list[Gap]) -> Built:
    """Walls through their own openings: what lies on one line and meets, openings filled, is one wall."""
    spans: dict[tuple[Way, float, float], list[Span]] = {}
    for run in runs:
        spans.setdefault((run.way, run.low, run.high), []).append((run.start, run.end))
    for gap in gaps:
        spans[gap.run.way, gap.run.low, gap.run.high].append((gap.start, gap.end))
    whole = [
        Run(way, low, high, *span)
        for (way, low, high), own in spans.items()
        for span in merged(own, gap=MEET_M)
    ]
    # Numbered by place, from the top left on, so that the order of the file makes no difference.
    whole.sort(key=lambda run: _place(run.area))
    walls = [_wall(f"wall-{number}", run) for number, run in enumerate(whole, start=1)]
    pieces = [
        _corner(f"corner-{number}", area) for number, area in enumerate(sorted(corners, key=_place), start=1)
    ]
    return Built(walls + pieces, [*whole, *(None for _ in pieces)])


def _place(area: shapely.Geometry) -> tuple[float, float]:
    return (round(-float(area.centroid.y), 2), round(float(area.centroid.x), 2))


def _wall(name: str, run: Run) -> Wall:
    ends = [run.way.point(at, run.middle) for at in (run.start, run.end)]
    line = tuple((round(x, 4), round(y, 4)) for x, y in ends)
    fields = {"id": name, "storey": STOREY, "line_m": line, "thickness_m": round(run.thickness, 4)}
    return Wall.model_validate({**fields, "basis": dict.fromkeys(fields, "measured")})


def _corner(name: str, area: shapely.Polygon) -> Wall:
    strip = strip_along(area, long_way(area))
    fields = {
        "id": name, "storey": STOREY, "line_m": strip.line, "thickness_m": round(max(strip.width, 0.01), 4),
        "footprint_m": ring_of(area),
    }  # fmt: skip
    return Wall.model_validate({**fields, "basis": dict.fromkeys(fields, "measured")})


def openings_of(site: Site, built: Built, gaps: list[Gap], *, draft: ReportDraft) -> list[Opening]:
    """The openings, named by the rooms they lead to; `site` holds storeys, spaces and walls."""
    found: list[Opening] = []
    named: dict[str, int] = {}
    for gap in sorted(gaps, key=lambda gap: _place(gap.area)):
        wall, run = _host(built, gap)
        leaf = leaf_of(gap, storey_m=site.storey(STOREY).height_m)
        fields = {
            **leaf.fields, "wall": wall.id, "offset_m": round((gap.start + gap.end) / 2 - run.start, 4),
            "width_m": round(gap.width, 4),
        }  # fmt: skip
        kind = str(fields["kind"])
        guessed = leaf.guessed
        draught = Opening.model_validate({"id": "x", "name": "x", **fields})
        if draught.kind == "door" and draught.hinge == "sliding" and is_way_in(site, draught):
            fields["glazing"], guessed = "double-plain", (*guessed, "glazing")
        name = _name(site, draught)
        named[name] = named.get(name, 0) + 1
        if named[name] > 1:
            name += f" {named[name]}"
        made = name.lower().replace(" ", "-")
        made = "".join(letter for letter in made if letter.isascii() and (letter.isalnum() or letter == "-"))
        for fact in dict.fromkeys(guessed):
            draft.guess(fact.removesuffix("_m"), kind, made)
        basis = {field: "guessed" if field in guessed else "measured" for field in ("id", "name", *fields)}
        found.append(Opening.model_validate({"id": made, "name": name, "basis": basis, **fields}))
    return found


def _host(built: Built, gap: Gap) -> tuple[Wall, Run]:
    middle = (gap.start + gap.end) / 2
    return next(
        (wall, run)
        for wall, run in zip(built.walls, built.runs, strict=True)
        if run is not None
        and (run.way, run.low, run.high) == (gap.run.way, gap.run.low, gap.run.high)
        and run.start <= middle <= run.end
    )


def _name(site: Site, opening: Opening) -> str:
    """The room that it leads to, halls last, and what it is."""
    rooms = [site.space(side) for side in sides_of_opening(site, opening) if side is not None]
    rooms.sort(key=lambda room: (room.use in ("hall", "landing", "stairwell"), room.id))
    is_slid = opening.kind == "door" and opening.hinge == "sliding"
    what = "passage" if opening.kind == "gap" else "sliding door" if is_slid else opening.kind
    if opening.kind == "garage-door":
        return "Garage door"
    return f"{rooms[0].name if rooms else 'outside'} {what}"


def parts_named_rooms(site: Site, built: Built, gap: Gap) -> bool:
    """Whether a gap has two rooms on its sides that the drawing names: a passage, and no nook of one room."""
    wall, run = _host(built, gap)
    middle = (gap.start + gap.end) / 2 - run.start
    places = [along(wall.line_m, middle, left_m=side * (run.thickness / 2 + PROBE_M)) for side in (1.0, -1.0)]
    rooms = [space_at(site, STOREY, place) for place in places]
    return (
        all(room is not None and room.basis_of("name") == "measured" for room in rooms)
        and rooms[0] != rooms[1]
    )


def with_entry(site: Site, openings: list[Opening], draft: ReportDraft) -> list[Opening]:
    """The openings with the likeliest entry door marked: a hinged door from outside, into a hall before others."""

    def rank(opening: Opening) -> tuple[bool, float]:
        uses = [site.space(side).use for side in sides_of_opening(site, opening) if side is not None]
        return ("hall" in uses, opening.width_m)

    doors = [o for o in openings if o.kind == "door" and o.hinge in ("start", "end") and is_way_in(site, o)]
    if not doors:
        return openings
    entry = max(doors, key=rank)
    draft.guess("that the household comes in by it", "door", entry.id)
    marks = (*entry.basis, ("is_entry_door", "guessed"))
    told = Opening.model_validate(
        {**entry.model_dump(exclude_unset=True), "is_entry_door": True, "basis": dict(marks)}
    )
    return [told if o is entry else o for o in openings]

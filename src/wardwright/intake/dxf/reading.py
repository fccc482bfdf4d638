"""A house from a DXF drawing: the plan of one storey, its unit found out, its heights guessed."""

from __future__ import annotations

from typing import BinaryIO

import numpy as np
import shapely

from wardwright.errors import InputError, IntakeError
from wardwright.intake.dxf.fabric import STOREY, Built, built_of, openings_of, parts_named_rooms, with_entry
from wardwright.intake.dxf.file import Drawing, layer_name, opened
from wardwright.intake.dxf.gaps import Gap, Signs, gaps_of
from wardwright.intake.dxf.rooms import Area, Floor, floor_of, is_as_written, labels_of
from wardwright.intake.dxf.spaces import open_edges_of, spaces_of
from wardwright.intake.dxf.unit import Unit, unit_of
from wardwright.intake.dxf.walls import Run, house_of, runs_of, with_corners
from wardwright.intake.report import IntakeReport, ReportDraft, listed
from wardwright.model.fabric import Space, Storey
from wardwright.model.place import Place
from wardwright.model.placement import wall_footprint
from wardwright.model.site import Site

HEIGHT_M = 2.44
"""Floor to ceiling: a plan does not say it. [m] (assumption: 8 ft)"""
FAR_OFF_M = 1000.0
"""A plan farther than this from the file's zero is moved to it. [m] (assumption)"""
PASSES = 4
"""How often passages are looked at again; each time some may turn out to be none. [-] (assumption)"""
POST_M = 0.5
"""A piece of wall that stands alone and is shorter is a post. [m] (assumption)"""


def read_dxf(stream: BinaryIO, *, where: str, unit: str | None = None) -> tuple[Site, IntakeReport]:
    """Read a house from a DXF drawing.

    Parameters
    ----------
    stream : binary stream
        The file, from its beginning.
    where : str
        Its name, for messages.
    unit : str or None
        What one unit of it is, `mm`, `cm`, `m`, `inch` or `foot`; None: it is found out.

    Returns
    -------
    Site
        The house, each fact marked as measured or guessed.
    IntakeReport
        What was read, guessed and left out.

    Raises
    ------
    IntakeError
        If the file is broken, has no walls or no room, or its unit cannot be told.
    """
    try:
        drawing = opened(stream, where=where)
        found = unit_of(drawing, told=unit, where=where)
        return _read(drawing, found, where)
    except InputError:
        raise
    except (
        shapely.errors.ShapelyError,
        ValueError,
        LookupError,
        ArithmeticError,
        AttributeError,
        TypeError,
    ) as error:
        said = str(error).splitlines()[0][:160] if str(error) else "no reason given"
        raise IntakeError(
            f"something in it is not what its type says ({type(error).__name__}: {said})",
            where=where,
            cure="Save the drawing as DXF again; draw the plan of one storey by itself",
        ) from error


def _read(drawing: Drawing, unit: Unit, where: str) -> tuple[Site, IntakeReport]:
    draft = ReportDraft()
    draft.read(unit.evidence)
    drawing = _scaled(drawing, unit.metres, draft)
    runs, corners = with_corners(runs_of(drawing.faces), drawing.faces)
    runs, others = house_of(runs)
    if others:
        draft.leave_out(
            "piece of wall",
            "that stands apart from the house: draw each storey in a file of its own",
            f"{others} pieces",
        )
    if not runs:
        raise IntakeError(
            "no two faces of walls run side by side, so that there is no wall",
            where=where,
            cure="Draw each wall by its two faces, and check the unit with --unit",
        )
    gaps, loose = gaps_of(runs, corners, Signs(drawing.leaves, drawing.swings, drawing.texts))
    runs = _without_posts(runs, gaps, draft)
    labels = labels_of(drawing.texts)
    # Again and again: a passage that does not part two named rooms is none, and what it closed in is open again.
    for _ in range(PASSES):
        built = built_of(runs, corners, gaps)
        solid = shapely.union_all(
            [shapely.Polygon(wall_footprint(w)).buffer(1e-3, join_style="mitre") for w in built.walls]
        )
        floor = floor_of(solid, labels)
        spaces = spaces_of(floor, draft=ReportDraft())
        bare = _bare(where, unit, built=built, spaces=spaces)
        gaps = [gap for gap in gaps if gap.is_opening or parts_named_rooms(bare, built, gap)]
    return _site(drawing, (bare, built, floor, gaps), draft, where=where, loose=[t.words for t in loose])


def _site(
    drawing: Drawing,
    found: tuple[Site, Built, Floor, list[Gap]],
    draft: ReportDraft,
    *,
    where: str,
    loose: list[str],
) -> tuple[Site, IntakeReport]:
    bare, built, floor, gaps = found
    if not floor.rooms:
        raise IntakeError(
            "its walls and openings close in no room",
            where=where,
            cure="Check the unit (--unit), that openings are on a layer named for them, and that walls meet",
        )
    floor = _without_shut_off(floor, gaps, draft)
    spaces = spaces_of(floor, draft=draft)
    bare = bare.model_copy(update={"spaces": tuple(spaces)})
    openings = with_entry(bare, openings_of(bare, built, gaps, draft=draft), draft)
    site = bare.model_copy(
        update={"openings": tuple(openings), "open_edges": tuple(open_edges_of(floor, spaces))}
    )
    for fact in ("name", "height", "elevation"):
        draft.guess(fact, "storey", STOREY)
    if bare.place.rule_pack == "us":
        draft.read("the US rule pack, since it is drawn in feet and inches: a guess")
    _note(drawing, floor, draft, loose=loose)
    counts = [
        (kind.replace("_", " "), len(getattr(site, kind)))
        for kind in ("storeys", "spaces", "walls", "openings", "open_edges")
    ]
    return site, draft.report(source=where, form=drawing.form, counts=counts)


def _scaled(drawing: Drawing, metres: float, draft: ReportDraft) -> Drawing:
    """The drawing in metres, moved near the origin where it is far off."""
    middle = np.median(drawing.faces.reshape(-1, 2), axis=0) * metres
    shift = np.floor(middle) if float(np.hypot(*middle)) > FAR_OFF_M else np.zeros(2)
    if shift.any():
        draft.read(f"moved near the origin: {shift[0]:.0f} m taken off x and {shift[1]:.0f} m off y")

    def put(place: tuple[float, float]) -> tuple[float, float]:
        return (place[0] * metres - float(shift[0]), place[1] * metres - float(shift[1]))

    return drawing._replace(
        faces=drawing.faces * metres - shift,
        leaves=drawing.leaves * metres - shift,
        swings=tuple(
            s._replace(centre=put(s.centre), radius=s.radius * metres, ends=(put(s.ends[0]), put(s.ends[1])))
            for s in drawing.swings
        ),
        texts=tuple(t._replace(place=put(t.place), height=t.height * metres) for t in drawing.texts),
    )


def _without_posts(runs: list[Run], gaps: list[Gap], draft: ReportDraft) -> list[Run]:
    """The runs without those that stand alone and are short: posts of a porch."""
    joined = [gap.area.buffer(0.02) for gap in gaps if gap.is_opening]
    groups = shapely.get_parts(shapely.union_all([*(run.area.buffer(0.01) for run in runs), *joined]))
    posts = [g for g in groups if max(g.bounds[2] - g.bounds[0], g.bounds[3] - g.bounds[1]) < POST_M]
    for number in range(1, len(posts) + 1):
        draft.leave_out("post", "that stands alone", f"post {number}")
    kept = [run for run in runs if not any(post.contains(run.area) for post in posts)]
    gaps[:] = [gap for gap in gaps if gap.run in kept]
    return kept


def _bare(where: str, unit: Unit, *, built: Built, spaces: list[Space]) -> Site:
    is_in_feet = unit.name in ("inch", "foot")
    place = Place.model_validate({"rule_pack": "us", "basis": {"rule_pack": "guessed"}} if is_in_feet else {})
    storey = {"id": STOREY, "name": "ground floor", "elevation_m": 0.0, "height_m": HEIGHT_M}
    marks = {"id": "measured", "name": "guessed", "elevation_m": "guessed", "height_m": "guessed"}
    return Site(
        name=where.rpartition(".")[0] or where,
        place=place,
        storeys=(Storey.model_validate({**storey, "basis": marks}),),
        spaces=tuple(spaces),
        walls=tuple(built.walls),
    )


def _without_shut_off(floor: Floor, gaps: list[Gap], draft: ReportDraft) -> Floor:
    """The floor without rooms that have no name and no opening: what walls close in besides."""
    ways = [gap.area.buffer(0.05) for gap in gaps]
    kept = []
    for area in floor.rooms:
        if area.name or any(way.intersects(area.outline) for way in ways):
            kept.append(area)
        else:
            draft.leave_out(
                "space", "closed in by walls, without a name or an opening", f"{area.outline.area:.1f} m2"
            )
    return floor._replace(rooms=sorted(kept, key=lambda area: not area.name))


def _note(drawing: Drawing, floor: Floor, draft: ReportDraft, *, loose: list[str]) -> None:
    sized = [area for area in floor.rooms if area.size is not None]
    if sized:
        agree = [area for area in sized if is_as_written(area)]
        draft.read(f"room sizes: {len(agree)} of {len(sized)} written ones agree with the drawing")
        off = [area.name for area in sized if not is_as_written(area)]
        if off:
            draft.oddity(f"not as large as written, or of another shape: {listed(off)}")
    parted: list[Area] = [area for area in floor.rooms if area.is_parted]
    if parted:
        draft.oddity(f"nothing is built between {', '.join(sorted(area.name for area in parted))}")
    for name in floor.outside:
        draft.leave_out("space", "outside the house", name)
    for name in floor.loose:
        draft.leave_out("name", "on no floor that is closed in", name)
    for words in loose:
        draft.leave_out("size", "beside no gap in a wall", words)
    for layer in sorted({layer_name(layer) for layer, _ in drawing.unread}):
        draft.leave_out("layer", "not read", layer)

"""The plan of a storey: the house and its devices, and over it what an answer draws."""

from __future__ import annotations

from typing import NamedTuple

import shapely

from wardwright.documents.drawing.devices import device_tags, draw_device, take_place
from wardwright.documents.drawing.house import (
    blocks,
    doorways,
    draw_fixture,
    draw_ground,
    draw_stair,
    draw_walls,
    furniture,
    low_walls,
    name_fixture,
    openings_of,
    others_part,
    wall_area,
)
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.openings import draw_opening
from wardwright.documents.drawing.overlay import draw_sketches
from wardwright.documents.drawing.recording import Drawing, Recorder, Recording
from wardwright.documents.drawing.sheet import FOOT_MM, Sheet, draw_foot, draw_numbered
from wardwright.documents.drawing.space_names import draw_names
from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import opening_footprint, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch

WAY_MM = 0.7
"""Kept free to each side of a walk. [mm]"""


class BasePlan(NamedTuple):
    """A storey's house and devices, ready for any number of answers."""

    storey: str
    name: str
    key: str
    sheet: Sheet
    recording: Recording
    board: Board
    devices: tuple[str, ...]
    """Ids of the devices on it."""
    letters: tuple[tuple[str, str], ...]
    """The name of each device of the house and its letters on the plan, the longest name first."""


def base_plan(
    site: Site,
    catalogue: Catalogue,
    *,
    storey_id: str,
    sheet: Sheet,
    ways: tuple[Sketch, ...] = (),
    has_scale: bool = True,
) -> BasePlan:
    """Draw a storey's house and devices.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Says what each device is.
    storey_id : str
        Which storey.
    sheet : Sheet
        Edges and scale, one for all storeys.
    ways : tuple of Sketch, default ()
        Walks that will be drawn over it, which labels keep clear of.
    has_scale : bool, default True
        Whether it is to scale where it is read: a screen shows it as large as it likes.

    Returns
    -------
    BasePlan
        The recording, and the places its labels have.
    """
    recorder = Recorder()
    unit = sheet.mm_per_m
    board = _board(site, storey_id, sheet=sheet, ways=ways)
    _house(recorder, site, storey_id, sheet=sheet)
    _walls(recorder, site, storey_id)
    draw_foot(recorder, sheet, north_deg=site.place.north_deg, has_scale=has_scale)
    tags = device_tags(site, catalogue)
    stands = {d.id: standing(site, d) for d in site.devices}
    here = [d for d in site.devices if stands[d.id].storey == storey_id]
    for device in here:
        take_place(board, stands[device.id], tags[device.id], mm_per_m=unit)
    recorder.layer = "names"
    numbered = draw_names(recorder, site, storey_id=storey_id, board=board, sheet=sheet)
    draw_numbered(recorder, sheet, numbered, board=board)
    recorder.layer = "devices"
    for device in here:
        draw_device(recorder, site, device, tag=tags[device.id], board=board, mm_per_m=unit)
    recorder.layer = "names"
    for fixture in site.fixtures:
        if fixture.storey == storey_id:
            name_fixture(recorder, fixture, board=board, mm_per_m=unit)
    return BasePlan(
        storey=storey_id,
        name=site.storey(storey_id).name,
        key=f"plan-{storey_id}-{sheet.scale}-{sheet.round_mm:g}",
        sheet=sheet,
        recording=recorder.recording(),
        board=board,
        devices=tuple(device.id for device in here),
        letters=letters_by_name(site, catalogue),
    )


def letters_by_name(site: Site, catalogue: Catalogue) -> tuple[tuple[str, str], ...]:
    """The name of each device and its letters on the plan, the longest name first."""
    tags = device_tags(site, catalogue)
    pairs = ((device.name, tags[device.id].text) for device in site.devices)
    return tuple(sorted(pairs, key=lambda pair: (-len(pair[0]), pair)))


def _board(site: Site, storey_id: str, *, sheet: Sheet, ways: tuple[Sketch, ...]) -> Board:
    lines = [
        shapely.LineString(way.points).buffer(WAY_MM / sheet.mm_per_m)
        for way in ways
        if way.storey == storey_id and len(way.points) > 1
    ]
    return Board(
        sheet.bounds,
        mm_per_unit=sheet.mm_per_m,
        solid=blocks(site, storey_id),
        soft=furniture(site, storey_id),
        clear=shapely.union_all([doorways(site, storey_id), *lines]),
    )


def _walls(recorder: Recorder, site: Site, storey_id: str) -> None:
    """Draw the walls and what is in them; somebody else's openings are gaps."""
    faint = others_part(site, storey_id)
    draw_walls(recorder, wall_area(site, storey_id), faint=faint, low=low_walls(site, storey_id))
    for wall, opening in openings_of(site, storey_id):
        middle = shapely.Polygon(opening_footprint(wall, opening)).centroid
        if not faint.contains(middle):
            draw_opening(recorder, wall, opening)


def _house(recorder: Recorder, site: Site, storey_id: str, *, sheet: Sheet) -> None:
    """Draw what lies under the walls: the ground, fixtures, stairs."""
    lowest = min(site.storeys, key=lambda s: abs(s.elevation_m - site.ground.level_m))
    if storey_id == lowest.id:
        x0, y0, x1, y1 = sheet.bounds
        draw_ground(recorder, site, bounds=(x0, y0 + FOOT_MM / sheet.mm_per_m, x1, y1))
    for fixture in site.fixtures:
        if fixture.storey == storey_id:
            draw_fixture(recorder, fixture)
    for stair in site.stairs:
        if storey_id in (stair.lower, stair.upper):
            draw_stair(recorder, site, stair, storey_id=storey_id)


def plan_with(
    base: BasePlan, sketches: tuple[Sketch, ...], *, key: str, title: str, description: str
) -> Drawing:
    """Draw what an answer asks for over a storey's plan.

    Parameters
    ----------
    base : BasePlan
        The storey.
    sketches : tuple of Sketch
        What to draw; those of other storeys are left out.
    key : str
        Unique on the page.
    title, description : str
        For who cannot see it.

    Returns
    -------
    Drawing
        The base shared, the answer its own.
    """
    recorder = Recorder()
    here = tuple(_lettered(sketch, base) for sketch in sketches if sketch.storey == base.storey)
    roles = draw_sketches(recorder, here, board=base.board.copy(), mm_per_m=base.sheet.mm_per_m)
    return Drawing(
        key=key,
        title=title,
        description=description,
        bounds=base.sheet.bounds,
        mm_per_unit=base.sheet.mm_per_m,
        base=base.recording,
        own=recorder.recording(),
        base_key=base.key,
        styles_used=roles,
    )


def _lettered(sketch: Sketch, base: BasePlan) -> Sketch:
    """A sketch whose label calls devices by their letters; a device that is reached has them beside it already."""
    label = sketch.label
    for name, text in base.letters:
        label = label.replace(name, text)
    if base.sheet.is_narrow:
        label = label.removeprefix("noticed ")
    if sketch.role == "goal" and label in {text for _, text in base.letters}:
        label = ""
    return sketch if label == sketch.label else sketch.model_copy(update={"label": label})

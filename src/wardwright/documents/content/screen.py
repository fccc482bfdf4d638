"""The plan on the screen: each storey's house, drawn once, and what a chosen answer lays over it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache

import shapely

from wardwright.documents.content.board import chosen_of
from wardwright.documents.content.climb_side import climb_side
from wardwright.documents.content.headline import horizon_of
from wardwright.documents.content.race import race_strip
from wardwright.documents.content.suggestions import suggestions
from wardwright.documents.content.sun_calendar import sun_calendar
from wardwright.documents.drawing.house import doorways
from wardwright.documents.drawing.plan import BasePlan, base_plan, letters_by_name, plan_with
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.sheet import Room, Sheet, sheet_for
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer

ROOM = Room(190.0, 150.0, 8.0)
"""The screen's plan is drawn as if on paper so large: on a laptop its letters are read and its hatching is open."""
SUGGESTED_AT_MOST = 3


class ScreenStorey(Record):
    """How one storey lies on the screen."""

    storey: str
    name: str
    bounds: tuple[float, float, float, float]
    """Lowest x, lowest y, highest x, highest y. [m]"""
    mm_per_m: float


def storeys_on_screen(site: Site) -> tuple[ScreenStorey, ...]:
    """The storeys from the lowest up, all on one sheet, so that they lie over each other."""
    sheet = _sheet(site)
    return tuple(
        ScreenStorey(storey=one.id, name=one.name, bounds=sheet.bounds, mm_per_m=sheet.mm_per_m)
        for one in sorted(site.storeys, key=lambda one: one.elevation_m)
    )


def _sheet(site: Site) -> Sheet:
    fitted = sheet_for(site, room=ROOM)
    # Leaves that open outward reach farther than the walls.
    opened = [doorways(site, storey.id) for storey in site.storeys]
    return fitted._replace(bounds=shapely.union_all([shapely.box(*fitted.bounds), *opened]).bounds)


def house_drawing(site: Site, catalogue: Catalogue, storey_id: str) -> Drawing:
    """The house of one storey without its devices, which move.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        As for every plan.
    storey_id : str
        Which storey.

    Returns
    -------
    Drawing
        Everything in its own recording.
    """
    base = _base(
        site.bare.model_copy(update={"outlets": site.outlets}), catalogue, storey_id, sheet=_sheet(site)
    )
    return Drawing(
        key=f"house-{storey_id}",
        title=base.name,
        description=f"Plan of {base.name}",
        bounds=base.sheet.bounds,
        mm_per_unit=base.sheet.mm_per_m,
        own=base.recording,
    )


@lru_cache(maxsize=64)
def _base(site: Site, catalogue: Catalogue, storey_id: str, *, sheet: Sheet) -> BasePlan:
    return base_plan(site, catalogue, storey_id=storey_id, sheet=sheet, has_scale=False)


def overlay(
    site: Site, catalogue: Catalogue, answers: Sequence[Answer], *, key: str | None, over: Site | None = None
) -> dict[str, Drawing]:
    """What lies over each storey: the chosen answer, or where anybody is noticed if none is chosen.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        As for every plan.
    answers : sequence of Answer
        All of them.
    key : str or None
        The chosen one's key.
    over : Site, optional
        The house that it lies over, where another is tried: a wall that is moved moves no sheet.

    Returns
    -------
    dict of Drawing
        By storey; only its own strokes are of interest.
    """
    return laid_over(site, catalogue, tuple(_sketches(site, catalogue, answers, key=key)), over=over)


def laid_over(
    site: Site, catalogue: Catalogue, sketches: tuple[Sketch, ...], *, over: Site | None = None
) -> dict[str, Drawing]:
    """Lay sketches over each storey that has any.

    Parameters
    ----------
    site, catalogue, over : Site, Catalogue, Site
        As for `overlay`.
    sketches : tuple of Sketch
        What is drawn.

    Returns
    -------
    dict of Drawing
        By storey; only its own strokes are of interest.
    """
    letters = letters_by_name(site, catalogue)
    plain = site.bare.model_copy(update={"outlets": site.outlets})
    sheet = _sheet(over or site)
    return {
        storey.id: plan_with(
            _base(plain, catalogue, storey.id, sheet=sheet)._replace(letters=letters),
            tuple(sketch for sketch in sketches if sketch.storey == storey.id),
            key=f"over-{storey.id}",
            title=storey.name,
            description=f"What the answer draws on {storey.name}",
        )
        for storey in site.storeys
        if any(sketch.storey == storey.id for sketch in sketches)
    }


def _sketches(
    site: Site, catalogue: Catalogue, answers: Sequence[Answer], *, key: str | None
) -> Iterable[Sketch]:
    chosen = chosen_of(answers, key)
    if chosen is not None:
        yield from chosen.sketches
        yield from suggestions(chosen.mends, site, catalogue, at_most=SUGGESTED_AT_MOST)
        return
    for answer in answers:
        yield from (one for one in answer.sketches if one.role in ("seen", "possibly-seen"))


def strip_of(answers: Sequence[Answer], catalogue: Catalogue, *, key: str | None) -> Drawing | None:
    """The strip of time or the calendar of the sun of the chosen answer, if it has one."""
    chosen = chosen_of(answers, key)
    if chosen is None:
        return None
    return (
        race_strip(chosen, key="strip", horizon_s=horizon_of(catalogue))
        or sun_calendar(chosen, key="strip")
        or climb_side(chosen, key="strip")
    )

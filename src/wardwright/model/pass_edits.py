"""Saying on the plan where somebody may be while a part is set: by space, or by a line drawn through spaces."""

from __future__ import annotations

from typing import Literal

import shapely
from pydantic import Field

from wardwright.errors import DocumentError
from wardwright.model.household import Pass, Person
from wardwright.model.record import Id, Point2, Record
from wardwright.model.site import Site

CROSSED_M = 0.05
"""A line that is in a space for less than this has not been drawn through it. [m] (assumption)"""


class LetPass(Record):
    """Say of spaces whether somebody may be in them while a part is set."""

    do: Literal["let-pass"] = "let-pass"
    person: Id
    part: Id
    may: Literal["may", "may not", "not told"]
    spaces: tuple[Id, ...] = ()
    storey: Id | None = None
    """Where `line_m` is drawn."""
    line_m: tuple[Point2, ...] = Field(default=(), max_length=2000)
    """A way through spaces that are meant as well: all that it crosses. [m]"""


def let_pass(site: Site, operation: LetPass) -> Site:
    """A site after saying where somebody may be.

    Parameters
    ----------
    site : Site
        The site.
    operation : LetPass
        Who, in which part, where.

    Returns
    -------
    Site
        A new site; a pass that says nothing any more is gone.

    Raises
    ------
    DocumentError
        If it names what is not there, or no space at all.
    """
    person = next((one for one in site.people if one.id == operation.person), None)
    where = f"people, {operation.person}"
    again = "Look at the house as it is now, and do it again"
    if person is None or all(part.id != operation.part for part in site.parts):
        missing = operation.person if person is None else operation.part
        raise DocumentError(f"there is no '{missing}' any more", where=where, cure=again)
    known = {space.id for space in site.spaces}
    unknown = [one for one in operation.spaces if one not in known]
    if unknown:
        raise DocumentError(f"there is no '{unknown[0]}' any more", where=where, cure=again)
    spaces = {*operation.spaces, *_crossed(site, operation)}
    if not spaces:
        raise DocumentError("no space is meant", where=where, cure="Draw through a space, or name one")
    told = _with_spaces(person, operation, spaces)
    people = tuple(told if one.id == person.id else one for one in site.people)
    return site.model_copy(update={"people": people})


def _crossed(site: Site, operation: LetPass) -> set[str]:
    if len(operation.line_m) < 2:
        return set()
    line = shapely.LineString(operation.line_m)
    return {
        space.id
        for space in site.spaces
        if space.storey == operation.storey
        and line.intersection(shapely.Polygon(space.outline_m).buffer(0)).length >= CROSSED_M
    }


def _with_spaces(person: Person, operation: LetPass, spaces: set[str]) -> Person:
    old = [one for one in person.passes if one.part == operation.part]
    may = {space for one in old for space in one.may} - spaces
    may_not = {space for one in old for space in one.may_not} - spaces
    if operation.may == "may":
        may |= spaces
    elif operation.may == "may not":
        # Where they sleep they always may be.
        may_not |= spaces - {person.bed}
    passes = [one for one in person.passes if one.part != operation.part]
    if may or may_not:
        passes.append(Pass(part=operation.part, may=tuple(sorted(may)), may_not=tuple(sorted(may_not))))
    kept = {key: getattr(person, key) for key in person.model_fields_set}
    return Person.model_validate(kept | {"passes": tuple(sorted(passes, key=lambda one: one.part))})

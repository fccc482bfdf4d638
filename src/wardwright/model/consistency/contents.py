"""Fixtures, outlets, people, pets, targets, ground and place that do not fit; and a house too large."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import shapely

from wardwright.model.consistency.identity import places
from wardwright.model.consistency.problem import Place, Problem, Register, nearest_space, polygon
from wardwright.model.household import Person
from wardwright.model.placement import ceiling_height
from wardwright.model.record import Point2
from wardwright.model.time_zones import is_time_zone

SLACK_M = 0.05
"""Within this, a thing is taken to be in its space or under its ceiling. [m] (assumption)"""
FAR_M = 2000.0
"""No part of a site is farther from the plan's origin. [m] (assumption)"""
WIDEST_M = 300.0
"""The spaces of one site are not farther apart. [m] (assumption)"""


def contents(book: Register) -> Iterator[Problem]:
    """Everything that stands or lives in the house, and its surroundings."""
    yield from _fixtures(book)
    yield from _outlets(book)
    yield from _household(book)
    yield from _targets(book)
    yield from _surroundings(book)


def extent(book: Register) -> Iterator[Problem]:
    """Points so far away that they can only be slips, such as millimetres taken for metres."""
    cure = "Give metres, with the house near the plan's origin"
    is_far = False
    for place in places(book.site):
        entry = place.entry
        for key in ("outline_m", "line_m", "footprint_m", "well_m", "centre_m", "at_m"):
            far = next(
                (p for p in _points(getattr(entry, key, None)) if max(abs(p[0]), abs(p[1])) > FAR_M), None
            )
            if far is not None:
                is_far = True
                yield place.problem(f"'{key}' holds the point {far[0]:g}, {far[1]:g}, too far away", cure)
    for place, storey in zip(places(book.site, "storeys"), book.site.storeys, strict=True):
        if abs(storey.elevation_m) > FAR_M:
            yield place.problem(f"its elevation is {storey.elevation_m:g} m, too far away", cure)
    if book.site.spaces and not is_far:
        x_low, y_low, x_high, y_high = shapely.total_bounds([polygon(s) for s in book.site.spaces])
        wide = max(x_high - x_low, y_high - y_low)
        if wide > WIDEST_M:
            yield Problem(f"the spaces stretch over {wide:.0f} m", "spaces", cure)


def _points(value: Any) -> tuple[Point2, ...]:  # noqa: ANN401 - a point, a line, a ring or nothing
    if value is None:
        return ()
    return (value,) if isinstance(value[0], float) else tuple(value)


def _fixtures(book: Register) -> Iterator[Problem]:
    for place, fixture in zip(places(book.site, "fixtures"), book.site.fixtures, strict=True):
        if fixture.storey not in book.storeys:
            continue
        ceiling = ceiling_height(book.site, fixture.storey, fixture.centre_m)
        top = fixture.base_m + fixture.height_m
        if fixture.base_m >= ceiling:
            yield place.problem(
                f"it is above the ceiling: its underside is at {fixture.base_m:g} m, the ceiling at {ceiling:.2f} m",
                "Correct 'base_m', or the height of the storey or space",
            )
        elif top > ceiling + SLACK_M:
            yield place.problem(
                f"its top ({top:.2f} m) is above the ceiling ({ceiling:.2f} m)",
                "Correct 'base_m' or 'height_m'",
                weight="noted",
            )
        if nearest_space(book, fixture.storey, fixture.centre_m)[1] > SLACK_M and book.site.spaces:
            yield place.problem("it stands outside every space", "Correct 'centre_m'", weight="noted")


def _outlets(book: Register) -> Iterator[Problem]:
    for place, outlet in zip(places(book.site, "outlets"), book.site.outlets, strict=True):
        if outlet.storey not in book.storeys:
            continue
        if nearest_space(book, outlet.storey, outlet.at_m)[1] > 0.5 and book.site.spaces:
            yield place.problem("it is outside every space", "Correct 'at_m'", weight="noted")


def _household(book: Register) -> Iterator[Problem]:
    for place, person in zip(places(book.site, "people"), book.site.people, strict=True):
        space = None if person.bed is None else book.spaces.get(person.bed)
        if space is not None and space.belongs != "ours":
            yield place.problem(
                f"the bed is in '{space.id}', which is not ours", "Name a space that is ours in 'bed'"
            )
        yield from _passes(book, place, person)


def _passes(book: Register, place: Place, person: Person) -> Iterator[Problem]:
    """Parts and spaces that somebody's passes name and that are not there, or that contradict themselves."""
    parts = tuple(part.id for part in book.site.parts)
    for one in person.passes:
        if one.part not in parts:
            yield place.dangling("passes.part", kind="part", wanted=one.part, known=parts)
        for key, spaces in (("may", one.may), ("may_not", one.may_not)):
            for space in spaces:
                if space not in book.spaces:
                    known = sorted(book.spaces)
                    yield place.dangling(f"passes.{key}", kind="space", wanted=space, known=known)
        for space in sorted({*one.may, *((person.bed,) if person.bed else ())} & {*one.may_not}):
            yield place.problem(
                f"'{space}' is a space where they may be and may not be while '{one.part}' is set",
                "Take it out of 'may_not', or out of 'may' and 'bed'",
            )


def _targets(book: Register) -> Iterator[Problem]:
    for place, target in zip(places(book.site, "targets"), book.site.targets, strict=True):
        space = book.spaces.get(target.space)
        if space is None:
            continue
        if space.belongs != "ours":
            yield place.problem(f"it is in '{space.id}', which is not ours", "Name a space that is ours")
        if target.at_m is not None:
            far = polygon(space).distance(shapely.Point(target.at_m))
            if far > SLACK_M:
                yield place.problem(
                    f"its point lies {far:.2f} m outside its space '{space.id}'",
                    "Correct 'at_m', or name the space that holds it",
                )


def _surroundings(book: Register) -> Iterator[Problem]:
    ground, where = book.site.ground, book.site.place
    if ground.boundary_m is not None and (
        len(ground.boundary_m) < 3 or not shapely.Polygon(ground.boundary_m).is_valid
    ):
        yield Problem(
            "'boundary_m' crosses itself or has too few corners",
            "ground",
            "Give its corners in order round the ground",
        )
    for thing in ground.things:
        if thing.base_m >= thing.height_m:
            yield Problem(
                f"the underside of '{thing.id}' ({thing.base_m:g} m) is not below its top ({thing.height_m:g} m)",
                "ground",
                "Correct 'base_m' or 'height_m'",
            )
    if where.time_zone is not None and not is_time_zone(where.time_zone):
        yield Problem(
            f"'{where.time_zone}' is no time zone that is known",
            "place",
            "Write its name in the time zone database, such as Europe/London",
        )
    if (where.latitude_deg is None) != (where.longitude_deg is None):
        yield Problem(
            "only one of latitude and longitude is given",
            "place",
            "Give both or neither",
            "noted",
        )
    if where.country is not None and (where.country in ("US", "CA")) != (where.rule_pack == "us"):
        yield Problem(
            f"the country is {where.country}, but the rule pack is '{where.rule_pack}'",
            "place",
            "Choose the 'rule_pack' of that country",
            "noted",
        )

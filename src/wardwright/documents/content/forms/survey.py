"""The fitter's enquiry and survey record: what is known of the house, how, and what is to be seen."""

from __future__ import annotations

import math
from collections import defaultdict
from datetime import date

from wardwright.documents.content.forms.slots import NO_CODES, with_slots
from wardwright.documents.content.forms.survey_words import ENQUIRY, OUTSIDE, TECHNICAL
from wardwright.documents.content.locks import locks_and_lights
from wardwright.documents.content.names import names_of
from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Paper, Section, Table
from wardwright.documents.content.quantities import joined
from wardwright.documents.content.schedule import yes_or_no
from wardwright.documents.content.wording import CAUTIONS
from wardwright.model.catalogue import Catalogue
from wardwright.model.opening import Opening
from wardwright.model.placement import sides_of_opening
from wardwright.model.record import Marked
from wardwright.model.room_shapes import floor_polygon, space_height
from wardwright.model.site import Site
from wardwright.questions.answer import NOT_COUNTED, Answer
from wardwright.questions.worth_adding import worth_adding


def survey(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, drawn_up: date) -> Paper:
    """Put down what is known of the house and its people, locks and lights first.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Names of locks, panes and walls.
    answers : tuple of Answer
        Those of question 1 say which openings are ways in; mends tell of locks and lights.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        Each fact with how it is known; what nobody said is told as not known.
    """
    locks = locks_and_lights(answers, names_of(site, catalogue))
    return Paper(
        title="Enquiry and survey record",
        house=site.name,
        copy="fitter",
        drawn_up=drawn_up,
        foot="Look, ask and write beside what is printed; then tell the program what differs. " + NO_CODES,
        sections=(
            Section("Enquiry", points=_to_find_out(site, catalogue), blanks=ENQUIRY),
            Section(
                "Locks and lights first",
                points=locks,
                table=_openings(site, catalogue, answers),
                is_form=True,
            ),
            Section("Rooms", table=_rooms(site)),
            Section("Walls", table=_walls(site, catalogue)),
            Section("Who lives there", table=_people(site)),
            Section("Pets", table=_pets(site)),
            Section("Worth taking, by room", table=_targets(site)),
            Section("Heat, air and what moves", table=_fixtures(site)),
            Section("Power and network", table=_outlets(site)),
            Section("Outside", blanks=OUTSIDE),
            Section("Technical survey", blanks=TECHNICAL),
            Section("Beware", points=CAUTIONS),
        ),
        is_landscape=True,
    )


def _to_find_out(site: Site, catalogue: Catalogue) -> tuple[str, ...]:
    """The facts whose answer would tell most, to be asked first."""
    return tuple(f"To find out: {one}." for one in worth_adding(site, catalogue))


SEEN = (Column("Seen on the day", share=1.6),)


def _openings(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]) -> Table:
    reasons = {one.subject_id: one.reason or "" for one in answers if one.question == 1}
    known = (
        Column("Door or window", share=1.8), Column("Room", share=1.4), Column("Lock", share=1.1),
        Column("Glass", share=1.6), Column("Usually, when set", share=1.2), Column("Way in", share=2.2),
        Column("Lock is"), Column("Habit is"),
    )  # fmt: skip
    rows: list[tuple[Cell, ...]] = []
    for opening in site.openings:
        sides = sides_of_opening(site, opening)
        if all(side is not None for side in sides):
            continue
        rooms = [site.space(side).name for side in sides if side is not None]
        rows.append(
            (
                opening.name,
                joined(rooms) or NOT_KNOWN,
                NOT_KNOWN if opening.lock == "unknown" else opening.lock,
                _glass(opening, catalogue),
                f"{opening.habit}, {'locked' if opening.is_locked else 'not locked'}",
                _way_in(opening, reasons),
                opening.basis_of("lock"),
                opening.basis_of("habit"),
            )
        )
    return with_slots("Doors and windows", known, rows, slots=SEEN)


def _glass(opening: Opening, catalogue: Catalogue) -> str:
    names = {row.id: row.name for row in catalogue.glazings}
    return "none" if opening.glazing is None else names.get(opening.glazing, opening.glazing)


def _way_in(opening: Opening, reasons: dict[str, str]) -> str:
    if opening.id not in reasons:
        return NOT_KNOWN
    reason = reasons[opening.id]
    return f"no: {reason.removeprefix(NOT_COUNTED)}" if reason.startswith(NOT_COUNTED) else "yes"


def _rooms(site: Site) -> Table:
    known = (
        Column("Room", share=1.5), Column("Storey", share=1.2), Column("Use"), Column("Whose"),
        Column("Floor", "m\u00b2", share=0.7), Column("Ceiling", "m", share=0.7), Column("Outline is"),
    )  # fmt: skip
    rows: list[tuple[Cell, ...]] = []
    for space in site.spaces:
        storey = site.storey(space.storey)
        floor = round(floor_polygon(space).area, 1)
        whose = space.belongs
        rows.append(
            (
                space.name,
                storey.name,
                space.use,
                whose,
                floor,
                round(space_height(site, space), 2),
                space.basis_of("outline_m"),
            )
        )
    return with_slots("Rooms", known, rows, slots=SEEN)


def _walls(site: Site, catalogue: Catalogue) -> Table:
    """How much wall there is of each make; the make counts for radio, sound and drilling."""
    names = {row.id: row.name for row in catalogue.constructions}
    found: dict[tuple[str, str], list[float]] = defaultdict(list)
    for wall in site.walls:
        made = (
            NOT_KNOWN if wall.construction == "unknown" else names.get(wall.construction, wall.construction)
        )
        found[made, wall.basis_of("construction")].append(math.dist(*wall.line_m))
    known = (Column("Make", share=2.4), Column("Walls"), Column("Length", "m"), Column("Make is"))
    rows = [
        (made, len(lengths), round(sum(lengths), 1), basis)
        for (made, basis), lengths in sorted(found.items())
    ]
    return with_slots("Walls", known, rows, slots=SEEN)


def _people(site: Site) -> Table:
    known = (
        Column("Who", share=1.4), Column("Pace"), Column("Sleeps in", share=1.4), Column("Hears badly"),
        Column("Child"), Column("Sleeps heavily"), Column("Known", share=1.2),
    )  # fmt: skip
    rows = [
        (
            one.name, one.pace, NOT_KNOWN if one.bed is None else site.space(one.bed).name,
            yes_or_no(is_so=one.hears_badly), yes_or_no(is_so=one.is_child), yes_or_no(is_so=one.sleeps_heavily),
            _known(one, ("pace", "bed")),
        )
        for one in site.people
    ]  # fmt: skip
    return with_slots("People", known, rows, slots=(Column("Up at night, comes home by", share=1.8),))


def _pets(site: Site) -> Table:
    known = (
        Column("Pet", share=1.2), Column("Kind"), Column("Height", "m"), Column("Weight", "kg"),
        Column("May be in, when set", share=2.0), Column("Known", share=1.2),
    )  # fmt: skip
    rows = [
        (
            one.name, one.kind.replace("-", " "), one.height_m, one.mass_kg,
            joined([site.space(name).name for name in one.spaces]) or "everywhere", _known(one, ("kind", "spaces")),
        )
        for one in site.pets
    ]  # fmt: skip
    return with_slots("Pets", known, rows, slots=(Column("Climbs on", share=1.6),))


def _targets(site: Site) -> Table:
    known = (Column("What, by kind", share=1.6), Column("Room", share=1.4), Column("Worth"), Column("Known"))
    rows = [(one.name, site.space(one.space).name, one.worth, one.basis_of("space")) for one in site.targets]
    return with_slots("Targets", known, rows, slots=SEEN)


MOVES = ("vent", "curtain", "screen", "mirror")
"""Kinds of fixture that disturb a movement detector without being warm."""


def _fixtures(site: Site) -> Table:
    known = (Column("What", share=1.8), Column("Kind"), Column("Heat"), Column("Heat is"))
    rows = [
        (one.name, one.kind, one.heat, one.basis_of("heat"))
        for one in site.fixtures
        if one.heat != "none" or one.kind in MOVES
    ]
    return with_slots("Heat and air", known, rows, slots=SEEN)


def _outlets(site: Site) -> Table:
    known = (Column("Point", share=1.8), Column("Kind"), Column("Storey", share=1.2), Column("Place is"))
    rows = [
        (one.name, one.kind.replace("-", " "), site.storey(one.storey).name, one.basis_of("at_m"))
        for one in site.outlets
    ]
    return with_slots("Power and network", known, rows, slots=SEEN)


def _known(one: Marked, fields: tuple[str, ...]) -> str:
    """How the fields are known, each way once."""
    return joined(sorted({one.basis_of(field) for field in fields}))

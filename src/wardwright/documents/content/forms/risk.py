"""The client's risk record: what was considered, and what is left without protection on purpose."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.discretion import discreet
from wardwright.documents.content.forms.slots import SIGNED
from wardwright.documents.content.paper import Column, Paper, Section, Table
from wardwright.documents.content.protection_sections import locks_section
from wardwright.documents.content.quantities import joined, sentence
from wardwright.documents.content.schedule import sheet_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.protection import Cover, protection

WEAK = ("none", "latch")
"""Locks that hold nobody up."""
PACKS = {"uk-eu": "the European and British ones", "us": "the American ones"}
CONSIDERED = (
    "Contents: kind, value, how easily carried and sold; losses before",
    "Place: who passes, who overlooks, what happened nearby",
    "Insurer\u2019s exact words, and whom we asked",
    "Response wanted: noise alone, messages to phones, a receiving centre",
    "Keyholders, and how soon they come",
)
INSURER = (
    "What an insurer asks for is theirs to say, and only in writing: ask before anything is ordered. A grade on a "
    "device\u2019s sheet is no certificate for the house."
)
GRADE = (
    "Security grade aimed at: {grade}. Rules and editions used: {pack}. A grade says how skilled an intruder is "
    "expected."
)
NO_GRADE = "No security grade is aimed at. Rules and editions used: {pack}."
ON_PURPOSE = "Left without protection on purpose, and why"


def risk(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, drawn_up: date) -> Paper:
    """Put the risk and what is done about it on a page to sign.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    answers : tuple of Answer
        Only mends of locks and lights are told, without numbers.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        No time, length, way or shape, and nothing of where the control unit is.
    """
    covers = protection(site, catalogue)
    return Paper(
        title="Risk record",
        house=discreet(site.name, site, catalogue),
        copy="client",
        drawn_up=drawn_up,
        sections=(
            locks_section(site, catalogue, answers),
            Section("What was found", points=_found(site, catalogue, covers)),
            Section("What was asked", blanks=CONSIDERED),
            Section("Grade and response", text=(_grade(site), INSURER), points=_response(site, catalogue)),
            Section("Left without protection", table=_left(site, catalogue, covers)),
            Section(ON_PURPOSE, rules=3),
            Section("Agreed", blanks=SIGNED),
        ),
    )


def _found(site: Site, catalogue: Catalogue, covers: tuple[Cover, ...]) -> tuple[str, ...]:
    counted = [one.opening for one in covers[0].openings if one.is_counted] if covers else []
    openings = [site.opening(name) for name in counted]
    rooms = {target.space for target in site.targets}
    told = [
        f"{_count(len(openings), 'door or window', 'doors and windows')} by which somebody may come in",
        *_locks_found(openings, site, catalogue),
        f"things worth taking are kept in {_count(len(rooms), 'room', 'rooms')}, named in the fitter\u2019s record"
        if rooms
        else "nobody has said where anything worth taking is kept",
    ]
    return tuple(sentence(one) for one in told)


def _locks_found(openings: list[Opening], site: Site, catalogue: Catalogue) -> list[str]:
    """Locks by what they are, in words."""

    def named(chosen: list[Opening]) -> str:
        return joined([discreet(one.name, site, catalogue) for one in chosen])

    weak = [one for one in openings if one.lock in WEAK]
    unknown = [one for one in openings if one.lock == "unknown"]
    loose = [one for one in openings if not one.is_locked or one.habit != "shut"]
    found = [
        ("no lock, or a latch alone: ", weak),
        ("lock not known: ", unknown),
        ("often left open, ajar or not locked: ", loose),
    ]
    return [what + named(chosen) for what, chosen in found if chosen]


def _count(count: int, one: str, many: str) -> str:
    return f"{count} {one if count == 1 else many}"


def _grade(site: Site) -> str:
    pack, grade = PACKS[site.place.rule_pack], site.needs.grade
    return NO_GRADE.format(pack=pack) if grade is None else GRADE.format(pack=pack, grade=grade)


def _response(site: Site, catalogue: Catalogue) -> tuple[str, ...]:
    sheets = [sheet for device in site.devices if (sheet := sheet_of(catalogue, device)) is not None]
    sounders = [sheet.sounder for sheet in sheets if sheet.sounder is not None]
    outside = sum(1 for one in sounders if one.is_outside)
    paths = {path for sheet in sheets if sheet.transmitter is not None for path in sheet.transmitter.paths}
    tells = f"Messages leave by {joined(sorted(paths))}, and go to: {joined(site.programme.told) or 'nobody yet'}."
    return (
        f"Sounders: {len(sounders) - outside} inside, {outside} outside.",
        tells
        if paths
        else "How a message leaves the house is not decided: until it is, nobody outside is told.",
        "Whoever comes when it sounds must not go in alone.",
    )


def _left(site: Site, catalogue: Catalogue, covers: tuple[Cover, ...]) -> Table:
    columns = (
        Column("Part"),
        Column("Doors and windows not noticed at once", share=2.4),
        Column("Rooms not watched", share=2.0),
    )
    return Table(
        "Left without protection",
        columns,
        tuple(_left_in(site, catalogue, one) for one in covers),
    )


def _left_in(site: Site, catalogue: Catalogue, cover: Cover) -> tuple[str, str, str]:
    part = next(one.name for one in site.parts if one.id == cover.part)
    openings = [
        discreet(site.opening(one.opening).name, site, catalogue)
        for one in cover.openings
        if one.is_counted and {one.opened, one.glass} & {"not", "further in"}
    ]
    rooms = [discreet(site.space(one.space).name, site, catalogue) for one in cover.rooms if not one.by]
    return part, joined(openings) or "none", joined(rooms) or "none"

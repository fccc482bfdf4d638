"""What is protected and what is not, in words for the client's copy, with locks and lights first."""

from __future__ import annotations

from collections.abc import Callable

from wardwright.documents.content import protection_words as words
from wardwright.documents.content.discretion import discreet
from wardwright.documents.content.mends import LOCKS_AND_LIGHTS, what_of
from wardwright.documents.content.names import Names, names_of
from wardwright.documents.content.paper import Cell, Column, Section, Table
from wardwright.documents.content.quantities import joined, sentence
from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import kind_words
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.protection import Cover, OpeningCover, protection
from wardwright.rules.finding import Mend

NameOf = Callable[[str], str]
"""What a thing of an id is called, where that may be told."""


LIMITS_SECTION = Section("What no alarm does", points=words.LIMITS)


def locks_section(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]) -> Section:
    """Better locks, panes and lights, before any device."""
    names, told = names_of(site, catalogue), _telling(site, catalogue)
    return Section("Locks and lights first", text=(words.LOCKS_WHY,), points=_locks(answers, names, told))


def cover_sections(site: Site, catalogue: Catalogue) -> tuple[Section, ...]:
    """Doors, windows and rooms, part by part: what is noticed and what is not."""
    return tuple(
        section for cover in protection(site, catalogue) for section in _covered(site, catalogue, cover)
    )


def added_sections(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]) -> tuple[Section, ...]:
    """What could be added, with what it brings; nothing where nothing would help."""
    return _proposals(answers, _telling(site, catalogue), catalogue)


def _telling(site: Site, catalogue: Catalogue) -> NameOf:
    names = names_of(site, catalogue)

    def told(thing_id: str) -> str:
        return discreet(names.of(thing_id), site, catalogue)

    return told


def _covered(site: Site, catalogue: Catalogue, cover: Cover) -> tuple[Section, ...]:
    part = next(one.name for one in site.parts if one.id == cover.part)
    is_off = all(one.opened in ("not", None) and one.glass in ("not", None) for one in cover.openings)
    if is_off and all(not one.by and not one.openings for one in cover.rooms):
        return (Section(f"With the {part}", text=(sentence(words.NOTHING_ON),)),)
    return (
        Section(
            f"With the {part}: doors and windows",
            text=_not_counted(site, catalogue, cover),
            table=_openings(site, catalogue, cover, part=part),
        ),
        Section(f"With the {part}: rooms", table=_rooms(site, catalogue, cover, part=part)),
    )


def _openings(site: Site, catalogue: Catalogue, cover: Cover, *, part: str) -> Table:
    columns = (
        Column("Door or window", share=1.6), Column("Room", share=1.3), Column("If it is opened", share=2.2),
        Column("If its glass is broken", share=2.2),
    )  # fmt: skip
    rows: list[tuple[Cell, ...]] = []
    for one in (opening for opening in cover.openings if opening.is_counted):
        room = "" if one.space is None else site.space(one.space).name
        name = site.opening(one.opening).name
        opened, glass = _told(one)
        rows.append((discreet(name, site, catalogue), discreet(room, site, catalogue), opened, glass))
    return Table(f"Openings, {part}", columns, tuple(rows))


def _not_counted(site: Site, catalogue: Catalogue, cover: Cover) -> tuple[str, ...]:
    """The doors and windows that nobody is taken to come in by, in one sentence."""
    names = [
        discreet(site.opening(one.opening).name, site, catalogue)
        for one in cover.openings
        if not one.is_counted
    ]
    return (sentence(words.NOT_COUNTED_HERE + joined(names)),) if names else ()


def _told(one: OpeningCover) -> tuple[str, str]:
    return (
        words.NOT_OPENED if one.opened is None else words.NOTICED[one.opened],
        words.NO_GLASS if one.glass is None else words.THROUGH_GLASS[one.glass],
    )


def _rooms(site: Site, catalogue: Catalogue, cover: Cover, *, part: str) -> Table:
    columns = (
        Column("Room", share=1.3),
        Column("Watched by", share=2.0),
        Column("Told when opened", share=2.6),
    )
    rows: tuple[tuple[Cell, ...], ...] = tuple(
        (
            discreet(site.space(one.space).name, site, catalogue),
            joined([kind_words(kind) for kind in one.by]) or words.NOT_WATCHED_ROOM,
            joined([discreet(site.opening(name).name, site, catalogue) for name in one.openings]) or "none",
        )
        for one in cover.rooms
    )
    return Table(f"Rooms, {part}", columns, rows)


def _locks(answers: tuple[Answer, ...], names: Names, name_of: NameOf) -> tuple[str, ...]:
    """Better locks, panes and lights, openings with the same gain together."""
    seen: dict[tuple[str, str], Mend] = {}
    for answer in answers:
        for mend in answer.mends:
            if mend.action in LOCKS_AND_LIGHTS:
                seen.setdefault((mend.action, name_of(mend.subject)), mend)
    groups: dict[str, list[str]] = {}
    for (action, name), mend in sorted(seen.items()):
        what = what_of(mend, names).partition(" (")[0]
        told = (
            "A light that comes on by itself"
            if action == "add-light"
            else f"A better {what}, which {words.gain_words(mend.gain)}"
        )
        groups.setdefault(told, []).append(name)
    found = tuple(sentence(f"{told}: {joined(whose)}") for told, whose in sorted(groups.items()))
    return found or ("Nothing that was asked about the doors and windows calls for a better lock or light.",)


def _proposals(answers: tuple[Answer, ...], name_of: NameOf, catalogue: Catalogue) -> tuple[Section, ...]:
    """Devices that would help, each by its room or opening, with what it brings in words."""
    found: dict[str, str] = {}
    for answer in answers:
        for mend in answer.mends:
            kind = _kind_words(mend, catalogue)
            # What an alarm would gain by it was worked out for a race only.
            if mend.action == "add-device" and kind and mend.gain is not None and mend.gain.unit == "s":
                found.setdefault(f"{kind}, {name_of(mend.subject)}", words.outcome_words(mend.gain))
    if not found:
        return ()
    points = tuple(sentence(f"{what}: {brings}") for what, brings in sorted(found.items()))
    return (Section("What could be added", points=points),)


def _kind_words(mend: Mend, catalogue: Catalogue) -> str:
    values = dict(mend.values)
    try:
        return kind_words(catalogue.sheet(str(values.get("sheet", ""))).kind)
    except CatalogueError:
        return ""

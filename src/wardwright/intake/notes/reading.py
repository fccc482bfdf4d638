"""Notes: a house, or people, kit and facts for one, as a small text with one fact a line.

The form is specified in docs/notes.md. Lines are read in five rounds (house and rooms; openings and
stairs; facts about openings; people, furniture and devices; zones and times), so that only rooms need to
stand in order.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from pydantic import ValidationError

from wardwright.errors import NotesError
from wardwright.intake.notes.draft import Draft, begin, finish
from wardwright.intake.notes.fabric import raise_walls, read_construction, read_party, read_walls
from wardwright.intake.notes.furniture import OUTLETS, USUAL_BOXES, read_fixture, read_outlet, read_stairs
from wardwright.intake.notes.ground import read_ground, read_outside
from wardwright.intake.notes.house import (
    read_country,
    read_fact,
    read_house,
    read_place,
    read_storey,
    read_time_zone,
)
from wardwright.intake.notes.kit import KINDS, read_device
from wardwright.intake.notes.leaves import read_call, read_set
from wardwright.intake.notes.lengths import cut, without_comment
from wardwright.intake.notes.needs import read_accept, read_grade
from wardwright.intake.notes.openings import read_opening
from wardwright.intake.notes.passes import read_pass
from wardwright.intake.notes.people import USUAL_PETS, read_person, read_pet, read_target
from wardwright.intake.notes.readings import read_reading
from wardwright.intake.notes.rooms import read_room
from wardwright.intake.notes.secrets import refuse_codes
from wardwright.intake.notes.trade_words import TRADE_WORDS
from wardwright.intake.notes.words import Line, nearest
from wardwright.intake.notes.zones import read_behaviour, read_part, read_programme, read_zone, zone_the_rest
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site

Reader = Callable[[Draft, Line], None]

_BUILD, _OPEN, _FACTS, _FILL, _PROGRAMME = range(5)
"""The rounds in which lines are read."""

LINES: Mapping[str, tuple[int, Reader]] = MappingProxyType(
    {
        "house": (_BUILD, read_house),
        "country": (_BUILD, read_country),
        "rules": (_BUILD, read_country),
        **dict.fromkeys(("latitude", "longitude", "north", "warm-room", "usual-room"), (_BUILD, read_place)),
        "time-zone": (_BUILD, read_time_zone),
        "storey": (_BUILD, read_storey),
        "room": (_BUILD, read_room),
        "walls": (_BUILD, read_walls),
        "party": (_BUILD, read_party),
        "construction": (_BUILD, read_construction),
        **dict.fromkeys(("ground", "boundary", "road"), (_OPEN, read_ground)),
        "outside": (_OPEN, read_outside),
        **dict.fromkeys(("door", "window", "gap", "garage-door"), (_OPEN, read_opening)),
        "stairs": (_OPEN, read_stairs),
        **dict.fromkeys(("use", "belongs", "floor"), (_OPEN, read_fact)),
        "call": (_OPEN, read_call),
        **dict.fromkeys(("set", "lock", "glazing", "habit", "covering"), (_FACTS, read_set)),
        "person": (_FILL, read_person),
        **dict.fromkeys(USUAL_PETS, (_FILL, read_pet)),
        "target": (_FILL, read_target),
        **dict.fromkeys(USUAL_BOXES, (_FILL, read_fixture)),
        **dict.fromkeys(OUTLETS, (_FILL, read_outlet)),
        "behaviour": (_BUILD, read_behaviour),
        "part": (_BUILD, read_part),
        **dict.fromkeys(KINDS, (_FILL, read_device)),
        "pass": (_PROGRAMME, read_pass),
        "zone": (_PROGRAMME, read_zone),
        "programme": (_PROGRAMME, read_programme),
        "reading": (_PROGRAMME, read_reading),
        "accept": (_PROGRAMME, read_accept),
        "grade": (_PROGRAMME, read_grade),
    }
)
"""The first word of each kind of line: when it is read, and what reads it."""


def read_notes(text: str, *, where: str, base: Site | None = None, catalogue: Catalogue) -> Site:
    """Read notes.

    Parameters
    ----------
    text : str
        The notes, lines parted by newlines.
    where : str
        What the text is called in messages, such as its file's name.
    base : Site, optional
        An imported house to which the notes are added; without it they must hold a whole house.
    catalogue : Catalogue
        Sheets, constructions and glazings that the notes may name.

    Returns
    -------
    Site
        The house with everything that the notes say; facts from them are marked told, what was filled in
        is marked guessed.

    Raises
    ------
    NotesError
        At the first line that cannot be read, with its number, the reason and a cure.
    """
    draft = begin(catalogue, base)
    lines = _lines(text, where=where)
    for phase in (_BUILD, _OPEN, _FACTS, _FILL, _PROGRAMME):
        for line, (when, reader) in lines:
            if when == phase:
                _run(draft, line, reader)
        if phase == _BUILD and base is None:
            _refuse_empty(draft, where)
            raise_walls(draft)
    if not any(when == _PROGRAMME and reader is read_zone for _, (when, reader) in lines):
        zone_the_rest(draft)
    return finish(draft)


def _lines(text: str, *, where: str) -> list[tuple[Line, tuple[int, Reader]]]:
    found = []
    for number, written in enumerate(text.splitlines(), start=1):
        place = f"{where} line {number}"
        refuse_codes(written, where=place)
        tokens = cut(without_comment(written), where=place)
        if tokens:
            line = Line(tokens, where=place)
            found.append((line, _kind(line)))
    return found


def _kind(line: Line) -> tuple[int, Reader]:
    first = line.tokens[0]
    has_size = len(line.tokens) > 2 and line.tokens[1].kind == "quantity" and line.tokens[2].written == "x"
    is_room = has_size or (
        len(line.tokens) > 1 and line.tokens[1].kind == "quantity" and first.written not in LINES
    )
    if first.kind == "word" and is_room and first.written != "room":
        return LINES["room"]
    if first.kind != "word" or first.written not in LINES:
        raise line.refuse(f"no line begins with '{first.written}'", _beginning(line))
    return LINES[first.written]


def _beginning(line: Line) -> str:
    """What to do about a line that begins with no known word."""
    first = line.tokens[0].written
    if first.casefold() in TRADE_WORDS:
        return f"Write '{TRADE_WORDS[first.casefold()]}' for it"
    example = "'living-room 3.2 x 4.1 against hall east, named \"Living room\"'"
    return f"{nearest(first, LINES)}; a room is written as {example}"


def _run(draft: Draft, line: Line, reader: Reader) -> None:
    try:
        reader(draft, line)
    except ValidationError as error:
        first = error.errors()[0]
        field = ".".join(str(part) for part in first["loc"])
        message = first["msg"][:1].lower() + first["msg"][1:]
        raise line.refuse(f"{field} cannot be so: {message}", "Correct the figure or the word") from error


def _refuse_empty(draft: Draft, where: str) -> None:
    if not draft.spaces:
        raise NotesError(
            "the notes hold no room",
            where=where,
            cure="State a storey and its rooms, or give the building file that the notes belong to",
        )

"""The house as a whole: its name, its place, its storeys."""

from __future__ import annotations

from types import MappingProxyType

from wardwright.intake.notes.clauses import Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.marks import changed, marks
from wardwright.intake.notes.names import find, new_id, words_of
from wardwright.intake.notes.uses import USE_WORDS
from wardwright.intake.notes.words import Line
from wardwright.model.fabric import Storey
from wardwright.model.time_zones import is_time_zone

FLOOR_THICKNESS_M = 0.3
"""Between a ceiling and the floor above, where nothing is said. [m] (assumption)"""
USUAL_STOREY_M = 2.4
"""Floor to ceiling, where nothing is said. [m] (assumption)"""


def read_house(draft: Draft, line: Line) -> None:
    """Read `house "The terrace"`."""
    line.take("house")
    draft.name = line.name("the name of the house")
    line.end()


def read_country(draft: Draft, line: Line) -> None:
    """Read `country GB`, or `rules us`."""
    word = line.take("country or rules").written
    if word == "rules":
        changes = {"rule_pack": line.choice("a set of rules", ("uk-eu", "us"))}
    else:
        country = line.name("a country of two letters")
        if len(country) != 2 or not country.isascii() or not country.isalpha():
            raise line.refuse(f"'{country}' is no country's code", "Write its two letters, such as GB or DE")
        changes = {"country": country.upper()}
    draft.place = changed(draft.place, changes, read_clauses(line, Grammar()))


_FIGURES = MappingProxyType(
    {
        "latitude": ("latitude_deg", ("deg",)),
        "longitude": ("longitude_deg", ("deg",)),
        "north": ("north_deg", ("deg",)),
        "warm-room": ("warm_room_c", ("C",)),
        "usual-room": ("usual_room_c", ("C",)),
    }
)


def read_place(draft: Draft, line: Line) -> None:
    """Read `latitude 51.5`, `north 50`, `north 20 clockwise`, `warm-room 30 C`."""
    word = line.take("what").written
    field, units = _FIGURES[word]
    value = line.number(word, units)
    if word == "north" and line.maybe("clockwise"):
        value = -value
    draft.place = changed(draft.place, {field: value}, read_clauses(line, Grammar()))


def read_time_zone(draft: Draft, line: Line) -> None:
    """Read `time-zone Europe/London`."""
    line.take("what")
    zone = line.name("a time zone")
    if not is_time_zone(zone):
        raise line.refuse(
            f"'{zone}' is no time zone that is known", "Write it as in 'time-zone Europe/London'"
        )
    draft.place = changed(draft.place, {"time_zone": zone}, read_clauses(line, Grammar()))


def read_storey(draft: Draft, line: Line) -> None:
    """Read `storey first 2.4 high, at 2.7`; the rooms that follow are on it."""
    line.take("storey")
    grammar = Grammar(after=frozenset({"high"}), lengths=frozenset({"at"}))
    written = line.name("the storey's id")
    clauses = read_clauses(line, grammar)
    if draft.base is not None:
        raise line.refuse(
            "storeys cannot be added to an imported house", "Leave this line out: the building file has them"
        )
    clauses.words.setdefault("as", written)
    identity = new_id(line, clauses, written, taken=draft.everything())
    guessed = []
    height, level = clauses.measures.get("high"), clauses.measures.get("at")
    if height is None:
        height, guessed = USUAL_STOREY_M, ["height_m"]
    if level is None:
        below = draft.storeys[-1] if draft.storeys else None
        level = round(below.elevation_m + below.height_m + FLOOR_THICKNESS_M, 6) if below else 0.0
        guessed = [*guessed, *(["elevation_m"] if below else [])]
    fields = {
        "id": identity,
        "name": clauses.words.get("named", words_of(identity) + " floor"),
        "elevation_m": level,
        "height_m": height,
    }
    basis = marks(clauses, ["elevation_m", "height_m"], guessed=guessed)
    draft.storeys.append(Storey.model_validate(fields | ({"basis": basis} if basis else {})))
    draft.layout.storey = identity


def read_fact(draft: Draft, line: Line) -> None:
    """Read `use flur hall`, `belongs stair-hall shared`, or `floor hall glossy`: a fact about one room."""
    word = line.take("use, belongs or floor").written
    room = find(line, draft.spaces, line.name("a room"), what="room")
    known = {"use": USE_WORDS, "belongs": ("ours", "neighbour", "shared"), "floor": ("glossy", "matt")}[word]
    value: str | bool = line.choice("a word for it", known)
    if word == "floor":
        word, value = "has_glossy_floor", value == "glossy"
    place = draft.spaces.index(room)
    draft.spaces[place] = changed(room, {word: value}, read_clauses(line, Grammar()))

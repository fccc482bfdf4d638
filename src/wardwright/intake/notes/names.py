"""How the things of a site are found by the names that notes give them, and how new ones are named."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence
from typing import Protocol, TypeVar

from wardwright.intake.notes.clauses import Clauses
from wardwright.intake.notes.words import Line, nearest

BRACKETED = re.compile(r"\([^()]*\)")
"""What stands in brackets in a name, such as a room's number."""
_UMLAUTS = {"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss", "å": "aa", "æ": "ae", "ø": "oe"}


class _HasId(Protocol):
    @property
    def id(self) -> str: ...


def spellings(name: str) -> frozenset[str]:
    """The ways a name may be written in notes: small letters, hyphens, umlauts spelt out or dropped.

    Examples
    --------
    >>> sorted(spellings("Küche 1"))
    ['kuche-1', 'kueche-1']
    """
    small = name.casefold()
    found = set()
    for spelt in ("".join(_UMLAUTS.get(letter, letter) for letter in small), small):
        plain = unicodedata.normalize("NFKD", spelt).encode("ascii", "ignore").decode()
        found.add("-".join("".join(c if c.isalnum() else " " for c in plain).split()))
    return frozenset(found)


class _Thing(Protocol):
    @property
    def id(self) -> str: ...
    @property
    def name(self) -> str: ...


Found = TypeVar("Found", bound=_Thing)


def find(line: Line, things: Sequence[Found], written: str, *, what: str) -> Found:
    """The one thing that a written name means, by id first, then by its name, then by its name less brackets.

    Where a neighbour's room has the name too, ours is meant.

    Parameters
    ----------
    line : Line
        The line that names it, for the message.
    things : sequence
        Where to look.
    written : str
        As the line has it.
    what : str
        What is looked for, such as `a room`.

    Returns
    -------
    The thing.

    Raises
    ------
    NotesError
        If there is none, or more than one.
    """
    wanted = spellings(written)
    for match in (
        [thing for thing in things if thing.id == written],
        [thing for thing in things if spellings(thing.id) & wanted],
        [thing for thing in things if spellings(thing.name) & wanted],
        [thing for thing in things if spellings(BRACKETED.sub("", thing.name)) & wanted],
    ):
        ours = [thing for thing in match if getattr(thing, "belongs", "ours") == "ours"]
        best = ours or match
        if len(best) == 1:
            return best[0]
        if best:
            ids = ", ".join(thing.id for thing in best)
            raise line.refuse(f"'{written}' could be any of {ids}", "Write the id of the one that is meant")
    known = [thing.id for thing in things]
    known += [name for thing in things for name in sorted(spellings(thing.name)) if name not in known]
    raise line.refuse(f"there is no {what} '{written}'", nearest(next(iter(sorted(wanted))), known))


def new_id(line: Line, clauses: Clauses, stem: str, *, taken: Iterable[_HasId]) -> str:
    """The id that a line gives with `as`, or a free one made from a stem.

    Parameters
    ----------
    line : Line
        The line, for the message.
    clauses : Clauses
        Its clauses.
    stem : str
        What the id is made from if none is given.
    taken : iterable
        Things that have ids already.

    Returns
    -------
    str
        An id that no thing of that kind has.
    """
    ids = {thing.id for thing in taken}
    given = clauses.words.get("as")
    if given is not None:
        if given not in spellings(given):
            raise line.refuse(
                f"'{given}' is no id", "Write ids in small letters, digits and hyphens, such as front-door"
            )
        if given in ids:
            raise line.refuse(f"there is a '{given}' already", "Give this one another id with 'as'")
        return given
    if stem not in ids:
        return stem
    return next(f"{stem}-{n}" for n in range(2, len(ids) + 3) if f"{stem}-{n}" not in ids)


def words_of(identity: str) -> str:
    """An id as words, its first letter large.

    Examples
    --------
    >>> words_of("bedroom-1")
    'Bedroom 1'
    """
    words = identity.replace("-", " ").strip()
    return words[:1].upper() + words[1:]

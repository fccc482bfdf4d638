"""What may follow the head of a line of notes, in any order: sizes, places, words and flags."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from wardwright.intake.notes.words import Line, nearest

SIDES = ("north", "east", "south", "west")
CORNERS = ("north-east", "south-east", "south-west", "north-west")
_BARE = ""


@dataclass(frozen=True)
class Grammar:
    """Which clauses a kind of line takes."""

    after: frozenset[str] = frozenset()
    """Words that may follow a length and say what it is: `0.8 wide`. The empty word: a length may stand bare."""
    lengths: frozenset[str] = frozenset()
    """Words that are followed by a length: `sill 0.9`."""
    quantities: Mapping[str, tuple[str, ...]] = field(default_factory=lambda: MappingProxyType({}))
    """Words that are followed by another quantity, with its units: `entry 30 s`."""
    words: Mapping[str, tuple[str, ...] | None] = field(default_factory=lambda: MappingProxyType({}))
    """Words that are followed by a word: out of those listed, or (None) any name."""
    lists: frozenset[str] = frozenset()
    """Words that are followed by names up to the next clause."""
    flags: frozenset[str] = frozenset()
    """Words that stand alone."""
    sizes: frozenset[int] = frozenset()
    """How many lengths a size such as `3.2 x 4.1` may have."""
    takes_side: bool = False
    """Whether a side, a corner, or `middle` says where."""
    takes_ends: bool = False
    """Whether `0.4 from its north end` says where."""
    takes_weight: bool = False
    """Whether a bare weight may stand."""
    takes_names: bool = False
    """Whether other words and quoted texts are kept, in order."""


@dataclass
class Clauses:
    """The clauses of one line."""

    line: Line
    measures: dict[str, float] = field(default_factory=dict)
    words: dict[str, str] = field(default_factory=dict)
    lists: dict[str, tuple[str, ...]] = field(default_factory=dict)
    flags: set[str] = field(default_factory=set)
    size: tuple[float, ...] = ()
    side: str | None = None
    ends: dict[str, float] = field(default_factory=dict)
    names: list[str] = field(default_factory=list)

    @property
    def is_measured(self) -> bool:
        """Whether the line says that its figures were measured."""
        return "measured" in self.flags

    @property
    def is_guessed(self) -> bool:
        """Whether the line says that its figures are guesses."""
        return "guessed" in self.flags


_ALWAYS_FLAGS = frozenset({"measured", "guessed"})
_ALWAYS_WORDS: Mapping[str, tuple[str, ...] | None] = MappingProxyType({"as": None, "named": None})
_LINKS = ("on", "into", "is", "to")


def read_clauses(line: Line, grammar: Grammar) -> Clauses:
    """Read the rest of a line as clauses.

    Parameters
    ----------
    line : Line
        The line, its head already read.
    grammar : Grammar
        What may follow.

    Returns
    -------
    Clauses
        What did follow.

    Raises
    ------
    NotesError
        At the first piece that is not understood, or is said twice.
    """
    found = Clauses(line)
    while not line.at_end:
        if line.at_quantity():
            _read_quantity(line, grammar, found)
        else:
            _read_word(line, grammar, found)
    if found.is_measured and found.is_guessed:
        raise line.refuse("the line is marked both measured and guessed", "Keep one of the two words")
    return found


def _said(key: str) -> str:
    return f"'{key}'" if key else "a length of which nothing says what it is"


def _once(line: Line, store: Mapping[str, object], key: str) -> str:
    if key in store:
        raise line.refuse(f"{_said(key)} is given twice", "Keep the one that is right")
    return key


def _read_quantity(line: Line, grammar: Grammar, found: Clauses) -> None:
    after = line.peek(1)
    if after is not None and after.kind == "word" and after.written == "x" and grammar.sizes:
        size = [line.number("a length")]
        while line.maybe("x"):
            size.append(line.number("a length"))
        if found.size:
            raise line.refuse("the size is given twice", "Keep the one that is right")
        if len(size) not in grammar.sizes:
            wanted = " or ".join(" x ".join("abc"[:n]) for n in sorted(grammar.sizes))
            raise line.refuse(f"a size of {len(size)} lengths does not fit here", f"Write it as {wanted}")
        found.size = tuple(size)
        return
    token = line.peek()
    if grammar.takes_weight and token is not None and token.unit == "kg":
        found.measures[_once(line, found.measures, "weight")] = line.number("a weight", ("kg",))
        return
    value = line.number("a length")
    if grammar.takes_ends and line.maybe("from"):
        side = line.choice("a side", SIDES)
        line.maybe("end", "side", "edge")
        found.ends[_once(line, found.ends, side)] = value
        return
    word = line.maybe(*grammar.after)
    if word is None and _BARE not in grammar.after:
        written = token.written if token else ""
        choices = sorted(grammar.after | ({"from SIDE"} if grammar.takes_ends else set()))
        raise line.refuse(
            f"nothing says what '{written}' is",
            "Follow it with " + " or ".join(choices) if choices else "Take it away",
        )
    found.measures[_once(line, found.measures, word or _BARE)] = value


def _read_word(line: Line, grammar: Grammar, found: Clauses) -> None:
    token = line.take("a clause")
    word = token.written
    keyed = {**_ALWAYS_WORDS, **grammar.words}
    if token.kind == "text":
        _keep_name(line, grammar, found, word=word)
    elif word in grammar.lengths:
        found.measures[_once(line, found.measures, word)] = line.number("a length")
    elif word in grammar.quantities:
        found.measures[_once(line, found.measures, word)] = line.number(
            f"the figure of '{word}'", grammar.quantities[word]
        )
    elif word in keyed:
        line.maybe(*_LINKS)
        known = keyed[word]
        value = line.name("a name") if known is None else line.choice(f"a word for '{word}'", known)
        found.words[_once(line, found.words, word)] = value
    elif word in grammar.lists:
        found.lists[_once(line, found.lists, word)] = _names(line, grammar, word)
    elif word in grammar.flags or word in _ALWAYS_FLAGS:
        found.flags.add(word)
    elif grammar.takes_side and word in (*SIDES, "corner", "middle"):
        _read_side(line, found, word=word)
        if "wall" not in grammar.lengths:
            line.maybe("wall", "side")
    else:
        _keep_name(line, grammar, found, word=word)


def _read_side(line: Line, found: Clauses, *, word: str) -> None:
    if found.side is not None:
        raise line.refuse("the place is given twice", "Keep one side, corner or middle")
    found.side = line.choice("a corner", CORNERS) if word == "corner" else word


def _names(line: Line, grammar: Grammar, word: str) -> tuple[str, ...]:
    names: list[str] = []
    while (token := line.peek()) is not None and token.kind != "quantity":
        if token.kind == "word" and token.written in known_words(grammar):
            break
        names.append(line.name("a name"))
    if not names:
        raise line.refuse(f"nothing follows '{word}'", "Name at least one")
    return tuple(names)


def _keep_name(line: Line, grammar: Grammar, found: Clauses, *, word: str) -> None:
    if not grammar.takes_names:
        raise line.refuse(f"'{word}' is not understood here", nearest(word, known_words(grammar)))
    found.names.append(word)


def known_words(grammar: Grammar) -> list[str]:
    """Every word that begins or ends a clause of a kind of line, in the order of letters."""
    words = set(grammar.after) | grammar.lengths | set(grammar.quantities) | set(grammar.words)
    words |= grammar.lists | grammar.flags | _ALWAYS_FLAGS | set(_ALWAYS_WORDS)
    words |= {*SIDES, "corner", "middle"} if grammar.takes_side else set()
    words |= {"from"} if grammar.takes_ends else set()
    return sorted(words - {_BARE})

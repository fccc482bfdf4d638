"""What an intake read, what it guessed and what it left out, as short facts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from wardwright.model.record import Record

NAMED_AT_MOST = 8
"""How many ids a fact names before it says how many more there are. [-]"""

_NUMBER_WORDS = (
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
)  # fmt: skip


class PremisesChoice(Record):
    """Premises that a building file seems to hold among others."""

    name: str
    """What picks them, as the file writes it."""
    spaces: int
    """How many. [-]"""


class IntakeReport(Record):
    """What was read, what was guessed, what was left out, and what is odd about the house as drawn."""

    source: str
    """The file's name."""
    form: str
    """What kind of file it is, for example `IFC4`."""
    counts: tuple[tuple[str, int], ...] = ()
    """How many of each kind the site holds."""
    read: tuple[str, ...] = ()
    guessed: tuple[str, ...] = ()
    """Grouped, with the ids: `sill heights guessed on 3 windows: w1, w2, w3`."""
    left_out: tuple[str, ...] = ()
    """With the reason."""
    oddities: tuple[str, ...] = ()
    """What a reader of the plan should know: rooms that share one ring of walls, walls that close only low."""
    premises: tuple[PremisesChoice, ...] = ()
    """What there is to choose from where nobody said which premises are ours; empty where there is but one."""


class ReportDraft:
    """Gathers facts while a file is read; asked once for the report."""

    def __init__(self) -> None:
        self._read: list[str] = []
        self._oddities: list[str] = []
        self._guessed: dict[tuple[str, str], list[str]] = {}
        self._left_out: dict[tuple[str, str], list[str]] = {}

    def read(self, fact: str) -> None:
        """Note something that was read."""
        self._read.append(fact)

    def oddity(self, fact: str) -> None:
        """Note something that is odd about the house as drawn."""
        self._oddities.append(fact)

    def guess(self, fact: str, noun: str, subject: str) -> None:
        """Note that a fact of one thing was guessed, for example `sill height` of a `window`."""
        self._guessed.setdefault((fact, noun), []).append(subject)

    def leave_out(self, noun: str, reason: str, subject: str) -> None:
        """Note that one thing was left out, and why."""
        self._left_out.setdefault((noun, reason), []).append(subject)

    def guesses(self) -> int:
        """How many single facts were guessed."""
        return sum(len(set(subjects)) for subjects in self._guessed.values())

    def report(self, *, source: str, form: str, counts: Iterable[tuple[str, int]]) -> IntakeReport:
        """Make the report."""
        together: dict[tuple[str, tuple[str, ...]], list[str]] = {}
        for (fact, noun), subjects in sorted(self._guessed.items()):
            together.setdefault((noun, tuple(sorted(set(subjects)))), []).append(fact)
        guessed = sorted(
            f"{in_a_row(facts)} guessed on {counted(len(subjects), noun)}: {listed(subjects)}"
            for (noun, subjects), facts in together.items()
        )
        left_out = [
            f"{counted(len(set(subjects)), noun)} {reason}: {listed(subjects)}"
            for (noun, reason), subjects in sorted(self._left_out.items())
        ]
        return IntakeReport(
            source=source,
            form=form,
            counts=tuple(counts),
            read=tuple(self._read),
            guessed=tuple(guessed),
            left_out=tuple(left_out),
            oddities=tuple(self._oddities),
        )


def number_word(count: int) -> str:
    """Write a small number as a word.

    Examples
    --------
    >>> number_word(6), number_word(40)
    ('six', '40')
    """
    return _NUMBER_WORDS[count] if 0 <= count < len(_NUMBER_WORDS) else str(count)


def in_a_row(facts: Sequence[str]) -> str:
    """Write facts in one row.

    Examples
    --------
    >>> in_a_row(["hinge"]), in_a_row(["hinge", "leaves", "swing"])
    ('hinge', 'hinge, leaves and swing')
    """
    return facts[0] if len(facts) == 1 else f"{', '.join(facts[:-1])} and {facts[-1]}"


def counted(count: int, noun: str) -> str:
    """Write a count with its noun.

    Examples
    --------
    >>> counted(1, "wall"), counted(8, "wall"), counted(2, "storey")
    ('1 wall', '8 walls', '2 storeys')
    """
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def listed(names: Iterable[str]) -> str:
    """Write names in order, at most eight of them.

    Examples
    --------
    >>> listed(["b", "a", "b"])
    'a, b'
    """
    ordered = sorted(set(names))
    shown = ", ".join(ordered[:NAMED_AT_MOST])
    more = len(ordered) - NAMED_AT_MOST
    return f"{shown} and {more} more" if more > 0 else shown

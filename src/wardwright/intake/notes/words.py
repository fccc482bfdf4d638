"""A line of notes read from left to right, piece by piece, with a cure for each word it does not know."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence

from wardwright.errors import NotesError
from wardwright.intake.notes.lengths import Token

_FILLERS = frozenset({"its", "the", "and", "with", "of"})
_UNIT_NAMES = {
    "m": "a length", "s": "a time", "d": "days", "kg": "a weight", "deg": "an angle", "C": "a temperature",
    "dBm": "a radio level",
}  # fmt: skip


def nearest(word: str, known: Iterable[str]) -> str:
    """A cure that names the nearest known word, and a few others.

    Examples
    --------
    >>> nearest("kitchn", ["hall", "kitchen"])
    "Did you mean 'kitchen'? Known here: hall, kitchen"
    """
    names = list(dict.fromkeys(known))
    close = difflib.get_close_matches(word.casefold(), names, n=1, cutoff=0.5)
    listed = ", ".join(names[:24]) + (", ..." if len(names) > 24 else "")
    shown = f"Known here: {listed}" if names else "Nothing of that kind is known here yet; state it first"
    return f"Did you mean '{close[0]}'? {shown}" if close else shown


class Line:
    """A line of notes being read from left to right."""

    def __init__(self, tokens: Sequence[Token], *, where: str) -> None:
        self.tokens = tuple(tokens)
        self.where = where
        self._place = 0

    def refuse(self, what: str, cure: str) -> NotesError:
        """The error to raise about this line."""
        return NotesError(what, where=self.where, cure=cure)

    @property
    def at_end(self) -> bool:
        """Whether all is read."""
        return self.peek() is None

    def peek(self, ahead: int = 0) -> Token | None:
        """The next piece, or one further on, fillers such as `its` passed over at the front."""
        while (
            self._place < len(self.tokens)
            and self.tokens[self._place].kind == "word"
            and self.tokens[self._place].written in _FILLERS
        ):
            self._place += 1
        place = self._place + ahead
        return self.tokens[place] if place < len(self.tokens) else None

    def take(self, what: str) -> Token:
        """The next piece, whatever it is; `what` says what was expected if there is none."""
        token = self.peek()
        if token is None:
            raise self.refuse(f"the line ends where {what} should follow", f"Add {what}")
        self._place += 1
        return token

    def maybe(self, *words: str) -> str | None:
        """Take the next piece if it is one of these words."""
        token = self.peek()
        if token is not None and token.kind == "word" and token.written in words:
            self._place += 1
            return token.written
        return None

    def at_quantity(self) -> bool:
        """Whether a quantity comes next."""
        token = self.peek()
        return token is not None and token.kind == "quantity"

    def choice(self, what: str, known: Sequence[str]) -> str:
        """Take a word that must be one of those known."""
        token = self.take(what)
        if token.kind != "word" or token.written not in known:
            raise self.refuse(f"'{token.written}' is not {what}", nearest(token.written, known))
        return token.written

    def name(self, what: str) -> str:
        """Take a name: a word or a text in quotes."""
        token = self.take(what)
        if token.kind == "quantity":
            raise self.refuse(f"'{token.written}' stands where {what} should", f"Write {what} there")
        return token.written

    def number(self, what: str, units: tuple[str, ...] = ("m",)) -> float:
        """Take a quantity; without a unit it is taken in SI.

        Parameters
        ----------
        what : str
            What it is, for the message.
        units : tuple of str
            Units that may be written beside it.

        Returns
        -------
        float
            Its value in the SI unit.
        """
        token = self.take(what)
        wanted = " or ".join(_UNIT_NAMES[unit] for unit in units) or "a plain number"
        if token.kind != "quantity":
            raise self.refuse(f"'{token.written}' stands where {what} should", f"Write {wanted} there")
        if token.unit is not None and token.unit not in units:
            raise self.refuse(f"'{token.written}' does not fit here", f"Write {wanted} there")
        return token.value

    def end(self) -> None:
        """Refuse whatever is left."""
        token = self.peek()
        if token is not None:
            raise self.refuse(f"'{token.written}' is left over at the end of the line", "Take it away")

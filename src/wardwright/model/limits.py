"""Limits: figures of standards and of public guidance that rules hold a site against."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.rows import Row


class Limit(Row):
    """One figure of a standard, of public guidance or of common practice: the only place where it stands.

    Several rows may have one id: a row for each rule pack, and one for each country that sets its own.
    """

    value: float
    unit: str
    pack: Literal["uk-eu", "us", "any"] = "any"
    """The rule pack that it belongs to."""
    country: Annotated[str, Field(pattern=r"^[A-Z]{2}$")] | None = None
    """ISO 3166 code of the one country where it holds; None: wherever its pack does."""
    edition: str = ""
    """Edition or year that the figure is from; empty: none is known."""
    note: str = ""
    """What other editions or sources say instead, or where it does not hold."""
    is_disputed: bool = False
    """Whether editions or sources disagree about it."""

    @property
    def is_to_be_checked(self) -> bool:
        """Whether a rule that rests on it can only say: check with the standard."""
        return self.is_disputed or self.mark == "from memory"

    @property
    def origin(self) -> str:
        """Source and edition; empty where the figure is our own."""
        return "" if self.source == "own" else f"{self.source} {self.edition}".strip()

    @property
    def words(self) -> str:
        """The row's own identity, for messages: id, pack, and country if any."""
        return f"{self.id} ({self.pack if self.country is None else f'{self.pack}, {self.country}'})"

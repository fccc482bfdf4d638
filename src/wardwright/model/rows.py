"""What every row of data has: an id, a name, a source and a mark."""

from __future__ import annotations

from typing import Literal

from wardwright.model.record import Id, Record

Mark = Literal["standard", "published", "derived", "common practice", "from memory", "assumption"]
"""How a figure is known."""


class Row(Record):
    """A row of data: every one has its source and its mark."""

    id: Id
    name: str
    source: str
    """Where it is from: a key of sources.toml, or `own` for values made for this catalogue."""
    mark: Mark


class Source(Record):
    """A book, standard or paper that rows refer to by its key."""

    id: Id
    title: str
    edition: str = ""
    """Edition or year."""
    seen: str
    """How far it was read for this program."""

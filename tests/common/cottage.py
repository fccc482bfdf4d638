"""The cottage of docs/notes.md, and what its notes with more lines are read to."""

from __future__ import annotations

import re
from pathlib import Path

from wardwright.intake.notes.reading import read_notes
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue

PAGE = (Path(__file__).resolve().parents[2] / "docs" / "notes.md").read_text(encoding="utf-8")
BLOCKS: list[tuple[str, str]] = re.findall(r"```notes ?(\w*)\n(.*?)```", PAGE, re.DOTALL)
COTTAGE = next(text for kind, text in BLOCKS if kind == "house")
WHERE = "cottage.notes"


def read(lines: str = "", *, house: str = COTTAGE) -> Site:
    """The cottage, or another house, with more lines."""
    return read_notes(house + lines + "\n", where=WHERE, catalogue=load_catalogue())


def add(lines: str, *, base: Site | None = None) -> Site:
    """Lines added to the cottage as to an imported house."""
    return read_notes(lines, where="kit.txt", base=base or read(), catalogue=load_catalogue())

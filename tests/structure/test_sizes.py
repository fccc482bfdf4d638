"""Files stay small: the giants are the debt."""

from __future__ import annotations

from pathlib import Path

import pytest

from structure.source_tree import PACKAGE, layer_of, modules, name_of

LONG = ("geometry", "physics")
CEILING = 250
CEILING_WITH_DOCSTRINGS = 400
EXCEPTIONS: dict[str, int] = {}
"""Files above the ceiling and how long each may be: the list and its numbers only shrink."""


def ceiling_of(path: Path) -> int:
    return CEILING_WITH_DOCSTRINGS if layer_of(path) in LONG else CEILING


def length_of(path: Path) -> int:
    return len(path.read_text(encoding="utf-8").splitlines())


@pytest.mark.parametrize("path", modules(), ids=name_of)
def test_no_file_is_above_its_ceiling(path: Path) -> None:
    allowed = EXCEPTIONS.get(name_of(path), ceiling_of(path))
    assert length_of(path) <= allowed, f"{name_of(path)} is long: split it by meaning"


def test_every_exception_is_still_needed() -> None:
    for name, allowed in EXCEPTIONS.items():
        path = PACKAGE / name
        assert path.is_file(), f"{name} is gone: take it off the list"
        assert length_of(path) > ceiling_of(path), f"{name} is short enough now: take it off the list"
        assert length_of(path) > allowed - 20, f"{name} has shrunk: lower its number"


def test_no_file_has_a_name_that_says_nothing() -> None:
    empty = {"utils", "helpers", "common", "misc", "core", "util", "helper"}
    found = [
        name_of(path) for path in modules() if empty & set(path.relative_to(PACKAGE).with_suffix("").parts)
    ]
    assert not found

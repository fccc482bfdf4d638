"""The letters that papers are set in: shipped with the program, so that a paper looks the same everywhere."""

from __future__ import annotations

from contextlib import ExitStack
from functools import lru_cache
from importlib.resources import as_file, files

_KEPT = ExitStack()
"""Holds a folder unpacked from a zipped package until the program ends."""


@lru_cache(maxsize=1)
def font_folder() -> str:
    """Path of the folder with the letters."""
    return str(_KEPT.enter_context(as_file(files("wardwright") / "fonts")))

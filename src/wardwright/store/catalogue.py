"""The catalogue from its files: those of the package, and a user's own."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from importlib.resources import files
from pathlib import Path

from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue
from wardwright.model.sheets import LARGEST_SHEET_BYTES, SheetText, read_rows
from wardwright.store.texts import read_text


def load_catalogue(extra: Sequence[Path] = ()) -> Catalogue:
    """Read the catalogue.

    Parameters
    ----------
    extra : sequence of Path, default ()
        Files of rows to add, such as the sheet of a real device.

    Returns
    -------
    Catalogue
        The rows of the package and of those files.

    Raises
    ------
    CatalogueError
        If a file cannot be read or a row cannot be used; it names the file and the key.

    Examples
    --------
    >>> load_catalogue().sheet("movement-12m").movement.reach_m
    12.0
    """
    if not extra:
        return _packaged_catalogue()
    return read_rows((*_packaged_texts(), *(_text_of(path) for path in extra)))


@lru_cache(maxsize=1)
def _packaged_catalogue() -> Catalogue:
    return read_rows(_packaged_texts())


@lru_cache(maxsize=1)
def _packaged_texts() -> tuple[SheetText, ...]:
    root = files("wardwright")
    found = [root / "sources.toml"]
    folder = root / "catalogue"
    found += [f for f in folder.iterdir() if f.name.endswith(".toml")]
    found += [f for f in (folder / "devices").iterdir() if f.name.endswith(".toml")]
    named = sorted(found, key=lambda f: f.name)
    return tuple(SheetText(f.name, f.read_text(encoding="utf-8")) for f in named)


def _text_of(path: Path) -> SheetText:
    text = read_text(
        path,
        "file",
        fault=CatalogueError,
        largest_bytes=LARGEST_SHEET_BYTES,
        cure="Give a file of rows only; one device sheet needs about thirty lines",
    )
    return SheetText(str(path), text)

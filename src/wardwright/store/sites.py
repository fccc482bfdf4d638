"""Site documents on the disk."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from wardwright.errors import DocumentError
from wardwright.model.catalogue import Catalogue
from wardwright.model.document import LARGEST_DOCUMENT_BYTES, read_document, write_document
from wardwright.model.site import Site
from wardwright.model.validation import sound
from wardwright.store.texts import read_text


def read_site(path: Path, catalogue: Catalogue | None = None) -> Site:
    """Read a site document whose parts fit together.

    Parameters
    ----------
    path : Path
        Where it is.
    catalogue : Catalogue, optional
        With it, the rows that the site names are looked up too.

    Returns
    -------
    Site
        What it says.

    Raises
    ------
    DocumentError
        If it cannot be read, or does not hold together.
    """
    site = read_document(_text_of(path), where=str(path))
    return sound(site, where=str(path), catalogue=catalogue)


def write_site(path: Path, site: Site) -> None:
    """Write a site document, whole or not at all; only its owner may read it.

    Parameters
    ----------
    path : Path
        Where to.
    site : Site
        What to write.

    Raises
    ------
    DocumentError
        If it cannot be written; what stood there before is left as it was.
    """
    text = write_document(site)
    try:
        # Made with mode 0600: the file is a plan of how to get into somebody's home.
        handle, draft = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".part")
        try:
            with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
                file.write(text)
                file.flush()
                os.fsync(file.fileno())
            Path(draft).replace(path)
        except BaseException:
            Path(draft).unlink(missing_ok=True)
            raise
        _settle(path.parent)
    except OSError as fault:
        raise DocumentError(
            f"the file cannot be written ({fault.strerror})",
            where=str(path),
            cure="Check that the folder exists, has room and may be written to",
        ) from None


def _settle(folder: Path) -> None:
    """Have the folder's own entry reach the disk, where the system can do that."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _text_of(path: Path) -> str:
    return read_text(
        path,
        "document",
        fault=DocumentError,
        largest_bytes=LARGEST_DOCUMENT_BYTES,
        cure="Give a site document; pictures and logs do not belong in it",
    )

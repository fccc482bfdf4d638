"""Site documents on the disk."""

from __future__ import annotations

from pathlib import Path

from wardwright.errors import DocumentError
from wardwright.model.catalogue import Catalogue
from wardwright.model.document import read_document, write_document
from wardwright.model.json_text import LARGEST_DOCUMENT_BYTES
from wardwright.model.site import Site
from wardwright.model.validation import sound
from wardwright.store.texts import read_text, write_text


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
    write_text(path, write_document(site), fault=DocumentError)


def _text_of(path: Path) -> str:
    return read_text(
        path,
        "document",
        fault=DocumentError,
        largest_bytes=LARGEST_DOCUMENT_BYTES,
        cure="Give a site document; pictures and logs do not belong in it",
    )

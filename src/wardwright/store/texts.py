"""Plain text files: those that a user hands in (site documents, device sheets, notes), and how one is written."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from wardwright.errors import InputError, NotesError

LARGEST_NOTES_BYTES = 2_000_000
"""Notes longer than this are refused: a big house needs a few hundred lines. [bytes] (assumption)"""


def read_notes_text(path: Path) -> str:
    """Read a file of notes as text.

    Parameters
    ----------
    path : Path
        Where it is.

    Returns
    -------
    str
        Its text, a mark of byte order at its head taken off.

    Raises
    ------
    NotesError
        If it cannot be read, is too long, or is not text.
    """
    cure = "Give notes, one fact a line; pictures and logs do not belong in them"
    text = read_text(path, "file of notes", fault=NotesError, largest_bytes=LARGEST_NOTES_BYTES, cure=cure)
    if "\0" in text:
        raise NotesError("this is not text", where=str(path), cure="Give a file of notes, one fact a line")
    return text.removeprefix("\ufeff")


def read_text(path: Path, what: str, *, fault: type[InputError], largest_bytes: int, cure: str) -> str:
    """Read a file as text, up to a size.

    Parameters
    ----------
    path : Path
        Where it is.
    what : str
        What it should be, as it stands in the message when it is too long.
    fault : type of InputError
        What is raised.
    largest_bytes : int
        How long it may be.
    cure : str
        What to do when it is too long.

    Returns
    -------
    str
        Its text.

    Raises
    ------
    InputError
        Of the kind `fault`, if it cannot be read, is too long, or is not text.
    """
    try:
        if path.stat().st_size > largest_bytes:
            length = f"{largest_bytes // 1_000_000} MB"
            raise fault(f"the {what} is longer than {length}", where=str(path), cure=cure)
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        raise fault("this is not text in UTF-8", where=str(path), cure="Save it as UTF-8 text") from None
    except OSError as trouble:
        raise fault(
            f"the file cannot be read ({trouble.strerror})",
            where=str(path),
            cure="Check the path and who may read it",
        ) from None


def write_text(path: Path, text: str, *, fault: type[InputError]) -> None:
    """Write a text in UTF-8, whole or not at all; else as `write_bytes`."""
    write_bytes(path, text.encode("utf-8"), fault=fault)


def write_bytes(path: Path, content: bytes, *, fault: type[InputError]) -> None:
    """Write a file, whole or not at all; only its owner may read it.

    Parameters
    ----------
    path : Path
        Where to.
    content : bytes
        What to write.
    fault : type of InputError
        What is raised.

    Raises
    ------
    InputError
        Of the kind `fault`, if it cannot be written; what stood there before is left as it was.
    """
    try:
        # Made with mode 0600: what is written tells how to get into somebody's home.
        handle, draft = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".part")
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(content)
                file.flush()
                os.fsync(file.fileno())
            Path(draft).replace(path)
        except BaseException:
            Path(draft).unlink(missing_ok=True)
            raise
        settle(path.parent)
    except OSError as trouble:
        raise fault(
            f"the file cannot be written ({trouble.strerror})",
            where=str(path),
            cure="Check that the folder exists, has room and may be written to",
        ) from None


def settle(folder: Path) -> None:
    """Have the folder's own entry reach the disk, where the system can do that."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)

"""Plain text files that a user hands in, such as notes."""

from __future__ import annotations

from pathlib import Path

from wardwright.errors import NotesError

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
    try:
        if path.stat().st_size > LARGEST_NOTES_BYTES:
            raise NotesError(
                f"the notes are longer than {LARGEST_NOTES_BYTES // 1_000_000} MB",
                where=str(path),
                cure="Give notes, one fact a line; pictures and logs do not belong in them",
            )
        text = path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise NotesError("this is not text in UTF-8", where=str(path), cure="Save it as UTF-8 text") from None
    except OSError as fault:
        raise NotesError(
            f"the file cannot be read ({fault.strerror})",
            where=str(path),
            cure="Check the path and who may read it",
        ) from None
    if "\0" in text:
        raise NotesError("this is not text", where=str(path), cure="Give a file of notes, one fact a line")
    return text

"""Papers on the disk: a folder of files that is written whole or not at all."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Mapping
from pathlib import Path

from wardwright.errors import InputError


def write_folder(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write files into a folder; only their owner may read them.

    All are written beside their places first and put there only when every one is whole: a fault before that
    leaves what stood there as it was. Other files of the folder are left alone.

    Parameters
    ----------
    folder : Path
        Where to; made, with the folders above it, if it is not there.
    files : mapping of str to bytes
        Name and content of each.

    Raises
    ------
    InputError
        If something cannot be written.
    """
    drafts: dict[Path, Path] = {}
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, content in files.items():
            drafts[folder / name] = draft_of(folder, name, content)
        for place, draft in drafts.items():
            draft.replace(place)
    except OSError as fault:
        raise InputError(
            f"the papers cannot be written ({fault.strerror})",
            where=str(folder),
            cure="Check that this is a folder, has room and may be written to",
        ) from None
    finally:
        for draft in drafts.values():
            draft.unlink(missing_ok=True)


def draft_of(folder: Path, name: str, content: bytes) -> Path:
    """Write a file beside its place, whole and on the disk; where the draft is."""
    handle, path = tempfile.mkstemp(dir=folder, prefix=f".{name}.", suffix=".part")
    draft = Path(path)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
    except BaseException:
        draft.unlink(missing_ok=True)
        raise
    return draft

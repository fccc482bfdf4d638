"""The copies of a site's papers on the disk: written together, and only over what this program wrote."""

from __future__ import annotations

import hashlib
import json
import tempfile
from collections.abc import Iterable, Mapping
from pathlib import Path

from wardwright.errors import InputError
from wardwright.store.folders import draft_of

LIST = "written-by-wardwright.json"
"""Kept above the folders: which files were written, and what of each, so that no file of anybody else is lost."""
_CURE = "Check that this is a folder, has room and may be written to"


def check_place(folder: Path, names: Iterable[str]) -> None:
    """Refuse a place where papers cannot go, before anything is worked out.

    Parameters
    ----------
    folder : Path
        Where to; it need not be there yet.
    names : iterable of str
        The files that will be written, each by its path in the folder.

    Raises
    ------
    InputError
        If it is no folder, cannot be written to, or holds a file of such a name that is not ours.
    """
    try:
        for place in sorted({folder, *((folder / name).parent for name in names)}):
            _check_folder(place)
    except OSError as fault:
        raise _refused(folder, fault) from None
    _check_ours(folder, names, _written(folder))


def write_copies(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write all papers, or leave all as they were; only their owner may read them.

    Parameters
    ----------
    folder : Path
        Where to; made, with the folders in it, if it is not there.
    files : mapping of str to bytes
        Path in the folder, and content. Ours of an earlier writing that are not among them go.

    Raises
    ------
    InputError
        If something cannot be written, or a file that is not ours stands in the way.
    """
    before = _written(folder)
    _check_ours(folder, files, before)
    now = {name: [_mark(content)] for name, content in files.items()}
    drafts: dict[Path, Path] = {}
    try:
        for name, content in files.items():
            place = folder / name
            place.parent.mkdir(parents=True, exist_ok=True)
            drafts[place] = draft_of(place.parent, place.name, content)
        # Until all are in place either content is ours: a plug pulled between must not lock the folder.
        _write_list(folder, {name: before.get(name, []) + now.get(name, []) for name in before | now})
        for place, draft in drafts.items():
            draft.replace(place)
        for name in before.keys() - now.keys():
            if _is_ours(folder / name, before[name]):
                (folder / name).unlink(missing_ok=True)
        _write_list(folder, now)
    except OSError as fault:
        raise _refused(folder, fault) from None
    finally:
        for draft in drafts.values():
            draft.unlink(missing_ok=True)


def _check_folder(place: Path) -> None:
    """Try whether something can be written where a folder is, or would be made."""
    there = place
    while not there.exists():
        there = there.parent
    with tempfile.TemporaryFile(dir=there):
        pass


def _check_ours(folder: Path, names: Iterable[str], written: Mapping[str, list[str]]) -> None:
    for name in names:
        place = folder / name
        if place.exists() and not _is_ours(place, written.get(name, [])):
            raise InputError(
                "this file was not written by this program, or has been changed since: it is not overwritten",
                where=str(place),
                cure="Move it away, or give another folder",
            )


def _is_ours(place: Path, marks: list[str]) -> bool:
    try:
        return place.is_file() and _mark(place.read_bytes()) in marks
    except OSError:
        return False


def _mark(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def _written(folder: Path) -> dict[str, list[str]]:
    """What an earlier writing left; nothing where its list is not there or cannot be read."""
    try:
        found = json.loads((folder / LIST).read_bytes())
    except (OSError, ValueError):
        return {}
    if not isinstance(found, dict):
        return {}
    return {
        name: [str(mark) for mark in marks]
        for name, marks in found.items()
        if isinstance(marks, list) and not Path(name).is_absolute() and ".." not in Path(name).parts
    }


def _write_list(folder: Path, written: Mapping[str, list[str]]) -> None:
    content = json.dumps(dict(sorted(written.items())), indent=1).encode() + b"\n"
    draft_of(folder, LIST, content).replace(folder / LIST)


def _refused(folder: Path, fault: OSError) -> InputError:
    return InputError(f"the papers cannot be written ({fault.strerror})", where=str(folder), cure=_CURE)

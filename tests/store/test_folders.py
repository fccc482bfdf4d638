from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from wardwright.errors import InputError
from wardwright.store.folders import write_folder


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_files_are_written_and_others_are_left(tmp_path: Path) -> None:
    folder = tmp_path / "papers" / "fitter"
    write_folder(folder, {"page.html": b"one"})
    (folder / "my own.txt").write_text("kept", encoding="utf-8")
    write_folder(folder, {"page.html": b"two"})
    assert names(folder) == ["my own.txt", "page.html"]
    assert (folder / "page.html").read_bytes() == b"two"


@pytest.mark.skipif(os.name != "posix", reason="file rights are those of POSIX")
def test_only_the_owner_may_read_them(tmp_path: Path) -> None:
    write_folder(tmp_path, {"page.html": b"x"})
    assert stat.S_IMODE((tmp_path / "page.html").stat().st_mode) == 0o600


def test_a_fault_leaves_what_stood_there(tmp_path: Path) -> None:
    write_folder(tmp_path, {"page.html": b"old"})
    with pytest.raises(InputError, match="the papers cannot be written"):
        write_folder(tmp_path, {"page.html": b"new", "no/such/folder.svg": b"x"})
    assert names(tmp_path) == ["page.html"]
    assert (tmp_path / "page.html").read_bytes() == b"old"


def test_a_file_in_the_place_of_the_folder_is_named(tmp_path: Path) -> None:
    place = tmp_path / "papers"
    place.write_text("a file", encoding="utf-8")
    with pytest.raises(InputError) as fault:
        write_folder(place, {"page.html": b"x"})
    assert fault.value.where == str(place)
    assert place.read_text(encoding="utf-8") == "a file"

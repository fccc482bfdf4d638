from __future__ import annotations

import json
import os
import stat
from pathlib import Path

import pytest

from wardwright.errors import InputError
from wardwright.store.copies import LIST, check_place, write_copies

ONE = {"fitter/page.html": b"one", "open/labels.csv": b"one"}


def names(folder: Path) -> list[str]:
    return sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file())


def test_files_are_written_again_and_what_is_ours_and_over_goes(tmp_path: Path) -> None:
    write_copies(tmp_path, ONE | {"fitter/plan-loft.svg": b"l"})
    (tmp_path / "fitter" / "my own.txt").write_text("kept", encoding="utf-8")
    write_copies(tmp_path, {"fitter/page.html": b"two", "open/labels.csv": b"one"})
    assert names(tmp_path) == ["fitter/my own.txt", "fitter/page.html", "open/labels.csv", LIST]
    assert (tmp_path / "fitter" / "page.html").read_bytes() == b"two"


@pytest.mark.parametrize("by_whom", ["somebody else", "ours, then changed"])
def test_a_file_that_is_not_ours_is_not_overwritten(tmp_path: Path, by_whom: str) -> None:
    if by_whom == "ours, then changed":
        write_copies(tmp_path, ONE)
    place = tmp_path / "fitter" / "page.html"
    place.parent.mkdir(exist_ok=True)
    place.write_bytes(b"mine")
    before = {name: (tmp_path / name).read_bytes() for name in names(tmp_path)}
    for tried in (lambda: check_place(tmp_path, ONE), lambda: write_copies(tmp_path, ONE)):
        with pytest.raises(InputError, match="not written by this program, or has been changed") as fault:
            tried()
        assert fault.value.where == str(place)
    assert {name: (tmp_path / name).read_bytes() for name in names(tmp_path)} == before


def test_one_of_ours_that_was_changed_and_is_over_is_left(tmp_path: Path) -> None:
    write_copies(tmp_path, ONE | {"fitter/old.csv": b"o"})
    (tmp_path / "fitter" / "old.csv").write_bytes(b"readings of mine")
    write_copies(tmp_path, ONE)
    assert (tmp_path / "fitter" / "old.csv").read_bytes() == b"readings of mine"


def test_a_fault_leaves_all_as_it_was(tmp_path: Path) -> None:
    write_copies(tmp_path, ONE)
    (tmp_path / "client").write_text("a file where a folder is to be", encoding="utf-8")
    before = {name: (tmp_path / name).read_bytes() for name in names(tmp_path)}
    with pytest.raises(InputError, match="the papers cannot be written"):
        write_copies(tmp_path, {"fitter/page.html": b"two", "client/paper.pdf": b"x"})
    assert {name: (tmp_path / name).read_bytes() for name in names(tmp_path)} == before


def test_a_plug_pulled_between_does_not_lock_the_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_copies(tmp_path, ONE)
    two = dict.fromkeys(ONE, b"two")
    real, count = Path.replace, 0

    def replace(self: Path, target: Path) -> Path:
        nonlocal count
        count += 1
        if count == 3:  # the list and one paper are in place, the other is not
            raise OSError(28, "No space left on device")
        return real(self, target)

    monkeypatch.setattr(Path, "replace", replace)
    with pytest.raises(InputError, match="No space left"):
        write_copies(tmp_path, two)
    monkeypatch.undo()
    assert {(tmp_path / name).read_bytes() for name in ONE} == {b"one", b"two"}
    write_copies(tmp_path, two)
    assert {(tmp_path / name).read_bytes() for name in ONE} == {b"two"}
    assert not [name for name in names(tmp_path) if name.endswith(".part")]


def test_a_file_in_the_place_of_the_folder_is_refused_beforehand(tmp_path: Path) -> None:
    place = tmp_path / "papers"
    place.write_text("a file", encoding="utf-8")
    with pytest.raises(InputError, match="the papers cannot be written"):
        check_place(place, ONE)
    with pytest.raises(InputError, match="the papers cannot be written"):
        check_place(place / "deeper", ONE)
    assert place.read_text(encoding="utf-8") == "a file"


def test_looking_makes_nothing(tmp_path: Path) -> None:
    check_place(tmp_path / "new" / "papers", ONE)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("content", ["", "[]", '{"../../outside": ["x"]}', '{"a": 1}', "not json"])
def test_a_list_that_makes_no_sense_makes_nothing_ours(tmp_path: Path, content: str) -> None:
    (tmp_path / LIST).write_text(content, encoding="utf-8")
    write_copies(tmp_path, ONE)
    assert set(json.loads((tmp_path / LIST).read_bytes())) == set(ONE)


@pytest.mark.skipif(os.name != "posix", reason="file rights are those of POSIX")
def test_only_the_owner_may_read_them(tmp_path: Path) -> None:
    write_copies(tmp_path, ONE)
    assert {stat.S_IMODE((tmp_path / name).stat().st_mode) for name in names(tmp_path)} == {0o600}

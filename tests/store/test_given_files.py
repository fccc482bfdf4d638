from __future__ import annotations

import os
from pathlib import Path

import pytest

from wardwright.errors import IntakeError
from wardwright.store.given_files import GivenFile, Receiving


def given(content: bytes, folder: Path, name: str = "house.Notes") -> GivenFile:
    receiving = Receiving(name, folder, largest_bytes=10_000)
    receiving.take(content)
    return receiving.given


def test_it_comes_in_piece_by_piece_and_has_no_name_on_the_disk(tmp_path: Path) -> None:
    one = given(b"\xef\xbb\xbfhouse", tmp_path)
    assert (one.ending, one.text("file of notes", largest_bytes=100)) == (".notes", "house")
    assert one.text("file of notes", largest_bytes=100) == "house"
    if os.name == "posix":
        assert list(tmp_path.iterdir()) == []
    one.close()


def test_too_long_a_file_is_refused_and_let_go(tmp_path: Path) -> None:
    receiving = Receiving("house.ifc", tmp_path, largest_bytes=2_000_000)
    receiving.take(bytes(2_000_000))
    with pytest.raises(IntakeError, match="longer than 2 MB"):
        receiving.take(b"x")
    assert receiving.given.content.closed


def test_a_full_disk_is_said(tmp_path: Path) -> None:
    receiving = Receiving("house.ifc", tmp_path, largest_bytes=100)
    receiving.given.content.close()
    if not Path("/dev/full").exists():
        pytest.skip("no device that is always full")
    with Path("/dev/full").open("wb", buffering=0) as full:
        receiving.given = GivenFile("house.ifc", full)
        with pytest.raises(IntakeError, match="cannot be taken in"):
            receiving.take(b"x")


@pytest.mark.parametrize(
    ("content", "said"),
    [(b"\xff\xfe", "not text in UTF-8"), (b"a\0b", "this is not text"), (b"x" * 101, "longer than")],
)
def test_what_is_no_text_is_said(tmp_path: Path, content: bytes, said: str) -> None:
    one = given(content, tmp_path)
    with pytest.raises(IntakeError, match=said) as caught:
        one.text("file of notes", largest_bytes=100)
    one.close()
    assert caught.value.where == "house.Notes"

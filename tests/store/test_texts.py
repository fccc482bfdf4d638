from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.errors import NotesError
from wardwright.store.texts import LARGEST_NOTES_BYTES, read_notes_text


def test_text_comes_back_as_written(tmp_path: Path) -> None:
    path = tmp_path / "notes.txt"
    path.write_bytes("\ufeffkitchen 3.2 x 4.1\nKüche 3 x 3\n".encode())
    assert read_notes_text(path) == "kitchen 3.2 x 4.1\nKüche 3 x 3\n"


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"K\xfcche 3 x 3", "not text in UTF-8"),
        (b"a\0b", "not text"),
        (b"x" * (LARGEST_NOTES_BYTES + 1), "longer than 2 MB"),
    ],
)
def test_what_is_no_text_is_refused_by_name(tmp_path: Path, content: bytes, said: str) -> None:
    path = tmp_path / "notes.txt"
    path.write_bytes(content)
    with pytest.raises(NotesError, match=said) as fault:
        read_notes_text(path)
    assert fault.value.where == str(path)
    assert fault.value.cure


def test_a_missing_file_and_a_folder_are_refused_by_name(tmp_path: Path) -> None:
    with pytest.raises(NotesError, match=r"none\.txt: the file cannot be read \(No such file"):
        read_notes_text(tmp_path / "none.txt")
    with pytest.raises(NotesError, match="the file cannot be read"):
        read_notes_text(tmp_path)

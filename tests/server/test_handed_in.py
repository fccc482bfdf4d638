from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.errors import IntakeError
from wardwright.server.handed_in import HELD, HandedInFiles
from wardwright.store.given_files import GivenFile, Receiving


def given(folder: Path) -> GivenFile:
    return Receiving("house.notes", folder, largest_bytes=10).given


def test_what_is_taken_out_is_not_there_until_it_is_put_back(tmp_path: Path) -> None:
    held = HandedInFiles(tmp_path)
    ident = held.put(given(tmp_path))
    one = held.take(ident)
    with pytest.raises(IntakeError, match="not here any more"):
        held.take(ident)
    assert held.put(one, ident) == ident
    held.drop(ident)
    held.drop(ident)
    assert one.content.closed


def test_the_oldest_makes_room_and_closing_lets_all_go(tmp_path: Path) -> None:
    held = HandedInFiles(tmp_path)
    files = [given(tmp_path) for _ in range(HELD + 1)]
    for one in files:
        held.put(one)
    assert [one.content.closed for one in files] == [True, *[False] * HELD]
    held.close()
    assert all(one.content.closed for one in files)

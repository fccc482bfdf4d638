from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from common.ifc_house import written
from structure.source_tree import ROOT
from wardwright.errors import IntakeError, Stopped
from wardwright.store.bringing_in import LARGEST_BY_ENDING, Wish, bring_in, contents_of, largest_of
from wardwright.store.catalogue import load_catalogue
from wardwright.store.given_files import GivenFile, Receiving
from wardwright.store.samples import read_sample

NOTES = (ROOT / "tests" / "bad_inputs" / "good.notes").read_bytes()


class Watched:
    """Notes each step, and wants no more after some of them."""

    def __init__(self, most: int = 99) -> None:
        self.said: list[str] = []
        self.most = most

    def is_stopped(self) -> bool:
        return len(self.said) >= self.most

    def step(self, doing: str) -> None:
        if self.is_stopped():
            raise Stopped("it was stopped")
        self.said.append(doing)


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    yield tmp_path
    assert list(tmp_path.iterdir()) == []


def given(folder: Path, name: str, content: bytes) -> GivenFile:
    receiving = Receiving(name, folder, largest_bytes=1_000_000)
    receiving.take(content)
    return receiving.given


def test_each_step_is_said_in_order(folder: Path) -> None:
    file, notes = given(folder, "a.ifc", written()), given(folder, "kit.txt", b"person lodger\n")
    watched = Watched()
    house = bring_in(Wish(file, notes, "A"), load_catalogue(), watched)
    assert watched.said == [
        "reading a.ifc",
        "adding kit.txt",
        "looking whether it fits together",
        "looking for what is worth adding",
    ]
    assert [one.id for one in house.site.people] == ["lodger"]
    assert house.report is not None
    assert house.worth_adding
    file.close()
    notes.close()


@pytest.mark.parametrize("most", [0, 1, 2, 3])
def test_it_is_left_after_any_step(folder: Path, most: int) -> None:
    file, notes = given(folder, "a.notes", NOTES), given(folder, "kit.txt", b"person lodger\n")
    with pytest.raises(Stopped):
        bring_in(Wish(file, notes), load_catalogue(), Watched(most))
    file.close()
    notes.close()


def test_notes_are_text_by_their_name_too(folder: Path) -> None:
    file, notes = given(folder, "a.notes", NOTES), given(folder, "kit.ifc", b"")
    with pytest.raises(IntakeError, match="these are no notes"):
        bring_in(Wish(file, notes), load_catalogue(), Watched())
    file.close()
    notes.close()


def test_what_is_no_house_is_told_by_its_name() -> None:
    assert all(largest_of(f"House{ending.upper()}") == size for ending, size in LARGEST_BY_ENDING.items())
    for name in ("house.rvt", "house", "x" * 300 + ".ifc"):
        with pytest.raises(IntakeError, match="neither a building file"):
            largest_of(name)


def test_what_a_site_holds_is_counted_in_words() -> None:
    told = contents_of(read_sample("terrace"))
    assert told[0] == "2 storeys"
    assert not [one for one in told if one.startswith("0 ")]

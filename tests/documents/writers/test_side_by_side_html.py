"""The page of two states side by side."""

from __future__ import annotations

import re

from common.changed_pairs import CATALOGUE, detector_moved, house, state
from wardwright.documents.content.comparison import comparison
from wardwright.documents.content.side_by_side import side_by_side
from wardwright.documents.content.signed import ProgramTold
from wardwright.documents.content.wording import COPY_WARNING
from wardwright.documents.writers.side_by_side_html import write_side_by_side
from wardwright.questions.changes_since import changes_since


def written(names: tuple[str, str] = ("before", "after"), program: ProgramTold | None = None) -> str:
    before, after = state(house()), state(detector_moved())
    found = changes_since(before, after, CATALOGUE)
    told = comparison(before, after, CATALOGUE, found=found)
    return write_side_by_side(
        side_by_side(before, after, CATALOGUE, found=found, told=told, names=names, program=program)
    )


def test_it_is_the_fitters_own_and_asks_nothing_of_the_network() -> None:
    text = written()
    assert COPY_WARNING in text
    assert not re.search(r"(?:src|href)=|<script|@import|url\(", text.replace('href="#', ""))


def test_every_part_is_there_and_names_are_escaped() -> None:
    text = written(("<before>", "after & later"))
    for heading in ("What each is worth", "What changed in the house", "Answers", "Rules", "Tests to repeat"):
        assert f"<h2>{heading}</h2>" in text
    assert "&lt;before&gt;" in text
    assert "<before>" not in text
    assert "after &amp; later" in text
    assert "study movement" in text


def test_the_program_has_its_part_only_where_something_was_signed() -> None:
    assert "in the program" not in written()
    text = written(program=ProgramTold(what=("figure 'pace' (pace): value 2, before 1",), answers=()))
    assert "What changed in the program and its rows of data" in text
    assert "value 2, before 1" in text


def test_the_same_states_give_the_same_page_and_no_id_stands_twice() -> None:
    text = written()
    assert text == written()
    ids = re.findall(r'\bid="([^"]+)"', text)
    assert len(ids) == len(set(ids))

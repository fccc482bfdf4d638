"""The climb to an upper opening from the side."""

from __future__ import annotations

from wardwright.documents.content.climb_side import climb_side
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def test_only_a_climb_over_something_is_drawn() -> None:
    answers = {one.subject_id: one for one in ask(read_sample("terrace"), load_catalogue(), [14])}
    drawing = climb_side(answers["bathroom-window"], key="k")
    assert drawing is not None
    assert "Neighbour's back addition 2.6" in drawing.description
    assert climb_side(answers["landing-window"], key="k") is None


def test_no_other_question_has_one() -> None:
    for answer in ask(read_sample("one-room"), load_catalogue(), [1, 5]):
        assert climb_side(answer, key="k") is None

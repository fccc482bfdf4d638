"""The figures that answers stand on."""

from __future__ import annotations

import pytest

from wardwright.model.catalogue import Catalogue
from wardwright.questions.figures_used import figures_used
from wardwright.questions.table import QUESTIONS, ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def shifted(ids: frozenset[str]) -> Catalogue:
    """The catalogue with these figures a third larger."""
    rows = tuple(
        row.model_copy(update={"value": row.value * 1.33, "low": row.low * 1.33, "high": row.high * 1.33})
        if row.id in ids
        else row
        for row in CATALOGUE.figures
    )
    return CATALOGUE.model_copy(update={"figures": rows})


@pytest.mark.parametrize("number", [question.number for question in QUESTIONS])
def test_no_figure_that_is_left_out_moves_an_answer(number: int) -> None:
    site = read_sample("terrace")
    used = figures_used(site, CATALOGUE, numbers=[number])
    others = frozenset(row.id for row in CATALOGUE.figures) - used
    assert ask(site, shifted(others), [number]) == ask(site, CATALOGUE, [number])


def test_a_figure_that_is_named_moves_an_answer() -> None:
    """The proof above can fail: a figure of the race left out would be seen."""
    site = read_sample("one-room")
    named = frozenset({"break-control-unit"})
    assert named <= figures_used(site, CATALOGUE, numbers=[1])
    assert ask(site, shifted(named), [1]) != ask(site, CATALOGUE, [1])


def test_locks_that_the_house_has_not_are_left_out() -> None:
    used = figures_used(read_sample("terrace"), CATALOGUE, numbers=[1, 5, 11])
    assert "force-rc3" not in used
    assert {"force-plain", "break-glass", "pace-hurried"} <= used


def test_where_nothing_was_asked_none_is_used_and_an_unknown_question_may_use_all() -> None:
    site = read_sample("one-room")
    assert figures_used(site, CATALOGUE, numbers=[]) == frozenset()
    assert figures_used(site, CATALOGUE, numbers=[999]) == {row.id for row in CATALOGUE.figures}

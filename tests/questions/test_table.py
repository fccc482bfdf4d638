"""The table of questions, and the order of answers."""

from __future__ import annotations

import pytest

from common.turning import quarter_turned
from wardwright.errors import InputError
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.table import QUESTIONS, ask, ask_in_hand
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names

CATALOGUE = load_catalogue()
LISTS = (
    "storeys", "spaces", "walls", "openings", "open_edges", "stairs", "fixtures", "outlets", "people", "targets",
    "devices", "zones",
)  # fmt: skip


def numbers(answers: tuple[Answer, ...]) -> dict[tuple[int, str], tuple[object, ...]]:
    return {
        (a.question, a.subject_id): (
            a.verdict,
            None if a.estimate is None else (a.estimate.value, a.estimate.low, a.estimate.high),
            a.reason,
            a.chance,
        )
        for a in answers
    }


def test_the_table_is_in_the_order_of_its_numbers() -> None:
    found = [question.number for question in QUESTIONS]
    assert found == sorted(set(found)) == [1, 2, 3, 4, 5, 6, 8, 9, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20]


def test_a_question_not_in_the_table_is_refused() -> None:
    with pytest.raises(InputError, match="question 99 is not answered by this version"):
        ask(read_sample("one-room"), CATALOGUE, [99])


@pytest.mark.parametrize("name", sample_names())
def test_every_sample_is_answered_worst_first(name: str) -> None:
    answers = ask(read_sample(name), CATALOGUE)
    order = ["bad", "thin", "unknown", "good"]
    ranks = [order.index(answer.verdict) for answer in answers]
    assert ranks == sorted(ranks)
    assert {answer.question for answer in answers} == {question.number for question in QUESTIONS}
    for answer in answers:
        assert (answer.estimate is None) == (answer.reason is not None)
        if answer.estimate is not None:
            assert answer.estimate.low <= answer.estimate.value <= answer.estimate.high


def test_the_order_of_lists_changes_nothing() -> None:
    site = read_sample("terrace")
    other = site.model_copy(update={name: tuple(reversed(getattr(site, name))) for name in LISTS})
    assert numbers(ask(site, CATALOGUE)) == numbers(ask(other, CATALOGUE))


def test_a_quarter_turn_changes_no_race_and_no_area() -> None:
    site = read_sample("terrace")
    one, two = numbers(ask(site, CATALOGUE)), numbers(ask(quarter_turned(site), CATALOGUE))
    assert one.keys() == two.keys()
    for key, (verdict, values, _reason, _chance) in one.items():
        other_verdict, other_values = two[key][:2]
        assert verdict == other_verdict, key
        if values is not None:
            assert other_values == pytest.approx(values, abs=1e-9), key


def test_asking_changes_nothing_in_the_site() -> None:
    site = read_sample("terrace")
    before = site.model_dump_json()
    ask(site, CATALOGUE)
    assert site.model_dump_json() == before
    assert isinstance(site, Site)


IN_HAND = [question.number for question in QUESTIONS if question.in_hand is not None]


@pytest.mark.parametrize("name", sample_names())
def test_what_is_asked_in_hand_says_the_same_but_for_mends(name: str) -> None:
    site = read_sample(name)
    whole = {(one.question, one.subject_id): one for one in ask(site, CATALOGUE, IN_HAND)}
    quick = ask_in_hand(site, CATALOGUE)
    assert {(one.question, one.subject_id) for one in quick} == whole.keys()
    for one in quick:
        assert one == whole[one.question, one.subject_id].model_copy(update={"mends": one.mends})

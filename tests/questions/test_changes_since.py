"""Question 20 where an earlier state is known."""

from __future__ import annotations

import pytest

from common.changed_pairs import CATALOGUE, dog_arrived, house, sofa_moved, state
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.changes_since import answer_since, changes_since
from wardwright.questions.compared import State
from wardwright.questions.table import ask
from wardwright.questions.what_changed import NUMBER
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def since(before: Site, after: Site) -> Answer:
    return answer_since(state(before), state(after), CATALOGUE, since="revision 1")


def part(answer: Answer, name: str) -> float:
    (found,) = (one.estimate for one in answer.parts if one.name == name)
    assert found is not None
    return found.value


def test_a_house_that_is_as_it_was_is_met_and_takes_no_time() -> None:
    found = since(house(), house())
    assert (found.question, found.verdict) == (NUMBER, "good")
    assert found.estimate is not None
    assert found.estimate.value == 0.0
    assert part(found, "tests to repeat") == 0


def test_tests_to_repeat_alone_make_it_thin() -> None:
    found = since(house(), dog_arrived())
    assert part(found, "tests to repeat") == 1
    assert found.notes[-1] == "stop 1: big dog: pet"
    assert (part(found, "answers that fail now") > 0) == any(
        note.startswith("fails now") for note in found.notes
    )


def test_what_fails_now_makes_it_not_met_and_is_named() -> None:
    found = since(house(), house(devices=(), zones=()))
    assert found.verdict == "bad"
    assert any("fails now: question" in note for note in found.notes)


@pytest.mark.parametrize("turn", [False, True])
def test_the_terrace_set_against_its_better_self(turn: bool) -> None:
    catalogue = load_catalogue([])
    names = ("terrace", "terrace-better")
    sites = [read_sample(name) for name in (reversed(names) if turn else names)]
    first, second = (State(one, ask(one, catalogue), check(one, catalogue)) for one in sites)
    found = changes_since(first, second, catalogue)
    front = next(
        one for one in found.answers if (one.latest.question, one.latest.subject_id) == (1, "front-door")
    )
    # The weak design loses the race through the front door; the better one does not.
    assert (front.fails_now, front.fails_no_more) == (turn, not turn)


def test_question_twenty_is_not_held_against_itself() -> None:
    found = changes_since(state(house()), state(sofa_moved()), CATALOGUE)
    assert all(one.latest.question != NUMBER for one in found.answers)

from __future__ import annotations

from wardwright.documents.content.comparison import comparison
from wardwright.questions.changes_since import changes_since
from wardwright.questions.compared import State
from wardwright.questions.table import ask
from wardwright.questions.what_changed import NUMBER
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def state(name: str) -> State:
    site = read_sample(name)
    return State(site, ask(site, CATALOGUE), check(site, CATALOGUE))


BEFORE, AFTER = state("terrace"), state("terrace-better")
FOUND = comparison(BEFORE, AFTER, CATALOGUE, found=changes_since(BEFORE, AFTER, CATALOGUE))


def test_what_grew_worse_stands_first_and_amounts_have_their_sign() -> None:
    courses = [one.course for one in FOUND.answers]
    assert courses.index("worse") < courses.index("new") < courses.index("better")
    front = next(one for one in FOUND.answers if one.key == "1/front-door")
    assert front.before is not None
    assert front.after is not None
    assert (front.before.verdict, front.after.verdict) == ("bad", "thin")
    assert front.by.startswith("+")
    walk = next(one for one in FOUND.answers if one.key == "5/garden-door")
    assert walk.course == "better"
    assert walk.by.startswith("\u2212")


def test_every_answer_is_either_told_or_counted_as_the_same() -> None:
    assert FOUND.same + sum(one.after is not None for one in FOUND.answers) == len(
        [one for one in AFTER.answers if one.question != NUMBER]
    )
    assert len({one.key for one in FOUND.answers}) == len(FOUND.answers)


def test_what_reads_as_it_did_is_not_told() -> None:
    assert all(one.before != one.after for one in FOUND.answers)
    nothing = changes_since(BEFORE, BEFORE, CATALOGUE)
    alike = comparison(BEFORE, BEFORE, CATALOGUE, found=nothing)
    assert (alike.changes, alike.answers, alike.findings) == ((), (), ())
    assert alike.same == len([one for one in BEFORE.answers if one.question != NUMBER])


def test_findings_that_went_keep_the_name_that_their_subject_had() -> None:
    went = {(one.code, one.subject) for one in FOUND.findings if one.course == "went"}
    assert ("CTL101", "Ground hall control unit") in went
    assert all(one.message.endswith(".") for one in FOUND.findings)


def test_what_fails_now_or_no_more_is_marked_and_tests_are_told_in_order() -> None:
    marked = {one.key: one.fails for one in FOUND.answers}
    assert marked["1/front-door"] == "no more"
    assert set(marked.values()) == {"now", "no more", ""}
    assert [stop.number for stop in FOUND.tests.stops] == list(range(1, len(FOUND.tests.stops) + 1))


def test_a_number_within_the_range_that_it_had_is_marked_so() -> None:
    assert {one.is_beyond for one in FOUND.answers} == {True, False}
    assert all(one.is_beyond for one in FOUND.answers if one.fails)

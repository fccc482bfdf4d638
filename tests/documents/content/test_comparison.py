from __future__ import annotations

from wardwright.documents.content.comparison import State, comparison
from wardwright.questions.table import ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def state(name: str) -> State:
    site = read_sample(name)
    return State(site, ask(site, CATALOGUE), check(site, CATALOGUE))


BEFORE, AFTER = state("terrace"), state("terrace-better")
FOUND = comparison(BEFORE, AFTER, CATALOGUE)


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
    assert FOUND.same + sum(one.after is not None for one in FOUND.answers) == len(AFTER.answers)
    assert len({one.key for one in FOUND.answers}) == len(FOUND.answers)


def test_what_reads_as_it_did_is_not_told() -> None:
    assert all(one.before != one.after for one in FOUND.answers)
    alike = comparison(BEFORE, BEFORE, CATALOGUE)
    assert (alike.changes, alike.answers, alike.findings) == ((), (), ())
    assert alike.same == len(BEFORE.answers)


def test_findings_that_went_keep_the_name_that_their_subject_had() -> None:
    went = {(one.code, one.subject) for one in FOUND.findings if one.course == "went"}
    assert ("CTL101", "Ground hall control unit") in went
    assert all(one.message.endswith(".") for one in FOUND.findings)

from __future__ import annotations

from wardwright.documents.content.signed import different_answers
from wardwright.model.edits import OPERATION, edited
from wardwright.questions.as_signed import Difference, by_key, compared
from wardwright.questions.table import ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

GONE = (OPERATION.validate_python({"do": "remove", "of": "devices", "id": "hall-movement"}),)


def test_what_differs_is_told_with_what_it_was_and_is() -> None:
    then, catalogue = read_sample("terrace"), load_catalogue()
    now = edited(then, GONE)
    before, after = by_key(ask(then, catalogue)), by_key(ask(now, catalogue))
    told = different_answers(compared(before, before, after), catalogue, then=then, now=now)
    assert {one.cause for one in told} == {"house"}
    gone = next(one for one in told if one.key == "11/hall-movement")
    assert gone.title.startswith("What it sees: ")
    assert gone.today == "not there"
    race = next(one for one in told if one.key.startswith("1/"))
    assert race.was.startswith(("met: ", "thin: ", "not met: ", "not known: "))
    assert race.was != race.today


def test_findings_are_named_after_their_things_gone_or_not() -> None:
    then, catalogue = read_sample("terrace"), load_catalogue()
    now = edited(then, GONE)
    before, after = by_key(check(then, catalogue)), by_key(check(now, catalogue))
    told = different_answers(compared(before, before, after), catalogue, then=then, now=now)
    about_it = [one for one in told if one.key.endswith("/hall-movement")]
    assert about_it
    assert all(one.today == "not there" and "hall-movement" not in one.title for one in about_it)


def test_an_older_form_is_said_and_is_not_called_absent() -> None:
    then, catalogue = read_sample("terrace"), load_catalogue()
    answer = ask(then, catalogue)[0]
    difference = Difference("1/x", None, answer, answer, "program")
    (told,) = different_answers((difference,), catalogue, then=then, now=then)
    assert told.was == "kept in an older form"

from __future__ import annotations

import json

import pytest

from wardwright.cli.ask import answer_row
from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main
from wardwright.model.estimate import Driver, Estimate
from wardwright.questions.answer import Answer

PACE = Driver(name="intruder's pace", swing=4.2, basis="default")
TIME = Estimate(value=12.3, low=9.1, high=16.0, unit="s", drivers=(PACE,), basis="told")
KNOWN = Answer(
    question=1,
    subject="kitchen window",
    subject_id="window-2",
    measure="time in hand",
    estimate=TIME,
    verdict="thin",
)
UNKNOWN = Answer(
    question=1,
    subject="kitchen window",
    subject_id="window-2",
    measure="time in hand",
    estimate=None,
    reason="there is no control unit",
    verdict="unknown",
)
SHAPE = ["question", "subject", "value", "low", "high", "unit", "drivers", "basis", "reason"]
"""The keys that are promised, in their order."""


def test_a_row_has_the_promised_shape() -> None:
    row = answer_row(KNOWN)
    assert list(row)[: len(SHAPE)] == SHAPE
    assert {key: row[key] for key in SHAPE} == {
        "question": 1,
        "subject": "kitchen window",
        "value": 12.3,
        "low": 9.1,
        "high": 16.0,
        "unit": "s",
        "drivers": [{"name": "intruder's pace", "swing": 4.2, "basis": "default"}],
        "basis": "told",
        "reason": None,
    }


def test_what_could_not_be_computed_has_no_numbers_but_a_reason() -> None:
    row = answer_row(UNKNOWN)
    assert [row[key] for key in ("value", "low", "high", "unit", "basis")] == [None] * 5
    assert row["drivers"] == []
    assert row["reason"] == "there is no control unit"


def test_the_terrace_is_asked_as_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["ask", "sample:terrace", "--json"]) == FINE
    streams = capsys.readouterr()
    rows = json.loads(streams.out)["answers"]
    assert {row["question"] for row in rows} == {1, 5, 11}
    for row in rows:
        assert (row["value"] is None) == (row["reason"] is not None)
        if row["value"] is not None:
            assert row["low"] <= row["value"] <= row["high"]
    assert streams.err == ""


def test_only_the_questions_asked_are_answered(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["ask", "sample:room", "11", "--json"]) == FINE
    assert {row["question"] for row in json.loads(capsys.readouterr().out)["answers"]} == {11}


def test_a_question_that_is_not_there_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["ask", "sample:room", "99"]) == BAD_INPUT
    streams = capsys.readouterr()
    assert "question 99 is not answered by this version" in streams.err
    assert streams.out == ""


def test_answers_are_printed_for_people(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["ask", "sample:terrace", "1"]) == FINE
    assert "front door" in capsys.readouterr().out.lower()

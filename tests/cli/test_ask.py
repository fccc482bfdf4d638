from __future__ import annotations

import json
import sys

import pytest

from wardwright.cli.ask import ASKED
from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main
from wardwright.questions import table
from wardwright.questions.answer import Answer

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


@pytest.fixture(scope="module")
def rows() -> list[dict[str, object]]:
    with pytest.MonkeyPatch.context() as patch:
        said: list[str] = []
        patch.setattr("builtins.print", lambda *words, **_: said.extend(map(str, words)))
        assert main(["ask", "sample:terrace", "--json"]) == FINE
    return json.loads("".join(said))["answers"]


def test_a_row_has_the_promised_shape(rows: list[dict[str, object]]) -> None:
    for row in rows:
        assert list(row)[: len(SHAPE)] == SHAPE
        assert all(set(driver) == {"name", "swing", "basis"} for driver in row["drivers"])


def test_the_terrace_answers_all_three_questions_with_ranges(rows: list[dict[str, object]]) -> None:
    assert {row["question"] for row in rows} == {question.number for question in table.QUESTIONS}
    for row in rows:
        assert (row["value"] is None) == (row["reason"] is not None)
        if row["value"] is not None:
            assert row["low"] <= row["value"] <= row["high"]
            swings = [driver["swing"] for driver in row["drivers"]]
            assert swings == sorted(swings, reverse=True)


def test_what_could_not_be_computed_has_no_numbers_but_a_reason(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(table, "ask", lambda *_: (UNKNOWN,))
    assert main(["ask", "sample:one-room", "--json"]) == FINE
    (row,) = json.loads(capsys.readouterr().out)["answers"]
    assert [row[key] for key in ("value", "low", "high", "unit", "basis")] == [None] * 5
    assert (row["drivers"], row["reason"]) == ([], "there is no control unit")


def test_only_the_questions_asked_are_answered(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["ask", "sample:one-room", "11", "--json"]) == FINE
    streams = capsys.readouterr()
    assert {row["question"] for row in json.loads(streams.out)["answers"]} == {11}
    assert streams.err == ""


def test_a_question_that_is_not_there_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["ask", "sample:one-room", "99"]) == BAD_INPUT
    streams = capsys.readouterr()
    assert "question 99 is not answered by this version" in streams.err
    assert streams.out == ""


def test_answers_are_printed_for_people(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["ask", "sample:terrace", "1"]) == FINE
    assert "front door" in capsys.readouterr().out.lower().replace("-", " ")


def test_the_help_names_every_question() -> None:
    assert [number for number, _ in ASKED] == [one.number for one in table.QUESTIONS]


def test_a_word_is_no_question(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["ask", "sample:one-room", "one"]) == BAD_INPUT
    assert "'one' is not the number of a question" in capsys.readouterr().err


@pytest.mark.parametrize(("columns", "widest"), [("60", 60), ("10", 40), ("200", 100)])
def test_text_is_folded_to_a_narrow_terminal(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], columns: str, widest: int
) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True)
    for command in (["ask", "sample:terrace", "11"], ["check", "sample:terrace"], ["rule", "CON101"]):
        main(command)
        lines = capsys.readouterr().out.splitlines()
        assert max(len(line) for line in lines if line.startswith("  ")) <= widest

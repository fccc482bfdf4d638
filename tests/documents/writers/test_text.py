from __future__ import annotations

import json
from collections.abc import Callable

from wardwright.documents.writers.text import answers_json, answers_text, findings_text
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.rules.finding import Finding


def test_answers_read_as_they_did(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], kept: Callable[[str, str], None]
) -> None:
    text = answers_text(answers, site=site, catalogue=catalogue)
    assert text.isascii()
    kept("answers.txt", text)


def test_findings_read_as_they_did(
    site: Site, catalogue: Catalogue, findings: tuple[Finding, ...], kept: Callable[[str, str], None]
) -> None:
    text = findings_text(findings, site=site, catalogue=catalogue)
    assert text.isascii()
    kept("findings.txt", text)


def test_no_line_is_wider_than_a_terminal(answers: tuple[Answer, ...]) -> None:
    assert max(map(len, answers_text(answers).splitlines())) <= 100


def test_what_was_not_run_is_counted_even_when_nothing_is() -> None:
    assert findings_text(()) == "Findings: 0 must mend, 0 not run. What was not run has not passed.\n"


def test_nothing_to_answer_is_said() -> None:
    assert answers_text(()).startswith("There is nothing to answer")


def test_json_has_the_promised_keys(answers: tuple[Answer, ...]) -> None:
    data = json.loads(answers_json(answers))
    assert list(data) == ["answers"]
    first = data["answers"][0]
    promised = ["question", "subject", "value", "low", "high", "unit", "drivers", "basis", "reason"]
    assert list(first)[: len(promised)] == promised
    assert (first["question"], first["subject"], first["value"], first["unit"]) == (
        1,
        "front door",
        -29.4,
        "s",
    )
    assert list(first["drivers"][0]) == ["name", "swing", "basis"]
    assert first["reason"] is None


def test_json_gives_a_reason_in_place_of_a_number(answers: tuple[Answer, ...]) -> None:
    last = json.loads(answers_json(answers))["answers"][-1]
    assert last["value"] is last["low"] is last["high"] is last["unit"] is last["basis"] is None
    assert last["reason"] == "nothing would notice"


def test_json_is_not_rounded(answers: tuple[Answer, ...]) -> None:
    exact = answers[0].model_copy(
        update={"estimate": answers[0].estimate.model_copy(update={"value": 1 / 3})}
    )  # type: ignore[union-attr] # it has one
    assert json.loads(answers_json((exact,)))["answers"][0]["value"] == 1 / 3

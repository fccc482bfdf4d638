from __future__ import annotations

import json

import pytest

from wardwright.cli.check import left_over_text
from wardwright.cli.command import FINE, MUST_MEND
from wardwright.cli.main import main
from wardwright.model.needs import Accepted
from wardwright.rules import table
from wardwright.rules.finding import Finding, Severity


def finding(severity: Severity) -> Finding:
    return Finding(
        code="MOV101",
        rule="movement-detector-above-hot-thing",
        severity=severity,
        subject="pir-1",
        message="the hall detector hangs above a radiator",
        cure="Move it 1.2 m along the wall",
    )


@pytest.mark.parametrize(
    ("severities", "status", "strict"),
    [
        ((), FINE, FINE),
        (("advise", "check with the standard"), FINE, FINE),
        (("not run",), FINE, MUST_MEND),
        (("must mend",), MUST_MEND, MUST_MEND),
        (("advise", "not run", "must mend"), MUST_MEND, MUST_MEND),
    ],
)
def test_the_exit_status_follows_the_worst_finding(
    monkeypatch: pytest.MonkeyPatch, severities: tuple[Severity, ...], status: int, strict: int
) -> None:
    monkeypatch.setattr(table, "check", lambda *_: tuple(map(finding, severities)))
    assert main(["check", "sample:one-room"]) == status
    assert main(["check", "sample:one-room", "--strict"]) == strict
    assert main(["check", "sample:one-room", "--json"]) == status


def test_what_is_accepted_does_not_stop(monkeypatch: pytest.MonkeyPatch) -> None:
    lived_with = finding("must mend").model_copy(update={"accepted": "the owner wants it so"})
    monkeypatch.setattr(table, "check", lambda *_: (lived_with,))
    assert main(["check", "sample:one-room", "--strict"]) == FINE
    monkeypatch.setattr(table, "check", lambda *_: (lived_with, finding("must mend")))
    assert main(["check", "sample:one-room"]) == MUST_MEND


def test_an_acceptance_that_nothing_answers_to_is_named() -> None:
    gone = Accepted(rule="MOV103", subject="hall-movement", because="long gone")
    assert left_over_text(gone).startswith("Accepted, but not found: MOV103 hall-movement.")


def test_findings_as_json_are_whole(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(table, "check", lambda *_: (finding("must mend"),))
    main(["check", "sample:one-room", "--json"])
    (row,) = json.loads(capsys.readouterr().out)["findings"]
    assert row["code"] == "MOV101"
    assert row["severity"] == "must mend"
    assert row["cure"] == "Move it 1.2 m along the wall"


def test_the_terrace_has_something_to_mend(capsys: pytest.CaptureFixture[str]) -> None:
    """Its first design is weak on purpose."""
    assert main(["check", "sample:terrace"]) == MUST_MEND
    assert "must mend" in capsys.readouterr().out.lower()

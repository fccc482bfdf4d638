from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.cli.command import FINE
from wardwright.cli.demo import asked, checked
from wardwright.cli.main import main
from wardwright.documents.content.not_counted import counted
from wardwright.questions.table import ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def test_the_demo_does_the_main_job_and_says_where_to_look(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "demo"
    assert main(["demo", "-o", str(folder)]) == FINE
    said = capsys.readouterr().out
    page = folder / "fitter" / "page.html"
    assert page.is_file()
    assert str(page) in said
    for done in ("Brought in", "Asked it", "Checked it", "Drew it"):
        assert done in said
    assert len(said.splitlines()) < 40


def test_what_was_not_run_is_counted_apart_from_what_was_found() -> None:
    findings = check(read_sample("terrace"), load_catalogue())
    found = [one for one in findings if one.severity != "not run"]
    line = checked(findings).splitlines()[0]
    assert line.startswith(f"{len(found)} findings: ")
    not_run = {one.code for one in findings if one.severity == "not run"}
    assert f"; {len(not_run)} rules could not be run" in line


def test_notes_that_were_changed_are_kept(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    notes = tmp_path / "terrace.notes"
    text = 'house "Mine"\nstorey ground 2.4 high\nhall 2 x 3\ndoor hall south 0.9 wide, entry\n'
    notes.write_text(text, encoding="utf-8")
    assert main(["demo", "-o", str(tmp_path)]) == FINE
    assert notes.read_text(encoding="utf-8") == text
    said = capsys.readouterr().out
    assert "as you changed them" in said
    assert "Mine: 1 storey" in said


def test_what_is_not_counted_stands_apart_as_on_the_page() -> None:
    answers = ask(read_sample("terrace"), load_catalogue(), [1, 3, 4, 5, 11])
    line = asked(answers).splitlines()[0]
    assert line.startswith(f"{len(counted(answers))} answers: ")
    assert line.endswith("; 3 openings not counted as ways in")
    assert "not known" not in line

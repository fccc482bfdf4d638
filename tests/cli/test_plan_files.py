from __future__ import annotations

from pathlib import Path

import pytest

from common.fitted import text_of
from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main


@pytest.mark.parametrize(
    ("command", "says"), [(["fit-plan", "--quick"], "Plan of fitting"), (["test-plan"], "Walk-test plan")]
)
def test_a_plan_is_written_as_rows_or_as_a_paper(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], command: list[str], says: str
) -> None:
    for ending in (".csv", ".pdf"):
        place = tmp_path / f"plan{ending}"
        assert main([*command, "sample:one-room", "-o", str(place)]) == FINE
        text = text_of(place.name, place.read_bytes())
        assert (says in text) == (ending == ".pdf")
        assert place.stat().st_mode & 0o077 == 0
    assert capsys.readouterr().out


@pytest.mark.parametrize("command", ["fit-plan", "test-plan"])
def test_another_ending_is_refused_before_anything_is_worked_out(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], command: str
) -> None:
    place = tmp_path / "plan.doc"
    assert main([command, "sample:one-room", "-o", str(place)]) == BAD_INPUT
    assert ".csv or .pdf" in capsys.readouterr().err
    assert not place.exists()

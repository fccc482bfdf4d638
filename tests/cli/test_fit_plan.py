"""`wardwright fit-plan`."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main


def test_a_plan_is_printed_and_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "fit.csv"
    assert main(["fit-plan", "sample:one-room", "-o", str(out)]) == FINE
    said = capsys.readouterr().out
    assert "1. Walk the job" in said
    assert "May be moved" in said
    assert out.read_text(encoding="utf-8-sig").startswith("Turn,Stage,Device,Room")


def test_a_job_is_planned_at_its_newest_revision(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job = tmp_path / "house.job"
    assert main(["job", "new", "sample:one-room", str(job)]) == FINE
    capsys.readouterr()
    assert main(["fit-plan", str(job), "--quick", "--json"]) == FINE
    found = json.loads(capsys.readouterr().out)
    assert found["moves"] == []
    assert len(found["sheets"]) == 4


def test_a_house_without_devices_has_none(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    bare = tmp_path / "bare.json"
    text = '{"schema_version": 1, "name": "x", "storeys": [{"id": "g", "name": "g", "elevation_m": 0}]}'
    bare.write_text(text, encoding="utf-8")
    assert main(["fit-plan", str(bare)]) == BAD_INPUT
    assert "nothing is to be fitted" in capsys.readouterr().err

"""`wardwright test-plan`."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from wardwright.cli.command import FINE
from wardwright.cli.main import main


def test_a_plan_is_printed_and_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "tests.csv"
    assert main(["test-plan", "sample:one-room", "-o", str(out)]) == FINE
    assert "walk its edge, across and toward" in capsys.readouterr().out
    assert out.read_text(encoding="utf-8-sig").startswith("Stop,Storey,Walk there [s],Test,Of")


def test_json_has_the_round_and_the_walks(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["test-plan", "sample:one-room", "--json"]) == FINE
    found = json.loads(capsys.readouterr().out)
    assert found["round"]["stops"]
    assert {walk["expected"] for walk in found["walks"]} >= {"notices", "stays quiet"}

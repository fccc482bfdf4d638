"""`wardwright test-plan`."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from wardwright.cli.command import FINE
from wardwright.cli.main import main
from wardwright.store.jobs.opening import new_job
from wardwright.store.jobs.results import NewResult, write_down
from wardwright.store.samples import read_sample


def test_a_plan_is_printed_and_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "tests.csv"
    assert main(["test-plan", "sample:one-room", "-o", str(out)]) == FINE
    assert "walk its edge, across and toward" in capsys.readouterr().out
    assert out.read_text(encoding="utf-8-sig").startswith("Stop,Storey,Walk there [s],Test,Of")


def test_what_was_written_down_in_a_job_stands_in_its_plan(tmp_path: Path) -> None:
    out = tmp_path / "tests.csv"
    with new_job(tmp_path / "a.job", read_sample("one-room")) as job:
        device = job.site().devices[0].id
        new = NewResult("a", "prove", f"operation/{device}", "passed", 1, "Sam", remark="clicks twice")
        write_down(job, new)
    assert main(["test-plan", str(tmp_path / "a.job"), "-o", str(out)]) == FINE
    rows = [row for row in out.read_text(encoding="utf-8-sig").splitlines() if "clicks twice" in row]
    assert len(rows) == 1
    assert "passed; clicks twice,Sam,20" in rows[0]
    assert main(["test-plan", str(tmp_path / "a.job"), "-o", str(tmp_path / "tests.pdf")]) == FINE


def test_json_has_the_round_and_the_walks(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["test-plan", "sample:one-room", "--json"]) == FINE
    found = json.loads(capsys.readouterr().out)
    assert found["round"]["stops"]
    assert {walk["expected"] for walk in found["walks"]} >= {"notices", "stays quiet"}

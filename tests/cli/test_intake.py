from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.intake import brought_in
from wardwright.cli.main import main
from wardwright.intake.report import IntakeReport
from wardwright.model.fabric import Storey
from wardwright.model.site import Site

HUT = Site(name="hut", storeys=(Storey(id="ground", name="ground floor", elevation_m=0.0),))


def test_the_report_says_what_was_read_guessed_and_left_out() -> None:
    report = IntakeReport(
        source="hut.ifc", form="IFC4", read=("1 storey",), guessed=("sill heights",), left_out=("a roof",)
    )
    lines = brought_in(HUT, report).splitlines()
    assert lines[0] == "hut: 1 storey"
    assert [line for line in lines if line.endswith(":")] == ["Read:", "Guessed:", "Left out:"]
    assert {"  1. 1 storey", "  1. sill heights", "  1. a roof"} <= set(lines)


def test_a_missing_file_is_named_and_nothing_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in ("none.ifc", "none.txt"):
        assert main(["intake", str(tmp_path / name), "-o", str(tmp_path / "site.json")]) == BAD_INPUT
        assert name in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_notes_that_cannot_be_read_name_their_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    notes = tmp_path / "house.txt"
    notes.write_text("storey ground 0 2.4\nfrobnicate the hall\n", encoding="utf-8")
    assert main(["intake", str(notes), "-o", str(tmp_path / "site.json")]) == BAD_INPUT
    said = capsys.readouterr().err
    assert said.startswith(f"wardwright: {notes}")
    assert said.count("\n") == 1
    assert not (tmp_path / "site.json").exists()


def test_premises_go_with_a_building_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    notes = tmp_path / "house.txt"
    notes.write_text("", encoding="utf-8")
    assert main(["intake", str(notes), "--premises", "A", "-o", str(tmp_path / "site.json")]) == BAD_INPUT
    assert "--premises is for building files only" in capsys.readouterr().err


def test_a_broken_building_file_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    broken = tmp_path / "broken.ifc"
    broken.write_text("ISO-10303-21;\nHEADER;\nnot a building", encoding="utf-8")
    assert main(["intake", str(broken), "-o", str(tmp_path / "site.json")]) == BAD_INPUT
    assert "broken.ifc" in capsys.readouterr().err
    assert not (tmp_path / "site.json").exists()


@pytest.mark.given_data
def test_a_real_house_goes_through_the_whole_line(
    given: Callable[[str], Path], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The bare house has nobody and nothing in it: it still gets an answer to each question."""
    house, site = given("houses/AC20-FZK-Haus.ifc"), tmp_path / "fzk.json"
    assert main(["intake", str(house), "-o", str(site)]) == FINE
    said = capsys.readouterr().out
    for heading in ("Read:", "Guessed:", "Worth adding first:"):
        assert heading in said
    assert "\n  5. " in said.partition("Worth adding first:")[2]
    assert main(["ask", str(site), "--json"]) == FINE
    rows = json.loads(capsys.readouterr().out)["answers"]
    assert {row["question"] for row in rows} == {1, 5, 11}
    assert all(row["value"] is not None or row["reason"] for row in rows)

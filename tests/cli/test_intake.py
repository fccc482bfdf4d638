from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from common.dxf_plan import Wish, written
from wardwright.cli.command import BAD_INPUT, FINE, MUST_MEND
from wardwright.cli.intake import briefly, brought_in
from wardwright.cli.main import main
from wardwright.intake.report import IntakeReport
from wardwright.model.fabric import Storey
from wardwright.model.site import Site
from wardwright.questions.table import QUESTIONS
from wardwright.store import limited
from wardwright.store.samples import read_sample

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


@pytest.mark.parametrize("name", ["plan.dwg", "plan.PDF", "house.ifczip"])
def test_a_drawing_is_not_read_as_notes(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    (tmp_path / name).write_text("0\nSECTION\n", encoding="utf-8")
    assert main(["intake", str(tmp_path / name), "-o", str(tmp_path / "site.json")]) == BAD_INPUT
    assert (
        "Export the building as IFC or its plan as DXF, or describe the house in notes"
        in capsys.readouterr().err
    )


def test_a_drawing_comes_in_with_its_unit_found_or_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    plan, site = tmp_path / "plan.dxf", tmp_path / "site.json"
    plan.write_bytes(written(Wish(header="mm")))
    assert main(["intake", str(plan), "-o", str(site)]) == FINE
    assert "1. unit: inches, although the header says millimetres" in capsys.readouterr().out
    assert main(["intake", str(plan), "--unit", "inch", "-o", str(site)]) == FINE
    assert "1. unit: inches, as told; the header says millimetres" in capsys.readouterr().out
    assert main(["check", str(site)]) in (FINE, MUST_MEND)


def test_a_drawing_that_cannot_be_read_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    plan = tmp_path / "plan.dxf"
    plan.write_bytes(written(Wish(wall_layer="THINGS")))
    assert main(["intake", str(plan), "-o", str(tmp_path / "site.json")]) == BAD_INPUT
    said = capsys.readouterr().err
    assert said.startswith("wardwright: plan.dxf: no layer of it that holds lines is named for walls")
    assert said.count("\n") == 1
    assert not (tmp_path / "site.json").exists()


@pytest.mark.parametrize(("ending", "option"), [("ifc", "unit"), ("notes", "unit"), ("dxf", "premises")])
def test_options_that_say_nothing_of_a_form_are_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], ending: str, option: str
) -> None:
    house = tmp_path / f"house.{ending}"
    house.write_text("", encoding="utf-8")
    assert main(["intake", str(house), f"--{option}", "mm", "-o", str(tmp_path / "site.json")]) == BAD_INPUT
    assert f"--{option} is for " in capsys.readouterr().err


def test_a_site_document_needs_no_intake(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["intake", "site.json", "-o", "other.json"]) == BAD_INPUT
    assert "give it to ask, check or papers" in capsys.readouterr().err


def test_its_own_input_is_not_written_over(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    notes = tmp_path / "house.notes"
    notes.write_text("storey ground 2.4 high\nhall 2 x 3\n", encoding="utf-8")
    assert main(["intake", str(notes), "-o", str(notes)]) == BAD_INPUT
    assert "Name another file after -o" in capsys.readouterr().err
    assert notes.read_text(encoding="utf-8").startswith("storey")


def with_house(monkeypatch: pytest.MonkeyPatch, site: Site) -> None:
    report = IntakeReport(source="mill.ifc", form="IFC4", read=("a mill",), guessed=("its sails",))
    monkeypatch.setattr(limited, "read_ifc_limited", lambda *_: (site, report))


def test_what_would_be_refused_later_is_refused_at_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    room = read_sample("one-room")
    with_house(monkeypatch, room.model_copy(update={"walls": (*room.walls, room.walls[0])}))
    assert main(["intake", "mill.ifc", "-o", str(tmp_path / "site.json")]) == BAD_INPUT
    said = capsys.readouterr()
    assert said.err.startswith("wardwright: mill.ifc, ")
    assert said.out == ""
    assert list(tmp_path.iterdir()) == []


def test_small_imperfections_are_listed_briefly(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    room = read_sample("one-room")
    lone = room.place.model_copy(update={"latitude_deg": 51.5, "longitude_deg": None})
    with_house(monkeypatch, room.model_copy(update={"place": lone}))
    site = tmp_path / "site.json"
    assert main(["intake", "mill.ifc", "-o", str(site)]) == FINE
    assert "it stops no answer:\n  1. place: " in capsys.readouterr().out
    main(["check", str(site)])
    assert "\nNoted: 1 imperfection of the drawing, which stops no answer: place: " in capsys.readouterr().out
    main(["check", str(site), "--json"])
    (noted,) = json.loads(capsys.readouterr().out)["noted"]
    assert set(noted) == {"where", "what", "cure"}


def test_of_many_the_rest_is_counted() -> None:
    assert briefly(["a"] * 5) == ["a"] * 5
    assert briefly(["a"] * 7) == [*["a"] * 5, "and 2 more"]


def test_the_report_is_kept_for_the_papers(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    with_house(monkeypatch, read_sample("one-room"))
    site = tmp_path / "site.json"
    assert main(["intake", "mill.ifc", "-o", str(site)]) == FINE
    assert str(tmp_path / "site.report.json") in capsys.readouterr().out
    assert main(["papers", str(site), "-o", str(tmp_path)]) == FINE
    page = (tmp_path / "fitter" / "page.html").read_text(encoding="utf-8")
    assert "What the intake read from mill.ifc" in page
    assert "its sails" in page


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
    assert {row["question"] for row in rows} == {one.number for one in QUESTIONS}
    assert all(row["value"] is not None or row["reason"] for row in rows)

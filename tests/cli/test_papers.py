from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main


def test_each_class_of_copy_has_a_folder(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["papers", "sample:one-room", "-o", str(tmp_path / "papers")]) == FINE
    folders = {path.name: path for path in (tmp_path / "papers").iterdir() if path.is_dir()}
    assert set(folders) == {"fitter", "client-confidential", "open"}
    page = (folders["fitter"] / "page.html").read_text(encoding="utf-8")
    assert page.lower().startswith("<!doctype html>")
    assert page.rstrip().endswith("</html>")
    said = capsys.readouterr().out
    assert str(folders["fitter"] / "page.html") in said
    assert "how to get into the house" in said
    for folder in folders.values():
        assert [path.name for path in folder.iterdir() if path.name.startswith(".")] == []
        assert all(path.stat().st_size for path in folder.iterdir())
    plans = sorted(folders["fitter"].glob("plan-*.svg"))
    assert plans
    assert all(plan.read_bytes().rstrip().endswith(b"</svg>") for plan in plans)


def test_the_same_site_gives_the_same_bytes_on_the_same_day(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795000000")
    found = []
    for name in ("one", "two"):
        folder = tmp_path / name
        assert main(["papers", "sample:one-room", "-o", str(folder)]) == FINE
        paths = [path for path in sorted(folder.rglob("*")) if path.is_file()]
        found.append({path.relative_to(folder): path.read_bytes() for path in paths})
    assert len(found[0]) > 10
    assert found[0] == found[1]


def test_a_bad_folder_is_refused_before_anything_is_asked(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def never(*_: object) -> None:
        raise AssertionError

    monkeypatch.setattr("wardwright.questions.table.ask", never)
    place = tmp_path / "a-file"
    place.write_text("mine", encoding="utf-8")
    assert main(["papers", "sample:one-room", "-o", str(place)]) == BAD_INPUT
    assert "the papers cannot be written" in capsys.readouterr().err
    assert place.read_text(encoding="utf-8") == "mine"


def test_a_paper_that_was_changed_is_not_overwritten(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["papers", "sample:one-room", "-o", str(tmp_path)]) == FINE
    place = tmp_path / "fitter" / "devices.csv"
    place.write_bytes(place.read_bytes() + b"a reading\r\n")
    assert main(["papers", "sample:one-room", "-o", str(tmp_path)]) == BAD_INPUT
    assert str(place) in capsys.readouterr().err
    assert place.read_bytes().endswith(b"a reading\r\n")

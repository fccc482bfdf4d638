from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main


def test_the_fitter_gets_a_page_of_his_own(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["papers", "sample:one-room", "-o", str(tmp_path / "papers")]) == FINE
    folder = tmp_path / "papers" / "fitter"
    page = (folder / "page.html").read_text(encoding="utf-8")
    assert page.lower().startswith("<!doctype html>")
    assert page.rstrip().endswith("</html>")
    assert str(folder / "page.html") in capsys.readouterr().out
    assert [path.name for path in folder.iterdir() if path.name.startswith(".")] == []
    plans = sorted(folder.glob("plan-*.svg"))
    assert plans
    assert all(plan.read_bytes().rstrip().endswith(b"</svg>") for plan in plans)


def test_the_same_site_gives_the_same_bytes(tmp_path: Path) -> None:
    for name in ("one", "two"):
        assert main(["papers", "sample:one-room", "-o", str(tmp_path / name)]) == FINE
    pages = [(tmp_path / name / "fitter" / "page.html").read_bytes() for name in ("one", "two")]
    assert pages[0] == pages[1]


def test_where_it_cannot_write_it_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    place = tmp_path / "a-file"
    place.write_text("mine", encoding="utf-8")
    assert main(["papers", "sample:one-room", "-o", str(place)]) == BAD_INPUT
    assert "the papers cannot be written" in capsys.readouterr().err
    assert place.read_text(encoding="utf-8") == "mine"

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from wardwright.errors import DocumentError
from wardwright.intake.report import IntakeReport
from wardwright.store.reports import keep_report, kept_report, report_place

REPORT = IntakeReport(source="mill.ifc", form="IFC4", read=("2 sloped ceilings over Dachgeschoß",))


def test_what_is_kept_is_read_back(tmp_path: Path) -> None:
    site = tmp_path / "mill.json"
    assert kept_report(site) is None
    keep_report(site, REPORT)
    assert kept_report(site) == REPORT
    assert list(tmp_path.iterdir()) == [report_place(site)]


def test_the_report_of_an_earlier_house_goes(tmp_path: Path) -> None:
    site = tmp_path / "mill.json"
    keep_report(site, REPORT)
    keep_report(site, None)
    keep_report(site, None)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(os.name != "posix", reason="file modes are POSIX's")
def test_only_its_owner_may_read_it(tmp_path: Path) -> None:
    keep_report(tmp_path / "mill.json", REPORT)
    assert stat.S_IMODE((tmp_path / "mill.report.json").stat().st_mode) == 0o600


@pytest.mark.parametrize("text", ["", "{}", '{"source": "a", "form": "b", "code": 1}', "[1, 2"])
def test_what_is_no_report_is_said_with_its_cure(tmp_path: Path, text: str) -> None:
    (tmp_path / "mill.report.json").write_text(text, encoding="utf-8")
    with pytest.raises(DocumentError, match=r"mill\.report\.json: this is no report.*take this file away"):
        kept_report(tmp_path / "mill.json")


def test_one_that_cannot_be_taken_away_is_said(tmp_path: Path) -> None:
    (tmp_path / "mill.report.json").mkdir()
    with pytest.raises(DocumentError, match="cannot be taken away"):
        keep_report(tmp_path / "mill.json", None)

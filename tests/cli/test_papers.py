from __future__ import annotations

from pathlib import Path

import pypdfium2
import pytest

from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main
from wardwright.store.samples import read_sample
from wardwright.store.sites import write_site


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


def test_intruders_are_sent_in_for_the_fitters_copy_unless_none_are_wanted(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["papers", "sample:one-room", "-o", str(tmp_path / "a"), "--campaign", "300"]) == FINE
    assert "300 seeded intruders" in (tmp_path / "a" / "fitter" / "page.html").read_text(encoding="utf-8")
    assert (tmp_path / "a" / "fitter" / "campaign.pdf").is_file()
    assert main(["papers", "sample:one-room", "-o", str(tmp_path / "b"), "--campaign", "0"]) == FINE
    assert "seeded intruders" not in (tmp_path / "b" / "fitter" / "page.html").read_text(encoding="utf-8")
    assert not (tmp_path / "b" / "fitter" / "campaign.pdf").exists()
    capsys.readouterr()


def test_where_no_intruder_can_be_sent_in_it_is_said_why(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    site = read_sample("one-room")
    bare = site.model_copy(update={"devices": (), "zones": (), "targets": ()})
    write_site(tmp_path / "bare.json", bare)
    assert main(["papers", str(tmp_path / "bare.json"), "-o", str(tmp_path / "p")]) == FINE
    assert "No seeded intruders were sent in: " in capsys.readouterr().out
    assert not (tmp_path / "p" / "fitter" / "campaign.pdf").exists()


def test_a_quote_is_written_only_where_a_firm_offers_it(tmp_path: Path) -> None:
    plain, offered = tmp_path / "plain", tmp_path / "offered"
    few = ["--campaign", "0"]
    assert main(["papers", "sample:one-room", "-o", str(plain), *few]) == FINE
    assert not list(plain.rglob("quote*"))
    firm = ["--firm", "sample:example-alarms"]
    assert main(["papers", "sample:one-room", "-o", str(offered), *few, *firm]) == FINE
    assert (offered / "client-confidential" / "quote.pdf").read_bytes().startswith(b"%PDF")
    assert (offered / "fitter" / "quote-with-costs.xlsx").is_file()
    assert not list((offered / "open").glob("quote*"))


def test_the_size_of_the_pages_can_be_said(tmp_path: Path) -> None:
    sizes = []
    for size in ("a4", "letter"):
        folder = tmp_path / size
        order = ["papers", "sample:one-room", "-o", str(folder), "--paper", size, "--campaign", "0"]
        assert main(order) == FINE
        with pypdfium2.PdfDocument(folder / "open" / "guide.pdf") as book:
            sizes.append(round(book[0].get_size()[0]))
    assert sizes == [595, 612]

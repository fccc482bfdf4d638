"""`wardwright compare` at the command line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from wardwright import __version__
from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main
from wardwright.model.catalogue import Catalogue
from wardwright.model.edits import Edit
from wardwright.questions.as_signed import kept_form
from wardwright.questions.table import ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from wardwright.store.jobs.signatures import ToSign, digest_of, sign
from wardwright.store.samples import read_sample
from wardwright.store.sites import write_site


@pytest.fixture
def moved(tmp_path: Path) -> Path:
    site = read_sample("terrace")
    sofa = next(one for one in site.fixtures if one.id == "living-sofa")
    elsewhere = sofa.model_copy(update={"centre_m": (sofa.centre_m[0], sofa.centre_m[1] - 1.2)})
    fixtures = tuple(elsewhere if one.id == sofa.id else one for one in site.fixtures)
    path = tmp_path / "moved.json"
    write_site(path, site.model_copy(update={"fixtures": fixtures}))
    return path


def test_two_samples_are_named_without_more(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", "terrace", "terrace-better"]) == FINE
    out = capsys.readouterr().out
    assert "ANSWERS THAT FAIL NO MORE" in out
    assert "Front door: not met, -61 s -> thin" in out
    assert "TESTS TO REPEAT" in out


def test_a_site_document_is_held_against_a_sample(moved: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", "sample:terrace", str(moved), "--json"]) == FINE
    data = json.loads(capsys.readouterr().out)
    assert [one["thing"] for one in data["house"]] == ["Living sofa"]
    tests = {(one["about"], one["kind"]) for stop in data["tests"]["stops"] for one in stop["tests"]}
    assert ("living-movement", "view") in tests
    # It is in the night part: whoever gets up at night is to walk past it again.
    nights = {(one, "night trip") for one in ("father", "grandmother", "mother", "teenager")}
    assert nights <= tests
    assert {about for about, _ in tests - nights} <= {"living-movement", "dog"}
    assert data["tests"]["minutes"]["value"] > data["tests"]["walking"]["value"]


def test_the_same_house_twice_differs_in_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", "one-room", "one-room"]) == FINE
    out = capsys.readouterr().out
    assert "THE HOUSE is as it was" in out
    assert "no test needs to be repeated" in out


def test_revisions_of_a_job_are_compared(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "house.job"
    with new_job(path, read_sample("terrace")) as job:
        told = {"do": "tell", "of": "programme", "facts": {"entry_time_s": 45.0}}
        edit = {"id": "the-first", "author": "fitter", "base": 1, "operations": [told]}
        job.edit(Edit.model_validate(edit))
    assert main(["compare", str(path), "1", "--json"]) == FINE
    data = json.loads(capsys.readouterr().out)
    assert [one["thing"] for one in data["house"]] == ["the programme"]
    assert main(["compare", str(path), "2", "1"]) == FINE
    assert "house.job, revision 2 -> revision 1" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["terrace"], "two states of a house are compared"),
        (["terrace", "bungalow", "3"], "two states of a house are compared"),
        (["terrace", "nowhere.json"], "nowhere.json"),
        (["terrace", "bungalow", "three"], "'three' is not the number of a revision"),
        (["none.job", "1"], "none.job"),
    ],
)
def test_what_is_wrong_is_said(words: list[str], says: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", *words]) == BAD_INPUT
    assert says in capsys.readouterr().err


def test_a_job_of_which_nothing_was_signed_wants_a_revision(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "house.job"
    with new_job(path, read_sample("one-room")):
        pass
    assert main(["compare", str(path)]) == BAD_INPUT
    assert "nothing was signed in this job" in capsys.readouterr().err
    assert main(["compare", str(path), "first"]) == BAD_INPUT
    assert "'first' is not the number of a revision" in capsys.readouterr().err


def signed_job(path: Path, catalogue: Catalogue, *, of: Catalogue) -> None:
    """A job whose answers were worked out from one catalogue, and signed as of it."""
    site = read_sample("one-room")
    with new_job(path, site) as job:
        answers = [kept_form(one) for one in ask(site, of)]
        findings = [kept_form(one) for one in check(site, of)]
        digest, rows = digest_of(catalogue), catalogue.model_dump_json()
        sign(job, ToSign(1, __version__, "uk-eu", digest, answers, findings, rows), author="Fitter")


def test_where_only_a_row_of_data_changed_it_is_named_and_no_test_is_due(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    now = load_catalogue()
    slower = tuple(
        one.model_copy(update={"value": 1.9}) if one.id == "pace-hurried" else one for one in now.figures
    )
    then = now.model_copy(update={"figures": slower})
    signed_job(tmp_path / "a.job", then, of=then)
    assert main(["compare", str(tmp_path / "a.job"), "--json"]) == FINE
    data = json.loads(capsys.readouterr().out)
    assert data["house"] == []
    assert data["program"]["what"] == [
        "figure 'intruder's pace, hurried' (pace-hurried): value 2.5, before 1.9"
    ]
    assert data["program"]["answers"]
    assert (data["answers"], data["tests"]["stops"]) == ([], [])
    assert main(["compare", str(tmp_path / "a.job")]) == FINE
    out = capsys.readouterr().out
    assert "THE HOUSE is as it was" in out
    assert "No test needs to be repeated for these" in out


def test_where_nothing_changed_since_it_was_signed_it_is_said_so(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    now = load_catalogue()
    signed_job(tmp_path / "a.job", now, of=now)
    assert main(["compare", str(tmp_path / "a.job")]) == FINE
    assert "THE PROGRAM AND ITS ROWS OF DATA are as they were signed" in capsys.readouterr().out


def test_a_page_of_it_is_written_for_the_fitter_alone(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    page = tmp_path / "compared.html"
    assert main(["compare", "terrace", "terrace-better", "-o", str(page)]) == FINE
    assert "for you alone" in capsys.readouterr().out
    assert "What each is worth" in page.read_text(encoding="utf-8")
    assert page.stat().st_mode & 0o077 == 0
    assert main(["compare", "one-room", "one-room", "-o", str(tmp_path / "page.pdf")]) == BAD_INPUT
    assert "a page is written as HTML" in capsys.readouterr().err


def test_a_page_that_is_no_html_is_refused_before_anything_is_read(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["compare", "nowhere.json", "one-room", "-o", "page.pdf"]) == BAD_INPUT
    assert "a page is written as HTML" in capsys.readouterr().err

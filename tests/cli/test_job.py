from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main
from wardwright.store.jobs.opening import open_job
from wardwright.store.jobs.signatures import signed
from wardwright.store.samples import read_sample
from wardwright.store.sites import read_site


def test_a_job_goes_from_a_site_to_a_backup_and_back(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job, backup, again, out = (str(tmp_path / name) for name in ("a.job", "b.job", "c.job", "site.json"))
    assert main(["job", "new", "sample:terrace", job]) == FINE
    assert main(["job", "open", job]) == FINE
    assert "the file is whole" in capsys.readouterr().out
    assert main(["job", "backup", job, backup]) == FINE
    assert main(["job", "restore", backup, again]) == FINE
    assert main(["job", "export", again, "-o", out]) == FINE
    assert read_site(Path(out)) == read_sample("terrace")
    assert main(["job", "list", str(tmp_path)]) == FINE
    said = capsys.readouterr().out
    assert [name in said for name in ("a.job: ", "b.job: ", "c.job: ")] == [True] * 3
    assert main(["job", "open", job]) == FINE
    assert "b.job holds the same job" in capsys.readouterr().out
    assert main(["job", "forget", job]) == FINE
    assert not Path(job).exists()


@pytest.mark.parametrize(
    ("line", "message"),
    [
        (["open", "nothing.job"], "there is no such job"),
        (["export", "nothing.job", "-o", "x.json"], "there is no such job"),
        (["list", "nowhere"], "there is no such folder"),
        (["new", "sample:nowhere", "x.job"], "there is no sample"),
        (["new", "sample:one-room", "house"], "Call it house.job"),
    ],
)
def test_bad_input_is_said(line: list[str], message: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["job", *line]) == BAD_INPUT
    assert message in capsys.readouterr().err


def test_a_revision_that_is_not_there_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job = str(tmp_path / "a.job")
    main(["job", "new", "sample:one-room", job])
    assert main(["job", "export", job, "--revision", "7", "-o", str(tmp_path / "x.json")]) == BAD_INPUT
    assert "there is no revision 7" in capsys.readouterr().err
    assert not (tmp_path / "x.json").exists()


def test_a_job_goes_from_new_to_signed_order_by_commands(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job, folder, lines = (str(tmp_path / name) for name in ("a.job", "papers", "quote.csv"))
    assert main(["job", "new", "sample:terrace", job]) == FINE
    assert main(["ask", job]) == FINE
    assert main(["quote", job, "--firm", "sample:example-alarms", "-o", lines]) == FINE
    assert main(["papers", job, "-o", folder]) == FINE
    assert main(["job", "sign", job, "--author", "A. Client", "--what", "the design as ordered"]) == FINE
    said = capsys.readouterr().out
    assert "Quote for Terrace, first design, by Example Alarms" in said
    assert "revision 1 signed by A. Client as number 1" in said
    assert Path(lines).is_file()
    assert {one.name for one in Path(folder).iterdir()} >= {"fitter", "client-confidential", "open"}
    assert main(["compare", job]) == FINE
    told = capsys.readouterr().out
    assert "THE HOUSE is as it was" in told
    assert "as they were signed" in told


@pytest.mark.parametrize(("author", "what"), [(" ", ""), ("x" * 61, ""), ("fitter", "the code is 4711")])
def test_what_nobody_can_sign_is_refused_and_nothing_is_kept(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], author: str, what: str
) -> None:
    job = str(tmp_path / "a.job")
    assert main(["job", "new", "sample:one-room", job]) == FINE
    assert main(["job", "sign", job, "--author", author, "--what", what]) == BAD_INPUT
    assert capsys.readouterr().err
    with open_job(Path(job)) as opened:
        assert signed(opened) == ()

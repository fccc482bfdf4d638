from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main
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

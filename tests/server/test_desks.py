from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.errors import InputError
from wardwright.server.desks import Desks
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample


@pytest.mark.parametrize("name", ["../a.job", "a/b.job", "a", ".a.job", "", "a.job\x00.job", "a\\b.job"])
def test_no_name_leads_out_of_the_folder(tmp_path: Path, name: str) -> None:
    with pytest.raises(InputError, match="no name of a job"):
        Desks(tmp_path, load_catalogue()).path_of(name)


def test_jobs_are_listed_with_what_is_wrong_with_them(tmp_path: Path) -> None:
    new_job(tmp_path / "a.job", read_sample("one-room"), author="me").close()
    (tmp_path / "b.job").write_text("hello")
    desks = Desks(tmp_path, load_catalogue())
    first, second = desks.lines()
    assert (first.file, first.revision, first.fault) == ("a.job", 1, "")
    assert (second.file, second.revision) == ("b.job", 0)
    assert "no job file" in second.fault
    assert desks.desk("a.job") is desks.desk("a.job")
    desks.close()


@pytest.mark.parametrize(
    ("given", "name"),
    [
        ("Mill House.IFC", "Mill House.job"),
        ("a.ifc", "a-2.job"),
        ("../..", "house.job"),
        ("", "house.job"),
        ("a/b:c?.dxf", "b-c-.job"),
        ("x" * 200 + ".notes", "x" * 80 + ".job"),
        ("alarm code 4711.ifc", "house.job"),
    ],
)
def test_a_new_job_is_named_after_its_file(tmp_path: Path, given: str, name: str) -> None:
    (tmp_path / "a.job").write_text("")
    assert Desks(tmp_path, load_catalogue()).free_name(given) == name

from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.cli.command import BAD_INPUT
from wardwright.cli.given import catalogue_from, site_from
from wardwright.cli.main import main
from wardwright.errors import CatalogueError, InputError
from wardwright.store.samples import read_sample
from wardwright.store.sites import write_site


def test_a_sample_and_its_document_are_the_same_site(tmp_path: Path) -> None:
    path = tmp_path / "house.json"
    write_site(path, read_sample("one-room"))
    assert site_from(str(path), catalogue_from(())) == site_from("sample:one-room", catalogue_from(()))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("sample:castle", "there is no sample 'castle'"),
        ("old mill.IFC", "Bring it in first: wardwright intake old mill.IFC -o old mill.json"),
        ("no/such/house.json", "no/such/house.json: the file cannot be read"),
    ],
)
def test_what_is_not_there_is_named(capsys: pytest.CaptureFixture[str], text: str, said: str) -> None:
    with pytest.raises(InputError, match=said.replace("(", r"\(")):
        site_from(text, catalogue_from(()))
    for command in (["ask", text], ["check", text], ["papers", text, "-o", "nowhere"]):
        assert main(command) == BAD_INPUT
        assert said in capsys.readouterr().err
    assert not Path("nowhere").exists()


def test_a_sheet_of_ones_own_is_looked_for() -> None:
    with pytest.raises(CatalogueError, match=r"own\.toml"):
        catalogue_from(["own.toml"])

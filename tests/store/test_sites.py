import os
import stat
from pathlib import Path

import pytest

from wardwright.errors import DocumentError
from wardwright.model.document import read_document, write_document
from wardwright.model.fabric import Storey
from wardwright.model.site import Site
from wardwright.store.sites import read_site, write_site

HUT = Site(name="hut", storeys=(Storey(id="ground", name="ground floor", elevation_m=0.0),))


def test_what_is_written_is_read_back(tmp_path: Path) -> None:
    path = tmp_path / "hut.json"
    write_site(path, HUT)
    assert read_site(path) == HUT
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.skipif(os.name != "posix", reason="file modes are POSIX's")
def test_only_its_owner_may_read_it(tmp_path: Path) -> None:
    path = tmp_path / "hut.json"
    path.write_text("{}", encoding="utf-8")
    path.chmod(0o644)
    write_site(path, HUT)
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_a_write_that_fails_leaves_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "hut.json"
    write_site(path, HUT)
    before = path.read_bytes()

    def full(_handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(DocumentError, match="cannot be written \\(No space left on device\\)"):
        write_site(path, HUT.model_copy(update={"name": "cabin"}))
    assert path.read_bytes() == before
    assert list(tmp_path.iterdir()) == [path]


def test_a_folder_that_does_not_exist_is_said(tmp_path: Path) -> None:
    with pytest.raises(DocumentError, match="cannot be written"):
        write_site(tmp_path / "none" / "hut.json", HUT)


def test_a_missing_file_is_said(tmp_path: Path) -> None:
    with pytest.raises(DocumentError, match=r"cannot be read \(No such file or directory\)"):
        read_site(tmp_path / "none.json")


def test_a_file_that_is_no_text_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "hut.json"
    path.write_bytes(b"\xff\xfe\x00")
    with pytest.raises(DocumentError, match="not text in UTF-8"):
        read_site(path)


def test_a_site_that_does_not_hold_together_is_refused_with_a_count(tmp_path: Path) -> None:
    path = tmp_path / "hut.json"
    text = write_document(HUT).replace(
        "\n}", ',\n  "walls": [{"id": "w", "storey": "x", "line_m": [[0, 0], [0, 0]]}]\n}'
    )
    path.write_text(text, encoding="utf-8")
    assert read_document(text, where="hut").walls[0].id == "w"
    with pytest.raises(
        DocumentError, match=r"names the storey 'x', which does not exist \(and 1 more fault\)"
    ):
        read_site(path)

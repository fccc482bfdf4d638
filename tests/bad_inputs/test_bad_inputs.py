"""Every named bad input gets its one exact message: what is wrong, where, what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from bad_inputs.cases import FOLDER, INTAKE, SITE, WITH_SHEET, Case, cases, page, table, told
from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.errors import DocumentError
from wardwright.model.validation import problems
from wardwright.store.catalogue import load_catalogue
from wardwright.store.sites import read_site

CASES = cases()
MESSAGES = table()
DOCUMENTS = sorted(name for name in MESSAGES if "/" not in name)


def test_the_good_ones_they_are_made_from_are_good(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    catalogue = load_catalogue()
    assert problems(read_site(FOLDER / "good.json", catalogue), catalogue) == ()
    monkeypatch.chdir(tmp_path)
    notes = told(Case(INTAKE, {"house.notes": (FOLDER / "good.notes").read_bytes}), tmp_path)
    assert (notes.status, notes.said) == (FINE, "")
    assert "does not quite fit" not in notes.printed.casefold()
    (tmp_path / "sheet").mkdir()
    monkeypatch.chdir(tmp_path / "sheet")
    sheet = told(Case(WITH_SHEET, {"own.toml": (FOLDER / "good.toml").read_bytes}), tmp_path / "sheet")
    assert (sheet.status, sheet.said) == (told(Case(WITH_SHEET[:2], SITE), tmp_path / "sheet").status, "")


def test_every_bad_input_is_in_the_table_and_in_order() -> None:
    files = {file.stem for file in FOLDER.glob("*.json")} - {"good"}
    assert set(MESSAGES) == files | set(CASES)
    assert len(files) >= 40
    assert len(CASES) >= 100
    assert (FOLDER / "messages.txt").read_text(encoding="utf-8") == page(MESSAGES)


@pytest.mark.parametrize("name", DOCUMENTS)
def test_bad_document_gets_its_message(name: str) -> None:
    path = FOLDER / f"{name}.json"
    with pytest.raises(DocumentError) as caught:
        read_site(path, load_catalogue())
    assert str(caught.value).replace(str(path), "FILE") == MESSAGES[name]


@pytest.mark.parametrize("name", sorted(CASES))
def test_bad_input_gets_its_message_and_writes_nothing(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    found = told(CASES[name], tmp_path)
    assert found.said == f"wardwright: {MESSAGES[name]}\n"
    assert found.status == BAD_INPUT
    assert found.printed == ""
    assert found.changed == ()


@pytest.mark.parametrize("name", sorted(MESSAGES))
def test_a_message_names_the_place_and_a_cure(name: str) -> None:
    place, _, rest = MESSAGES[name].partition(": ")
    assert place
    assert rest.endswith(".")
    assert len(MESSAGES[name]) < 700
    assert MESSAGES[name].isprintable()


def test_a_code_is_never_repeated() -> None:
    assert "4711" in (FOLDER / "code-in-a-name.json").read_text(encoding="utf-8")
    assert "4711" not in MESSAGES["code-in-a-name"]
    assert "4711" not in MESSAGES["notes/a-code-in-a-comment"]

"""Every named bad input gets its one exact message: what is wrong, where, what to do."""

from pathlib import Path

import pytest

from wardwright.errors import DocumentError
from wardwright.model.validation import problems
from wardwright.store.catalogue import load_catalogue
from wardwright.store.sites import read_site

FOLDER = Path(__file__).parent


def table() -> dict[str, str]:
    lines = (FOLDER / "messages.txt").read_text(encoding="utf-8").splitlines()
    rows = [line for line in lines if line and not line.startswith("#")]
    return {name: message.strip() for name, message in zip(rows[::2], rows[1::2], strict=True)}


MESSAGES = table()


def test_the_good_one_they_are_made_from_is_good() -> None:
    catalogue = load_catalogue()
    assert problems(read_site(FOLDER / "good.json", catalogue), catalogue) == ()


def test_every_file_is_in_the_table() -> None:
    assert set(MESSAGES) == {file.stem for file in FOLDER.glob("*.json")} - {"good"}
    assert len(MESSAGES) >= 15


@pytest.mark.parametrize("name", sorted(MESSAGES))
def test_bad_input_gets_its_message(name: str) -> None:
    path = FOLDER / f"{name}.json"
    with pytest.raises(DocumentError) as caught:
        read_site(path, load_catalogue())
    assert str(caught.value).replace(str(path), "FILE") == MESSAGES[name]


def test_a_code_is_never_repeated() -> None:
    assert "4711" in (FOLDER / "code-in-a-name.json").read_text(encoding="utf-8")
    assert "4711" not in MESSAGES["code-in-a-name"]

"""A firm's own file."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.errors import OfficeError
from wardwright.store.firms import (
    LARGEST_FIRM_BYTES,
    LARGEST_LOGO_BYTES,
    firm_from,
    logo_of,
    read_firm,
    sample_firm,
    write_firm,
)

GOOD = 'name = "Example"\n[rates]\ncurrency = "GBP"\nlabour_per_hour = 48.10\n'


def written(tmp_path: Path, text: str) -> Path:
    path = tmp_path / "firm.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_amounts_are_as_written(tmp_path: Path) -> None:
    assert read_firm(written(tmp_path, GOOD)).rates.labour_per_hour == Decimal("48.10")


def test_the_sample_is_whole() -> None:
    firm = sample_firm("example-alarms")
    assert firm.tax is not None
    assert firm.subscription[0].per_year == Decimal("54.00")
    assert firm.text[0].heading == "Who owns the equipment"
    with pytest.raises(OfficeError, match=r"there is no sample firm 'no'\. Use one of example-alarms"):
        sample_firm("no")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("name =", "this is not TOML"),
        ('name = "E"\nadress = []\n', "key 'adress' is not known; did you mean 'address'"),
        (GOOD + "hourly = 3\n", "key 'hourly' is not known"),
        ('name = "E"\n', "key 'rates' is missing"),
        (GOOD.replace("48.10", "-3"), "'labour_per_hour' is -3"),
        (GOOD.replace("48.10", '"dear"'), "'labour_per_hour'"),
        (GOOD.replace("48.10", "1.005"), "'labour_per_hour'"),
        ('logo = "../secret.png"\n' + GOOD, "'../secret.png' is no picture beside this file"),
        ('logo = "no.png"\n' + GOOD, "the picture 'no.png' cannot be read"),
        ('logo = "logo.exe"\n' + GOOD, "'logo.exe' is no picture beside this file"),
        (
            GOOD + '[[text]]\nheading = "Keypad"\ntext = "the PIN: 471122"\n',
            "what looks like somebody's code",
        ),
    ],
)
def test_what_is_wrong_is_named_with_its_cure(tmp_path: Path, text: str, said: str) -> None:
    with pytest.raises(OfficeError) as fault:
        read_firm(written(tmp_path, text))
    assert said in str(fault.value)
    assert "firm.toml" in str(fault.value)


def test_a_logo_is_read_from_beside_the_file(tmp_path: Path) -> None:
    path = written(tmp_path, 'logo = "logo.png"\n' + GOOD)
    (tmp_path / "logo.png").write_bytes(b"picture")
    assert logo_of(path, read_firm(path)) == b"picture"
    (tmp_path / "logo.png").write_bytes(b"x" * (LARGEST_LOGO_BYTES + 1))
    with pytest.raises(OfficeError, match="larger than 2 MB"):
        read_firm(path)


def test_without_a_logo_there_is_none(tmp_path: Path) -> None:
    path = written(tmp_path, GOOD)
    assert logo_of(path, read_firm(path)) == b""


def test_a_missing_or_endless_file_is_refused(tmp_path: Path) -> None:
    with pytest.raises(OfficeError, match="cannot be read"):
        read_firm(tmp_path / "none.toml")
    with pytest.raises(OfficeError, match="longer than 1 MB"):
        read_firm(written(tmp_path, "#" * (LARGEST_FIRM_BYTES + 1)))


LETTERS = st.text(st.characters(exclude_categories=["Cs"]), max_size=30)
AMOUNTS = st.decimals(min_value=0, max_value=9999, places=2)


@given(
    name=LETTERS.filter(bool),
    lines=st.lists(LETTERS.filter(bool), max_size=3),
    rate=AMOUNTS,
    text=LETTERS.filter(bool),
)
def test_a_firm_that_is_written_is_read_again_whatever_its_letters(
    tmp_path_factory: pytest.TempPathFactory, name: str, lines: list[str], rate: Decimal, text: str
) -> None:
    rates = {
        "currency": "EUR",
        "labour_per_hour": rate,
        "travel_min": 12.5,
        "mark_up_percent": Decimal("12.5"),
    }
    facts = {
        "name": name, "address": lines, "rates": rates, "tax": {"percent": Decimal(0)},
        "subscription": [{"name": "data", "per_year": rate, "sheets": ["message-mobile"]}],
        "text": [{"heading": name, "text": text}, {"heading": "b", "text": text}],
    }  # fmt: skip
    try:
        firm = firm_from(facts, where="firm")
    except OfficeError:
        return  # by chance it looks like somebody's code
    path = tmp_path_factory.mktemp("firm") / "firm.toml"
    write_firm(path, firm)
    assert read_firm(path) == firm

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from wardwright.errors import OfficeError
from wardwright.store.firms import sample_firm, write_firm
from wardwright.store.office import FIRM, Office, drop_prices, keep_prices, office_of

ROWS = b"code,cost,price,date\nmovement-12m,41.50,,2026-03-31\nkeypad-radio,60.00,92.40,\n"


def test_an_empty_folder_has_no_firm_and_no_prices(tmp_path: Path) -> None:
    assert office_of(tmp_path) == Office(None, None)


def test_what_is_kept_is_read_again(tmp_path: Path) -> None:
    firm = sample_firm("example-alarms")
    write_firm(tmp_path / FIRM, firm)
    kept = keep_prices(tmp_path, f"My {'very ' * 20}long list.CSV", ROWS)
    found = office_of(tmp_path)
    assert found.firm == firm
    assert found.prices is not None
    assert found.prices.rows == kept.rows
    assert found.prices.rows[0].cost == Decimal("41.50")
    drop_prices(tmp_path)
    assert office_of(tmp_path).prices is None


def test_a_list_that_cannot_be_read_leaves_the_one_before(tmp_path: Path) -> None:
    keep_prices(tmp_path, "a.csv", ROWS)
    for name, content, what in (
        ("b.csv", b"code,cost\nkeypad-radio,-1\n", "b.csv"),
        ("b.xlsx", b"not a spreadsheet", "b.xlsx"),
        ("b.ods", b"", "b.ods"),
        ("b", b"", "b"),
        ("b.csv", b"x" * 5_000_001, "b.csv"),
    ):
        with pytest.raises(OfficeError) as raised:
            keep_prices(tmp_path, name, content)
        assert what in raised.value.where
    found = office_of(tmp_path).prices
    assert found is not None
    assert len(found.rows) == 2
    assert sorted(one.name for one in tmp_path.iterdir()) == ["prices.csv"]

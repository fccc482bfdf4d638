"""A price list from the cells of its sheet."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from wardwright.costing.price_list import MOST_ROWS, PriceList, price_list
from wardwright.errors import OfficeError

HEAD = ["Code", "Cost", "Price", "Date"]


def read(*rows: list[Any], head: list[Any] = HEAD) -> PriceList:
    return price_list([head, *rows], where="prices.csv")


def test_rows_are_read() -> None:
    found = read(
        ["movement-12m", "41.50", "", "2026-03-31"], [], ["keypad-radio", 60, 92.4, date(2026, 1, 2)]
    )
    one = found.of("movement-12m")
    assert one is not None
    assert (one.cost, one.price, one.on) == (Decimal("41.50"), None, date(2026, 3, 31))
    assert found.rows[1].price == Decimal("92.40")
    assert found.oldest == date(2026, 1, 2)
    assert found.of("nothing") is None


def test_columns_stand_in_any_order_and_some_may_be_missing() -> None:
    found = price_list([["price", "code"], ["9.90", "a"]], where="p")
    assert (found.rows[0].cost, found.rows[0].price) == (None, Decimal("9.90"))


def test_what_a_spreadsheet_cannot_keep_exactly_is_no_third_decimal() -> None:
    assert read(["a", 0.1 + 0.2, None, None]).rows[0].cost == Decimal("0.30")


@pytest.mark.parametrize(
    ("row", "said"),
    [
        (["a", "-1", "", ""], "prices.csv, row 2: column 'cost' is '-1', which is below nought"),
        (["a", "", "12.345", ""], "column 'price' is '12.345', which is not in whole cents"),
        (["a", "twelve", "", ""], "column 'cost' is 'twelve', which is no amount"),
        (["a", "1e9", "", ""], "column 'cost' is '1e9', which no device costs"),
        (["a", "nan", "", ""], "column 'cost' is 'nan', which no device costs"),
        (["a", True, "", ""], "column 'cost' is 'True', which is no amount"),
        (["", "1", "", ""], "column 'code' is empty"),
        (["a" * 99, "1", "", ""], "column 'code' is longer than 80 letters"),
        (["a", "1", "", "31/03/2026"], "column 'date' is '31/03/2026', which is no day"),
    ],
)
def test_a_wrong_cell_is_named_by_row_and_column(row: list[Any], said: str) -> None:
    with pytest.raises(OfficeError, match="row 2") as fault:
        read(row)
    assert said in str(fault.value)


@pytest.mark.parametrize(
    ("head", "said"),
    [
        (["code", "costs"], "column 2 is headed 'costs', which is not known; did you mean 'cost'"),
        (["cost"], "the column 'code' is missing"),
        (["code", "date"], "the column 'cost' is missing"),
        (["code", "cost", "cost"], "two columns are headed 'cost'"),
    ],
)
def test_a_wrong_heading_is_named(head: list[str], said: str) -> None:
    with pytest.raises(OfficeError) as fault:
        read(head=head)
    assert said in str(fault.value)


def test_a_code_twice_names_both_rows() -> None:
    with pytest.raises(OfficeError, match="row 3: column 'code': 'a' is in row 2 already"):
        read(["a", "1"], ["a", "2"])


@pytest.mark.parametrize("table", [[], [[None, ""]]])
def test_an_empty_list_is_refused(table: list[Any]) -> None:
    with pytest.raises(OfficeError, match="the price list is empty"):
        price_list(table, where="p")


def test_too_long_a_list_is_refused() -> None:
    with pytest.raises(OfficeError, match="more than 20000 rows"):
        price_list([HEAD] * (MOST_ROWS + 1), where="p")

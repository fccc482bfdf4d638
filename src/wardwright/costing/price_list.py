"""A firm's price list: what each device sheet costs and is sold at; what is not in it is unknown, never nought."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime
from decimal import Decimal, InvalidOperation

from wardwright.costing.money import Money
from wardwright.errors import OfficeError
from wardwright.model.record import Record
from wardwright.model.wording import short, suggestion

COLUMNS = ("code", "cost", "price", "date")
MOST_ROWS = 20_000
"""A longer list is refused. [rows] (assumption)"""
LARGEST = Decimal(1_000_000)
LONGEST_CODE = 80
Value = str | int | float | Decimal | date | None
"""What a cell holds."""


class Price(Record):
    """One row of a price list."""

    code: str
    """Id of a device sheet, or of a kind of cell."""
    cost: Money | None = None
    """What the firm pays for one, before tax; None: not known."""
    price: Money | None = None
    """What the customer pays for one, before tax; None: cost and mark-up say it."""
    on: date | None = None
    """The day that the row is of; None: not told."""


class PriceList(Record):
    """A price list as it was handed in."""

    where: str
    rows: tuple[Price, ...] = ()

    def of(self, code: str) -> Price | None:
        """The row of a code; None where there is none."""
        return next((row for row in self.rows if row.code == code), None)

    @property
    def oldest(self) -> date | None:
        """The earliest day that a row is of."""
        return min((row.on for row in self.rows if row.on is not None), default=None)


def price_list(table: Sequence[Sequence[Value]], *, where: str) -> PriceList:
    """Read a price list from the cells of its sheet.

    Parameters
    ----------
    table : sequence of sequence
        Rows of cells, the heading first; rows without a cell filled in are passed over.
    where : str
        What the file is called.

    Returns
    -------
    PriceList
        In the order of the file.

    Raises
    ------
    OfficeError
        If a column or a cell cannot be used; it names the row, as a spreadsheet counts them, and the column.
    """
    if len(table) > MOST_ROWS:
        raise OfficeError(
            f"the price list has more than {MOST_ROWS} rows", where=where, cure="Give the rows that you fit"
        )
    head = next((i for i, row in enumerate(table) if any(_is_filled(one) for one in row)), None)
    if head is None:
        raise OfficeError(
            "the price list is empty", where=where, cure="Give it the heading code, cost, price, date"
        )
    place = _columns(table[head], where=where, row=head + 1)
    found: dict[str, Price] = {}
    rows: dict[str, int] = {}
    for number, cells in enumerate(table[head + 1 :], head + 2):
        if not any(_is_filled(one) for one in cells):
            continue
        values = {name: cells[i] if i < len(cells) else None for name, i in place.items()}
        one = _price(values, where=f"{where}, row {number}")
        if one.code in found:
            raise OfficeError(
                f"column 'code': '{one.code}' is in row {rows[one.code]} already",
                where=f"{where}, row {number}",
                cure="Keep one row a code",
            )
        found[one.code], rows[one.code] = one, number
    return PriceList(where=where, rows=tuple(found.values()))


def _is_filled(value: Value) -> bool:
    return value is not None and str(value).strip() != ""


def _columns(heading: Sequence[Value], *, where: str, row: int) -> dict[str, int]:
    place: dict[str, int] = {}
    for i, cell in enumerate(heading):
        if not _is_filled(cell):
            continue
        name = str(cell).strip().lower()
        if name not in COLUMNS:
            near = suggestion(name, list(COLUMNS))
            raise OfficeError(
                f"column {i + 1} is headed '{short(str(cell))}', which is not known"
                + (f"; did you mean '{near}'" if near else ""),
                where=f"{where}, row {row}",
                cure="Head the columns code, cost, price, date",
            )
        if name in place:
            raise OfficeError(
                f"two columns are headed '{name}'", where=f"{where}, row {row}", cure="Keep one of them"
            )
        place[name] = i
    missing = [name for name in ("code",) if name not in place]
    if not {"cost", "price"} & place.keys():
        missing.append("cost")
    if missing:
        raise OfficeError(
            f"the column '{missing[0]}' is missing",
            where=f"{where}, row {row}",
            cure="Head the columns code, cost, price, date",
        )
    return place


def _price(values: dict[str, Value], *, where: str) -> Price:
    code = "" if values["code"] is None else str(values["code"]).strip()
    if not code or len(code) > LONGEST_CODE:
        what = (
            "column 'code' is empty" if not code else f"column 'code' is longer than {LONGEST_CODE} letters"
        )
        raise OfficeError(what, where=where, cure="Give the id of a device sheet, or take the row out")
    return Price(
        code=code,
        cost=_amount(values.get("cost"), column="cost", where=where),
        price=_amount(values.get("price"), column="price", where=where),
        on=_day(values.get("date"), where=where),
    )


def _amount(value: Value, *, column: str, where: str) -> Decimal | None:
    if not _is_filled(value):
        return None
    what = f"column '{column}' is '{short(str(value))}'"
    cure = "Write a plain amount such as 41.50, or leave the cell empty where it is not known"
    if isinstance(value, bool | date):
        raise OfficeError(f"{what}, which is no amount", where=where, cure=cure)
    try:
        amount = Decimal(str(value).strip())
    except InvalidOperation:
        raise OfficeError(f"{what}, which is no amount", where=where, cure=cure) from None
    if not amount.is_finite() or amount > LARGEST:
        raise OfficeError(f"{what}, which no device costs", where=where, cure=cure)
    if amount < 0:
        raise OfficeError(f"{what}, which is below nought", where=where, cure=cure)
    rounded = round(amount, 2)
    # A spreadsheet keeps 0.1 + 0.2 as 0.30000000000000004: what is off by less than that is no third decimal.
    if abs(amount - rounded) > Decimal("1e-9"):
        raise OfficeError(f"{what}, which is not in whole cents", where=where, cure=cure)
    return rounded


def _day(value: Value, *, where: str) -> date | None:
    if not _is_filled(value):
        return None
    if isinstance(value, datetime):
        return value.date()
    if isinstance(value, date):
        return value
    try:
        return date.fromisoformat(str(value).strip())
    except ValueError:
        raise OfficeError(
            f"column 'date' is '{short(str(value))}', which is no day",
            where=where,
            cure="Write it as year-month-day, such as 2026-03-31",
        ) from None

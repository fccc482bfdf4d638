"""Rows of the catalogue from their text form (TOML), joined and checked."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pydantic import ValidationError

from wardwright.errors import CatalogueError
from wardwright.model.camera_rows import Task
from wardwright.model.catalogue import Animal, Catalogue, Construction, Figure, Glazing, Lock, Walker
from wardwright.model.complaint import complaints
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.entry_shares import EntryShare
from wardwright.model.limits import Limit
from wardwright.model.power_sheets import Cell
from wardwright.model.radio_rows import RadioLaw, RadioMaterial, WallLoss
from wardwright.model.record import Record
from wardwright.model.rows import Row, Source
from wardwright.model.sound_rows import Absorption, Spectrum, Transmission
from wardwright.model.tax_rates import TaxRate
from wardwright.model.wording import and_more, suggestion

LARGEST_SHEET_BYTES = 1_000_000
"""A sheet file longer than this is refused. [bytes] (assumption)"""


class _Tables(Record):
    """One file: any of the tables, each written [[name]]."""

    sheet: tuple[DeviceSheet, ...] = ()
    construction: tuple[Construction, ...] = ()
    glazing: tuple[Glazing, ...] = ()
    lock: tuple[Lock, ...] = ()
    walker: tuple[Walker, ...] = ()
    animal: tuple[Animal, ...] = ()
    cell: tuple[Cell, ...] = ()
    task: tuple[Task, ...] = ()
    figure: tuple[Figure, ...] = ()
    limit: tuple[Limit, ...] = ()
    entry_share: tuple[EntryShare, ...] = ()
    radio_material: tuple[RadioMaterial, ...] = ()
    radio_law: tuple[RadioLaw, ...] = ()
    wall_loss: tuple[WallLoss, ...] = ()
    transmission: tuple[Transmission, ...] = ()
    absorption: tuple[Absorption, ...] = ()
    spectrum: tuple[Spectrum, ...] = ()
    tax_rate: tuple[TaxRate, ...] = ()
    source: tuple[Source, ...] = ()


class SheetText(NamedTuple):
    """One file of rows: what it is called, and what it holds."""

    where: str
    text: str


_TABLES = tuple(name for name in _Tables.model_fields if name != "source")


class _Placed(NamedTuple):
    where: str
    table: str
    row: Row


def read_rows(files: Sequence[SheetText]) -> Catalogue:
    """Join files of rows into one catalogue.

    Parameters
    ----------
    files : sequence of SheetText
        The files, first those of the package.

    Returns
    -------
    Catalogue
        All rows, in the order read.

    Raises
    ------
    CatalogueError
        If a file cannot be read, a row is given twice, or a row refers to nothing.
    """
    tables = [(file.where, _tables(file)) for file in files]
    rows = {
        name + ("es" if name.endswith("s") else "s"): tuple(
            row for _, t in tables for row in getattr(t, name)
        )
        for name in (*_TABLES, "source")
    }
    joined = Catalogue.model_validate(rows)
    placed = [p for where, t in tables for p in _placed(where, t)]
    _refuse_twice(
        [(p.where, p.table, _identity(p.row)) for p in placed]
        + [(where, "source", s.id) for where, t in tables for s in t.source]
    )
    for one in placed:
        _refuse_loose(one, joined)
    return joined


def _tables(file: SheetText) -> _Tables:
    if len(file.text) > LARGEST_SHEET_BYTES:
        raise CatalogueError(
            f"the file is longer than {LARGEST_SHEET_BYTES // 1_000_000} MB",
            where=file.where,
            cure="Give a file of rows only; one device sheet needs about thirty lines",
        )
    try:
        raw = tomllib.loads(file.text)
    except tomllib.TOMLDecodeError as fault:
        raise CatalogueError(
            f"this is not TOML: {str(fault)[0].lower()}{str(fault)[1:]}",
            where=file.where,
            cure="Mend that line; a sheet begins with [[sheet]]",
        ) from None
    except RecursionError:
        raise CatalogueError(
            "the file is nested too deeply", where=file.where, cure="Give plain rows, one table each"
        ) from None
    try:
        # As JSON text, in strict mode: "12" is no number here either; a date is the text of one.
        return _Tables.model_validate_json(json.dumps(raw, default=str), strict=True)
    except ValidationError as fault:
        found = complaints(fault, raw=raw, root=_Tables)
        first = found[0]
        raise CatalogueError(
            first.what + and_more(len(found) - 1), where=f"{file.where}, {first.where}", cure=first.cure
        ) from None


def _placed(where: str, tables: _Tables) -> Iterator[_Placed]:
    for name in _TABLES:
        rows: tuple[Row, ...] = getattr(tables, name)
        for row in rows:
            yield _Placed(where, name, row)


def _identity(row: Row) -> str:
    """What a row is told apart by: limits may share an id across packs and countries."""
    return row.words if isinstance(row, Limit) else row.id


def _refuse_twice(named: Sequence[tuple[str, str, str]]) -> None:
    first: dict[tuple[str, str], str] = {}
    for where, table, ident in named:
        if (table, ident) in first:
            what = f"the {table} '{ident}' is already in {first[table, ident]}"
            raise CatalogueError(what, where=where, cure="Give it another id")
        first[table, ident] = where


def _refuse_loose(one: _Placed, joined: Catalogue) -> None:
    """Refuse a row that refers to nothing or contradicts itself."""
    row, where = one.row, f'{one.where}, {one.table} "{one.row.id}"'
    _need(row.source, [s.id for s in joined.sources], key="source", where=where)
    figures = [f.id for f in joined.figures]
    match row:
        case Glazing():
            _need(row.break_figure, figures, key="break_figure", where=where)
        case Lock():
            _need(row.force_figure, figures, key="force_figure", where=where)
        case Walker():
            _need(row.pace_figure, figures, key="pace_figure", where=where)
            _refuse_unordered(row, "reach_low_m", "reach_high_m", where=where)
        case Figure():
            _refuse_outside(row, "", where=where)
        case WallLoss():
            _refuse_outside(row, "_db", where=where)
        case DeviceSheet():
            _refuse_wrong_part(row, where=where, known_glazings=[g.id for g in joined.glazings])
            for cell in row.cell_rows:
                _need(cell, [c.id for c in joined.cells], key="cell", where=where)
        case _:
            pass


def _need(wanted: str, known: Sequence[str], *, key: str, where: str) -> None:
    if wanted in known:
        return
    near = suggestion(wanted, known)
    hint = f"; did you mean '{near}'" if near else ""
    what = {"source": "source", "glazings": "glazing", "cell": "cell"}.get(key, "figure")
    raise CatalogueError(
        f"'{key}' names the {what} '{wanted}', which does not exist{hint}",
        where=where,
        cure=f"Add a [[{what}]] of that id" + (", or write 'own'" if what == "source" else ""),
    )


_PARTS = {
    "control-unit": "control", "movement-detector": "movement", "opening-contact": "contact",
    "shock-detector": "shock", "glass-break-detector": "glass_break", "water-detector": "water",
    "sounder": "sounder", "camera": "camera", "repeater": "repeater",
    "transmitter": "transmitter",
}  # fmt: skip
"""The table that says what matters of each kind."""
_MAY_LACK = {"keypad", "keyfob", "hold-up-button"}
"""Kinds whose table may be left out: without it the usual rules hold."""


def _refuse_wrong_part(sheet: DeviceSheet, *, where: str, known_glazings: Sequence[str]) -> None:
    needed = _PARTS.get(sheet.kind)
    for part in sorted(set(_PARTS.values())):
        has = getattr(sheet, part) is not None
        if has and part != needed:
            raise CatalogueError(
                f"the {sheet.kind} has a table 'sheet.{part}'",
                where=where,
                cure="Take the table out, or change 'kind'",
            )
        if not has and part == needed and sheet.kind not in _MAY_LACK:
            raise CatalogueError(
                f"the {sheet.kind} needs its table 'sheet.{part}'",
                where=where,
                cure=f"Add [sheet.{part}] with what the maker states",
            )
    glazings = () if sheet.glass_break is None else sheet.glass_break.glazings
    for glazing in glazings:
        _need(glazing, known_glazings, key="glazings", where=where)
    for table, low, high in (
        (sheet.movement, "height_low_m", "height_high_m"),
        (sheet.button, "height_low_m", "height_high_m"),
        (sheet.camera, "height_low_m", "height_high_m"),
        (sheet.fire, "coldest_c", "warmest_c"),
    ):
        _refuse_unordered(table, low, high, where=where)


def _refuse_outside(row: Row, unit: str, *, where: str) -> None:
    value, low, high = (getattr(row, name + unit) for name in ("value", "low", "high"))
    if not low <= value <= high:
        what = f"'value{unit}' {value:g} is not between 'low{unit}' {low:g} and 'high{unit}' {high:g}"
        raise CatalogueError(what, where=where, cure="Put the three in order")


def _refuse_unordered(table: Record | None, low: str, high: str, *, where: str) -> None:
    least, most = (getattr(table, key, None) for key in (low, high))
    if least is not None and most is not None and least > most:
        what = f"'{low}' {least:g} is above '{high}' {most:g}"
        raise CatalogueError(what, where=where, cure="Put the two in order")

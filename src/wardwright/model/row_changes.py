"""What differs between two catalogues, row by row: one of them may be of an older form."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Literal, NamedTuple


class RowChange(NamedTuple):
    """One row of data that is another."""

    table: str
    """The list of the catalogue that it stands in, such as `figures`."""
    id: str
    name: str
    course: Literal["new", "gone", "changed"]
    fields: tuple[tuple[str, Any, Any], ...]
    """Of a row that changed: each field with its value before and now."""


def row_changes(before: Mapping[str, Any], after: Mapping[str, Any]) -> tuple[RowChange, ...]:
    """Every row that differs between two catalogues.

    Parameters
    ----------
    before, after : mapping
        Catalogues as plain data: lists of rows by the name of the list.

    Returns
    -------
    tuple of RowChange
        By list and id; the order of rows is no difference. A field that one form has and the other has not is told
        as None there.

    Examples
    --------
    >>> old, new = ({"figures": [{"id": "pace", "name": "pace", "value": value}]} for value in (1.2, 1.3))
    >>> row_changes(old, new)
    (RowChange(table='figures', id='pace', name='pace', course='changed', fields=(('value', 1.2, 1.3),)),)
    """
    return tuple(one for table in sorted({*before, *after}) for one in _of_table(table, before, after))


def _of_table(table: str, before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[RowChange]:
    old, new = (_by_id(each.get(table)) for each in (before, after))
    for ident in sorted({*old, *new}):
        was, now = old.get(ident), new.get(ident)
        if was == now:
            continue
        name = str((now or was or {}).get("name", ident))
        if was is None or now is None:
            yield RowChange(table, ident, name, "gone" if now is None else "new", ())
            continue
        fields = tuple(
            (field, was.get(field), now.get(field))
            for field in dict.fromkeys((*now, *was))
            if was.get(field) != now.get(field)
        )
        if fields:
            yield RowChange(table, ident, name, "changed", fields)


def _by_id(rows: Any) -> dict[str, dict[str, Any]]:  # noqa: ANN401 - of any older form
    found: dict[str, dict[str, Any]] = {}
    for row in rows if isinstance(rows, list) else ():
        if isinstance(row, dict):
            # Of rows with one id the first counts, as in a catalogue.
            found.setdefault(str(row.get("id", "")), row)
    return found

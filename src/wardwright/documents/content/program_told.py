"""What differs in the program and its rows of data between two times, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from wardwright.model.row_changes import RowChange, row_changes

ROWS_SHOWN = 40
"""Rows that are told one by one, at most; the rest is counted. [-]"""
TABLES = {
    "sheets": "device sheet", "constructions": "construction", "glazings": "glazing", "locks": "lock",
    "figures": "figure", "walkers": "walker", "animals": "animal", "cells": "cell", "tasks": "camera task",
    "limits": "limit", "entry_shares": "share of ways in", "radio_materials": "material for radio",
    "radio_laws": "radio law", "wall_losses": "radio loss of walls", "transmissions": "sound through walls",
    "absorptions": "sound swallowed", "spectrums": "spectrum", "tax_rates": "tax", "sources": "source",
}  # fmt: skip
"""What a row of each list of the catalogue is called."""
OTHER_ROWS = "the rows of data that answers stand on (sheets, figures, limits) are others now"


class Stand(NamedTuple):
    """What answers stand on besides the house."""

    program: str
    """Its version."""
    digest: str
    """Of the rows of data."""
    rows: Mapping[str, Any]
    """Those rows as plain data; empty where they were not kept."""


def told_program(was: Stand, now: Stand) -> tuple[str, ...]:
    """Say what is another in the program and its rows of data.

    Parameters
    ----------
    was, now : Stand
        When answers were signed, and today.

    Returns
    -------
    tuple of str
        Empty where all is as it was; which rows are others is said where they were kept.
    """
    said = []
    if was.program != now.program:
        said.append(f"the program is version {now.program} now; it was {was.program}")
    if was.digest != now.digest:
        said += _rows(was, now)
    return tuple(said)


def _rows(was: Stand, now: Stand) -> Iterator[str]:
    changes = row_changes(was.rows, now.rows) if was.rows and now.rows else ()
    if not changes:
        yield OTHER_ROWS
    for one in changes[:ROWS_SHOWN]:
        yield _row(one)
    if len(changes) > ROWS_SHOWN:
        yield f"and {len(changes) - ROWS_SHOWN} rows of data more"


def _row(one: RowChange) -> str:
    what = f"{TABLES.get(one.table, one.table)} '{one.name}' ({one.id})"
    if one.course != "changed":
        return f"{what} is {one.course}"
    fields = "; ".join(
        f"{name.replace('_', ' ')} {_value(now)}, before {_value(old)}" for name, old, now in one.fields
    )
    return f"{what}: {fields}"


def _value(value: object) -> str:
    if value is None:
        return "not said"
    return f"{value:g}" if isinstance(value, float) else str(value)

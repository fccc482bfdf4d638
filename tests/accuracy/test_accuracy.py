"""Every row of the accuracy page is within its tolerance, and every module that gives rows is on the page."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from accuracy.rows import MARKS, PARTS, Part, Row, rows_of

TESTS = Path(__file__).resolve().parents[1]


@pytest.mark.parametrize("part", [part for part in PARTS if not part.needs_given], ids=lambda part: part.name)
def test_every_row_is_within_its_tolerance(part: Part) -> None:
    hold(rows_of(part))


@pytest.mark.parametrize("part", [part for part in PARTS if part.needs_given], ids=lambda part: part.name)
def test_every_row_of_given_data_is_within_its_tolerance(given: Callable[[str], Path], part: Part) -> None:
    given("houses")
    hold(rows_of(part))


def hold(rows: tuple[Row, ...]) -> None:
    assert len({row.quantity for row in rows}) == len(rows) > 0
    for row in rows:
        assert row.is_met, row
        assert row.mark in MARKS, row
        assert row.source, row
        assert row.why, row
        assert re.search(r"\[[^\]]+\]$", row.quantity), f"no unit: {row.quantity}"
        assert 0.0 <= row.tolerance < math.inf, row
        assert row.tolerance < abs(row.expected) or row.bound != "equal" or row.expected == 0.0, row


def test_every_module_that_gives_rows_is_in_the_table() -> None:
    found = {
        ".".join(path.relative_to(TESTS).with_suffix("").parts)
        for path in TESTS.rglob("*.py")
        if re.search(r"^def accuracy_rows\(", path.read_text(encoding="utf-8"), re.MULTILINE)
    }
    listed = [module for part in PARTS for module in part.modules]
    assert sorted(listed) == sorted(found), "add the module to PARTS in tests/accuracy/rows.py"


@pytest.mark.parametrize(
    ("computed", "bound", "error"),
    [
        (2.3, "equal", 0.3),
        (1.7, "equal", 0.3),
        (1.7, "at most", 0.0),
        (2.3, "at most", 0.3),
        (2.3, "at least", 0.0),
        (1.7, "at least", 0.3),
        (math.nan, "at most", math.inf),
    ],
)
def test_a_row_is_met_within_its_tolerance_only(computed: float, bound: str, error: float) -> None:
    row = Row("walk [m]", "own", 2.0, computed, 0.25, "cells", "derived", bound)
    assert row.error == pytest.approx(error)
    assert row.is_met == (error <= 0.25)

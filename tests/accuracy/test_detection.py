from __future__ import annotations

import pytest

from accuracy import detection

ROWS = detection.accuracy_rows()


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["quantity"])
def test_every_row_is_within_its_tolerance(row: dict[str, object]) -> None:
    computed, expected, tolerance = (float(str(row[key])) for key in ("computed", "expected", "tolerance"))
    assert row.get("is_met", True), row
    assert abs(computed - expected) <= tolerance, row


def test_no_quantity_is_listed_twice() -> None:
    assert len({row["quantity"] for row in ROWS}) == len(ROWS) > 30

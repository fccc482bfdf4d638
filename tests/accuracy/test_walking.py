from __future__ import annotations

from accuracy import walking


def test_every_row_of_the_accuracy_page_is_within_its_tolerance() -> None:
    rows = walking.accuracy_rows(cells=60)
    assert len(rows) == 5
    for row in rows:
        error = row.get("error", abs(row["computed"] - row["expected"]))
        assert row.get("is_met", error <= row["tolerance"]), row

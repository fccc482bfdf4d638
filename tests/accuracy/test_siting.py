from __future__ import annotations

from accuracy import siting


def test_every_row_of_the_accuracy_page_is_within_its_tolerance() -> None:
    rows = siting.accuracy_rows()
    assert len(rows) == 5
    for row in rows:
        assert abs(row["computed"] - row["expected"]) <= row["tolerance"], row

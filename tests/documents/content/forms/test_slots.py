from __future__ import annotations

from wardwright.documents.content.forms.slots import TO_FILL, with_slots
from wardwright.documents.content.paper import Column


def test_every_row_has_a_cell_for_each_heading_and_the_known_come_first() -> None:
    table = with_slots(
        "T", (Column("A"), Column("B")), [("a", 1), ("b", 2)], slots=(Column("Read"), Column("By"))
    )
    assert [column.heading for column in table.columns] == ["A", "B", "Read", "By"]
    assert table.rows == (("a", 1, TO_FILL, TO_FILL), ("b", 2, TO_FILL, TO_FILL))
    assert table.is_filled_in

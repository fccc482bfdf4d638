from __future__ import annotations

from wardwright.documents.content.forms.slots import TO_FILL, checklist, with_slots
from wardwright.documents.content.paper import Column


def test_every_row_has_a_cell_for_each_heading_and_the_known_come_first() -> None:
    table = with_slots(
        "T", (Column("A"), Column("B")), [("a", 1), ("b", 2)], slots=(Column("Read"), Column("By"))
    )
    assert [column.heading for column in table.columns] == ["A", "B", "Read", "By"]
    assert table.rows == (("a", 1, TO_FILL, TO_FILL), ("b", 2, TO_FILL, TO_FILL))
    assert table.is_filled_in


def test_a_checklist_has_a_line_of_words_in_each_row_and_nothing_filled_in() -> None:
    table = checklist("T", ("one", "two"), head=Column("What"), slots=(Column("Read"), Column("By")))
    assert table.rows == (("one", TO_FILL, TO_FILL), ("two", TO_FILL, TO_FILL))
    assert table.is_filled_in

from __future__ import annotations

from typing import Any

from wardwright.model.row_changes import row_changes

ROWS: dict[str, Any] = {
    "figures": [{"id": "pace", "name": "pace", "value": 1.2}, {"id": "door", "name": "door", "value": 1.0}],
    "locks": [{"id": "plain", "name": "plain lock"}],
}


def test_the_order_of_rows_is_no_difference() -> None:
    assert row_changes(ROWS, {**ROWS, "figures": ROWS["figures"][::-1]}) == ()


def test_rows_that_came_went_and_changed_are_told_with_their_fields() -> None:
    now = {
        "figures": [{"id": "pace", "name": "pace", "value": 1.3}],
        "limits": [{"id": "gap", "name": "gap"}],
    }
    found = {(one.table, one.id): (one.course, one.fields) for one in row_changes(ROWS, now)}
    assert found == {
        ("figures", "pace"): ("changed", (("value", 1.2, 1.3),)),
        ("figures", "door"): ("gone", ()),
        ("limits", "gap"): ("new", ()),
        ("locks", "plain"): ("gone", ()),
    }


def test_a_field_that_an_older_form_had_not_is_told_as_unknown_there() -> None:
    now = {**ROWS, "locks": [{"id": "plain", "name": "plain lock", "grade": 2}]}
    (one,) = row_changes(ROWS, now)
    assert one.fields == (("grade", None, 2),)


def test_what_is_no_list_of_rows_is_nothing() -> None:
    assert row_changes({"figures": None}, {"figures": ["odd"]}) == ()

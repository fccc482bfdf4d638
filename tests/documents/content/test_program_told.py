from __future__ import annotations

from typing import Any

from wardwright.documents.content.program_told import OTHER_ROWS, ROWS_SHOWN, TABLES, Stand, told_program
from wardwright.model.catalogue import Catalogue

ROW: dict[str, Any] = {"id": "pace", "name": "pace", "value": 1.2}


def rows(*figures: dict[str, Any]) -> dict[str, Any]:
    return {"figures": list(figures)}


def test_what_is_as_it_was_says_nothing() -> None:
    stand = Stand("0.1.0", "abc", rows(ROW))
    assert told_program(stand, stand) == ()


def test_the_version_and_each_row_are_told() -> None:
    was, now = Stand("0.1.0", "abc", rows(ROW)), Stand("0.2.0", "xyz", rows(ROW | {"value": 1.3}))
    assert told_program(was, now) == (
        "the program is version 0.2.0 now; it was 0.1.0",
        "figure 'pace' (pace): value 1.3, before 1.2",
    )


def test_rows_that_were_not_kept_are_still_told_to_be_others() -> None:
    assert told_program(Stand("1", "abc", {}), Stand("1", "xyz", rows(ROW))) == (OTHER_ROWS,)


def test_very_many_rows_are_counted() -> None:
    many = rows(*(ROW | {"id": f"pace-{i}"} for i in range(ROWS_SHOWN + 3)))
    said = told_program(Stand("1", "a", rows(ROW)), Stand("1", "b", many))
    assert len(said) == ROWS_SHOWN + 1
    assert said[-1] == "and 4 rows of data more"


def test_every_list_of_the_catalogue_has_a_word() -> None:
    assert set(TABLES) >= set(Catalogue.model_fields)

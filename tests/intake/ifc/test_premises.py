from __future__ import annotations

import pytest

from common.ifc_house import written
from wardwright.errors import IntakeError
from wardwright.intake.ifc.file import IfcHouse
from wardwright.intake.ifc.premises import belonging


def whose(premises: str | None) -> dict[str, str]:
    house = IfcHouse(written(), where="t.ifc")
    spaces = house.of("IfcSpace")
    found = belonging(house, spaces, premises)
    return {space.Name: found[space.id()] for space in spaces}


def test_without_premises_all_is_ours() -> None:
    assert set(whose(None).values()) == {"ours"}


def test_a_letter_picks_the_names_that_begin_with_it() -> None:
    assert whose("A") == {"A01": "ours", "A02": "ours", "B11": "neighbour"}
    assert whose("a") == whose("A")


def test_names_pick_those_spaces() -> None:
    assert whose("A01, B11") == {"A01": "ours", "A02": "neighbour", "B11": "ours"}
    assert whose("Kitchen") == {"A01": "neighbour", "A02": "ours", "B11": "neighbour"}


def test_premises_that_pick_nothing_are_refused_with_the_names_there_are() -> None:
    with pytest.raises(IntakeError, match='no space is called "C"') as caught:
        whose("A, C")
    assert "A01, A02, B11" in caught.value.cure

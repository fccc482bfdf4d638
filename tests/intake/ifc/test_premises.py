from __future__ import annotations

import pytest

from common.ifc_house import written
from wardwright.errors import IntakeError
from wardwright.intake.ifc.file import IfcHouse
from wardwright.intake.ifc.premises import belonging, choices
from wardwright.intake.ifc.reading import read_ifc
from wardwright.intake.report import PremisesChoice


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


def chosen_from(names: dict[str, str], zones: str = "") -> list[tuple[str, int]]:
    text = written().decode()
    for old, new in names.items():
        text = text.replace(f"'{old}'", f"'{new}'")
    house = IfcHouse(text.replace("ENDSEC;\nEND-ISO", f"{zones}ENDSEC;\nEND-ISO").encode(), where="t.ifc")
    return [(one.name, one.spaces) for one in choices(house, house.of("IfcSpace"))]


def test_the_letters_before_the_numbers_tell_premises_apart() -> None:
    assert chosen_from({}) == [("A", 2), ("B", 1)]
    assert chosen_from({"B11": "A11"}) == []
    assert chosen_from({"A01": "Hall", "A02": "Kitchen"}) == []
    assert chosen_from({"A01": "C01"}) == []


def test_zones_tell_premises_apart_where_no_space_is_in_two() -> None:
    house = IfcHouse(written(), where="t.ifc")
    one, two, three = (f"#{space.id()}" for space in house.of("IfcSpace"))

    def zone(number: int, name: str, members: str) -> str:
        return (
            f"#{number}=IFCZONE('{number:022d}',$,'{name}',$,$,$);\n"
            f"#{number + 1}=IFCRELASSIGNSTOGROUP('{number + 1:022d}',$,$,$,({members}),$,#{number});\n"
        )

    flats = zone(9000, "Flat 1", f"{one},{two}") + zone(9010, "Flat 2", three)
    assert chosen_from({}, flats) == [("Flat 1", 2), ("Flat 2", 1)]
    overlapping = zone(9000, "Warm", f"{one},{two}") + zone(9010, "Dry", f"{one},{three}")
    assert chosen_from({}, overlapping) == [("A", 2), ("B", 1)]


def test_the_report_asks_only_where_nobody_said_which() -> None:
    assert read_ifc(written(), where="t.ifc")[1].premises[0] == PremisesChoice(name="A", spaces=2)
    assert read_ifc(written(), where="t.ifc", premises="A")[1].premises == ()

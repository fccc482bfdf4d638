from __future__ import annotations

import re

import pytest
import shapely

from common.ifc_house import Wish, written
from wardwright.errors import IntakeError
from wardwright.intake.ifc.reading import read_ifc
from wardwright.model.site import Site


def site(wish: Wish, premises: str | None = None) -> Site:
    return read_ifc(written(wish), where="t.ifc", premises=premises)[0]


@pytest.mark.parametrize("upper_first", [False, True])
def test_storeys_come_lowest_first_in_any_order_of_the_file(upper_first: bool) -> None:
    storeys = site(Wish(upper_first=upper_first)).storeys
    assert [(s.name, s.elevation_m, s.height_m) for s in storeys] == [
        ("Ground", 0.0, 2.5),
        ("Upper", 2.7, 2.4),
    ]
    assert storeys[0].basis_of("height_m") == "measured"


def test_outlines_are_the_inner_faces() -> None:
    outlines = {s.id: shapely.Polygon(s.outline_m) for s in site(Wish()).spaces}
    assert outlines["hall-a01"].equals(shapely.box(0.3, 0.3, 3.5, 3.7))
    assert outlines["bedroom-b11"].equals(shapely.box(0.3, 0.3, 5.7, 3.7))


def test_a_height_is_written_only_where_it_differs() -> None:
    assert all(space.height_m is None for space in site(Wish()).spaces)


def test_storeys_without_a_room_of_ours_are_left_out_and_said() -> None:
    made, report = read_ifc(written(), where="t.ifc", premises="A")
    assert [s.name for s in made.storeys] == ["Ground"]
    assert "1 storey without a room of ours: Upper" in report.left_out
    assert [s.belongs for s in made.spaces] == ["ours", "ours"]
    assert {w.storey for w in made.walls} == {"ground"}


def test_spaces_outside_the_house_are_no_rooms() -> None:
    none = written().replace(b"Bedroom", b"Terrace")
    made, report = read_ifc(none, where="t.ifc", premises=None)
    assert [s.name for s in made.spaces] == ["Hall (A01)", "Kitchen (A02)"]
    assert "1 space outside the house: Terrace (B11)" in report.left_out
    outside = none.replace(b"'Hall'", b"'Patio'").replace(b"'Kitchen'", b"'Garden'")
    with pytest.raises(IntakeError, match="holds no space that is a room"):
        read_ifc(outside, where="t.ifc", premises=None)


@pytest.mark.parametrize(("prefix", "wide"), [("$", "5400 m"), (".MILLI.", "0.0054 m")])
def test_a_house_in_another_unit_than_it_says_is_refused(prefix: str, wide: str) -> None:
    text = written(Wish(unit_m=0.001) if prefix == "$" else Wish()).decode()
    assert text.count(".LENGTHUNIT.,") == 1
    changed = re.sub(r"\.LENGTHUNIT\.,[^,]*,", f".LENGTHUNIT.,{prefix},", text)
    with pytest.raises(IntakeError, match=f"stretch over {wide}, so its unit of length"):
        read_ifc(changed.encode(), where="house.ifc")

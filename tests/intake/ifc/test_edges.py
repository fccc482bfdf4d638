from __future__ import annotations

import pytest

from common.ifc_house import written
from wardwright.intake.ifc.edges import open_edges_of
from wardwright.intake.ifc.file import IfcHouse
from wardwright.model.fabric import Space, Wall


def room(name: str, x0: float, x1: float, *, storey: str = "g") -> Space:
    return Space(id=name, name=name, storey=storey, outline_m=((x0, 0), (x1, 0), (x1, 3), (x0, 3)))


def edges(spaces: list[Space], walls: list[Wall]) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    return [edge.line_m for edge in open_edges_of(IfcHouse(written(), where="t"), spaces, walls)]


def test_rooms_that_touch_with_nothing_between_have_an_open_edge() -> None:
    (line,) = edges([room("a", 0, 2), room("b", 2, 4)], [])
    assert {line[0], line[1]} == {(2.0, 0.0), (2.0, 3.0)}


def test_a_wall_that_stands_part_of_the_way_leaves_the_rest_open() -> None:
    stub = Wall(id="stub", storey="g", line_m=((2, 0), (2, 1)), thickness_m=0.1, height_m=2.4)
    (line,) = edges([room("a", 0, 2), room("b", 2, 4)], [stub])
    assert sorted((line[0][1], line[1][1])) == pytest.approx([1.0, 3.0], abs=0.02)


def test_no_edge_through_a_wall_nor_across_a_gap_nor_between_storeys() -> None:
    whole = Wall(id="whole", storey="g", line_m=((2, -1), (2, 4)), thickness_m=0.1, height_m=2.4)
    assert edges([room("a", 0, 2), room("b", 2, 4)], [whole]) == []
    assert edges([room("a", 0, 1.9), room("b", 2, 4)], []) == []
    assert edges([room("a", 0, 2), room("b", 2, 4, storey="u")], []) == []


def test_what_hangs_from_the_ceiling_parts_no_rooms() -> None:
    beam = Wall(id="beam", storey="g", line_m=((2, -1), (2, 4)), thickness_m=0.1, base_m=1.9, height_m=0.5)
    assert len(edges([room("a", 0, 2), room("b", 2, 4)], [beam])) == 1

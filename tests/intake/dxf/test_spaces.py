from __future__ import annotations

import shapely

from wardwright.intake.dxf.rooms import Area, Floor
from wardwright.intake.dxf.spaces import open_edges_of, spaces_of
from wardwright.intake.report import ReportDraft


def area(name: str, x0: float, x1: float, *, is_parted: bool = False) -> Area:
    return Area(name, shapely.box(x0, 0, x1, 3), is_parted, None)


def test_rooms_of_one_name_can_be_told_apart() -> None:
    floor = Floor([area("W.I.C.", 0, 1), area("W.I.C.", 2, 3), area("", 4, 4.5), area("", 5, 9)], [], [])
    spaces = spaces_of(floor, draft=ReportDraft())
    assert [(s.id, s.name, s.use) for s in spaces] == [
        ("w-i-c", "W.I.C.", "store"),
        ("w-i-c-2", "W.I.C. 2", "store"),
        ("closet", "Closet", "store"),
        ("room", "Room", "other"),
    ]
    assert [s.basis_of("name") for s in spaces] == ["measured", "measured", "guessed", "guessed"]


def test_parted_rooms_meet_in_an_open_edge() -> None:
    floor = Floor(
        [area("Living", 0, 4, is_parted=True), area("Dining", 4, 7, is_parted=True), area("Hall", 7.1, 9)],
        [],
        [],
    )
    spaces = spaces_of(floor, draft=ReportDraft())
    (edge,) = open_edges_of(floor, spaces)
    assert set(edge.spaces) == {"living", "dining"}
    assert {x for x, _ in edge.line_m} == {4.0}
    assert edge.basis_of("line_m") == "guessed"
    assert [s.basis_of("outline_m") for s in spaces] == ["guessed", "guessed", "measured"]

from __future__ import annotations

import pytest
import shapely

from wardwright.intake.dxf.rooms import Label, floor_of, is_as_written, labels_of, parted
from wardwright.intake.dxf.texts import Text


def label(name: str, x: float, y: float, size: tuple[float, float] | None = None) -> Label:
    return Label(name, shapely.Point(x, y), size)


SOLID = shapely.box(0, 0, 8, 4).difference(
    shapely.union_all(
        [shapely.box(0.2, 0.2, 3.9, 3.8), shapely.box(4.0, 0.2, 7.0, 3.8), shapely.box(7.1, 0.2, 7.8, 3.8)]
    )
)


def test_closed_floor_takes_the_name_on_it() -> None:
    floor = floor_of(SOLID, [label("Hall", 1, 1), label("Porch", 1, -1), label("Den", 20, 0)])
    assert [(room.name, round(room.outline.area, 2), room.is_parted) for room in floor.rooms] == [
        ("Hall", 13.32, False),
        ("", 10.8, False),
        ("", 2.52, False),
    ]
    assert (floor.outside, floor.loose) == (["Porch"], ["Den"])


def test_floor_in_the_open_is_no_room() -> None:
    floor = floor_of(SOLID, [label("Deck", 1, 1)])
    assert len(floor.rooms) == 2
    assert floor.outside == ["Deck"]


L_SHAPE = shapely.box(0, 0, 6, 3).union(shapely.box(0, 3, 2, 6))


def test_open_floor_is_parted_along_its_walls() -> None:
    rooms = {room.name: room for room in parted(L_SHAPE, [label("Dining", 1, 5), label("Living", 4, 1)])}
    assert rooms["Dining"].outline.area + rooms["Living"].outline.area == pytest.approx(
        L_SHAPE.area, abs=0.02
    )
    assert all(room.is_parted for room in rooms.values())
    assert rooms["Dining"].outline.intersection(rooms["Living"].outline).area < 0.02


@pytest.mark.parametrize(("size", "dining"), [((2.0, 6.0), 12.0), ((2.0, 3.0), 6.0)])
def test_a_written_size_says_where_to_part(size: tuple[float, float], dining: float) -> None:
    rooms = {
        room.name: room for room in parted(L_SHAPE, [label("Dining", 1, 5, size), label("Living", 4, 1)])
    }
    assert rooms["Dining"].outline.area == pytest.approx(dining, abs=0.1)
    assert is_as_written(rooms["Dining"])
    assert not is_as_written(rooms["Living"])


def test_two_names_on_one_piece_keep_the_first() -> None:
    assert [room.name for room in parted(shapely.box(0, 0, 3, 3), [label("A", 1, 1), label("B", 2, 2)])] == [
        "A"
    ]


def test_labels_take_the_size_written_by_them() -> None:
    texts = (
        Text("BATH", (0, 0), 0.2, 0.0),
        Text("5' x 8'1", (0, -0.3), 0.2, 0.0),
        Text("W.I.C.", (9, 9), 0.2, 0.0),
    )
    bath, closet = labels_of(texts)
    assert (bath.name, bath.size) == ("Bath", pytest.approx((1.524, 2.464), abs=1e-3))
    assert (closet.name, closet.size) == ("W.I.C.", None)

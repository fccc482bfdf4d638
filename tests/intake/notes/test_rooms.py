from __future__ import annotations

import pytest
import shapely

from common.cottage import read
from wardwright.errors import NotesError

HOUSE = "walls inside 0.1 block\nstorey ground 2.4 high\nhall 2 x 4\n"


def bounds(lines: str, room: str) -> tuple[float, ...]:
    return tuple(round(v, 6) for v in shapely.Polygon(read(lines, house=HOUSE).space(room).outline_m).bounds)


@pytest.mark.parametrize(
    ("line", "box"),
    [
        ("study 3 x 2 against hall east", (2.1, 0, 5.1, 2)),
        ("study 3 x 2 against hall west", (-3.1, 0, -0.1, 2)),
        ("study 3 x 2 against hall north", (0, 4.1, 3, 6.1)),
        ("study 3 x 2 against hall south", (0, -2.1, 3, -0.1)),
        ("study 3 x 2 against hall east, 0.4 from its north end", (2.1, 1.6, 5.1, 3.6)),
        ("study 3 x 2 against hall east, 0.4 from its south end", (2.1, 0.4, 5.1, 2.4)),
        ("study 3 x 2 against hall north, 0.5 from its east end", (-1.5, 4.1, 1.5, 6.1)),
        ("study 3 x 2 against hall north, -0.5 from its west end, wall 0.2", (-0.5, 4.2, 2.5, 6.2)),
        ("study 3 x 2 against hall east, open", (2, 0, 5, 2)),
        ("study 3 x 2 at 10, -1", (10, -1, 13, 1)),
        ("study 1 x 1 inside hall corner north-east", (1, 3, 2, 4)),
        ("study 1 x 1 inside hall, 0 from west, 2 from south", (0, 2, 1, 3)),
        ("storey up\nstudy 1 x 2 above hall", (0, 0, 1, 2)),
        ("storey up\nstudy 1 x 2 above hall, 0 from north, 0.5 from east", (0.5, 2, 1.5, 4)),
        ("study 10'6\" x 320 cm against hall east", (2.1, 0, 5.3004, 3.2)),
    ],
)
def test_a_room_stands_where_the_line_says(line: str, box: tuple[float, ...]) -> None:
    assert bounds(line, "study") == box


def test_a_room_cut_out_leaves_the_rest_and_a_wall() -> None:
    site = read("closet 0.8 x 1.5 inside hall corner north-west, wall 0.08", house=HOUSE)
    hall, closet = (shapely.Polygon(site.space(name).outline_m) for name in ("hall", "closet"))
    assert hall.area == pytest.approx(2 * 4 - 0.88 * 1.58)
    assert closet.area == pytest.approx(0.8 * 1.5)
    assert hall.distance(closet) == pytest.approx(0.08)


def test_use_is_guessed_from_the_name_or_told() -> None:
    site = read(
        "bedroom-1 3 x 2 against hall east\nden 3 x 2 against hall west, use study, 2.1 high", house=HOUSE
    )
    assert (site.space("bedroom-1").use, site.space("bedroom-1").basis_of("use")) == ("bedroom", "guessed")
    assert (site.space("den").use, site.space("den").basis_of("use"), site.space("den").height_m) == (
        "study",
        "told",
        2.1,
    )
    assert read("attic 3 x 2 at 9, 9, belongs neighbour", house=HOUSE).space("attic").belongs == "neighbour"


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("study 3 x 2", "nothing says where 'study' is"),
        ("study 3 x 2 against hal east", "Did you mean 'hall'"),
        ("study 3 x 2 against hall up", "'up' is not a side"),
        ("study 3 x 2 against hall east, 0.4 from its west end", "runs from south to north"),
        ("study 3 x 2 at 1, 1", "study would lie over hall by 3.00 m2|study would lie over hall by 2.00 m2"),
        ("study 3 x 2 against hall east, wall 0.9", "a wall 0.9 m thick cannot be"),
        ("study 3 x 2 at 9, 9, 0.4 from north", "'from' says nothing about a room placed so"),
        ("study 3 x 2 at 9, 9, open", "'open' says nothing about a room placed so"),
        ("study 3 x 2 against hall east, corner north-west", "'corner' says nothing about a room placed so"),
        ("study 3 x 2 at 2, 0", "hall and study touch with no wall between them"),
        ("study 3 x 2 inside hall corner north-east", "it does not fit into hall"),
        ("study 1 x 1 inside hall, 0.5 from west, 1 from south", "it does not fit into hall at a side of it"),
        ("study 1 x 1 inside hall", "nothing says where in hall it is"),
        ("hall 1 x 1 against hall east", "there is a 'hall' already"),
        ("Study 3 x 2 against hall east", "'Study' is no id"),
        ("study 3 against hall east", "the room has only one length"),
        ("storey up\nstudy 3 x 2 against hall east", "hall is on another storey"),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(line, house=HOUSE)


def test_a_room_needs_a_storey() -> None:
    with pytest.raises(NotesError, match="no storey is stated above this room"):
        read("hall 2 x 4", house="")


def test_a_room_wider_than_any_house_is_a_slip() -> None:
    with pytest.raises(NotesError, match="a room of 1800 x 4600 m is too large"):
        read(house="storey ground 2.4 high\nhall 1800 x 4600\n")

from __future__ import annotations

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from common.cottage import read
from wardwright.errors import NotesError
from wardwright.intake.notes.adjacency import ring_of

HOUSE = "storey g 2.4 high\nhall 3 x 4\n"
LENGTHS = st.integers(50, 500).map(lambda n: n / 100)


def box(line: str) -> shapely.Geometry:
    return shapely.Polygon(read(line, house=HOUSE).space("den").outline_m)


@given(LENGTHS, LENGTHS, st.sampled_from(["north", "east", "south", "west"]))
def test_a_room_stands_a_walls_thickness_off_and_keeps_its_size(
    width: float, depth: float, side: str
) -> None:
    den = box(f"den {width} x {depth} against hall {side}, wall 0.12")
    hall = shapely.box(0, 0, 3, 4)
    assert den.distance(hall) == pytest.approx(0.12)
    assert den.area == pytest.approx(width * depth)


@given(st.integers(30, 200).map(lambda n: n / 100), st.integers(30, 200).map(lambda n: n / 100))
def test_a_room_inside_takes_itself_and_its_wall_away(width: float, depth: float) -> None:
    site = read(f"den {width} x {depth} inside hall corner south-east, wall 0.1", house=HOUSE)
    hall = shapely.Polygon(site.space("hall").outline_m)
    assert hall.area == pytest.approx(12 - (width + 0.1) * (depth + 0.1))


def test_the_two_ends_say_the_same_place() -> None:
    assert box("den 2 x 1 against hall east, 0.5 from its south end") == box(
        "den 2 x 1 against hall east, 2.5 from its north end"
    )


def test_two_distances_the_same_way_are_one_too_many() -> None:
    with pytest.raises(NotesError, match="Give one distance"):
        box("den 2 x 1 against hall east, 0.5 from south, 2.5 from north")
    with pytest.raises(NotesError, match="two distances say the same"):
        box("den 1 x 1 inside hall, 0 from west, 2 from east, 0 from south")


def test_a_ring_is_anticlockwise_and_has_no_needless_corner() -> None:
    ring = ring_of(shapely.Polygon([(0, 0), (0, 2), (1, 2), (1, 1), (1, 0)]))
    assert len(ring) == 4
    assert shapely.LinearRing(ring).is_ccw

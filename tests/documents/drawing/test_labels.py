from __future__ import annotations

import shapely
from hypothesis import given
from hypothesis import strategies as st

from wardwright.documents.drawing.labels import Board, Taken

SHEET = (0.0, 0.0, 100.0, 100.0)
NOTHING = shapely.Polygon()


def board(solid: shapely.Geometry = NOTHING, soft: shapely.Geometry = NOTHING) -> Board:
    return Board(SHEET, mm_per_unit=1.0, solid=solid, soft=soft)


def test_many_labels_at_one_point_do_not_lie_on_each_other() -> None:
    here = board()
    for _ in range(8):
        here.place((50.0, 50.0), (10.0, 3.0), clear_mm=1.0)
    taken = here.taken
    assert all(a.shared(b) == 0.0 for i, a in enumerate(taken) for b in taken[:i])


def test_a_label_keeps_off_walls_and_on_the_sheet() -> None:
    wall = shapely.box(52.0, 0.0, 60.0, 100.0)
    x, _ = board(solid=wall).place((51.0, 50.0), (10.0, 3.0), clear_mm=1.0)
    assert x + 5.0 <= 52.0
    x, y = board().place((99.0, 99.0), (10.0, 3.0), clear_mm=1.0)
    assert x <= 95.0
    assert y <= 98.5


def test_a_label_keeps_off_what_is_to_stay_clear() -> None:
    way = shapely.box(51.0, 0.0, 70.0, 100.0)
    here = Board(SHEET, mm_per_unit=1.0, solid=NOTHING, soft=NOTHING, clear=way)
    x, _ = here.copy().place((50.0, 50.0), (10.0, 3.0), clear_mm=1.0)
    assert x + 5.0 <= 51.0


def test_a_free_place_is_taken_as_it_is() -> None:
    assert board().place((20.0, 20.0), (10.0, 3.0), clear_mm=0.0, is_inside=True) == (20.0, 20.0)


def test_a_copy_does_not_touch_the_first() -> None:
    first = board()
    first.copy().take((1.0, 1.0), (1.0, 1.0))
    assert first.taken == []
    assert Taken(0, 0, 2, 2).shared(Taken(1, 1, 3, 3)) == 1


def test_a_label_that_must_lie_apart_goes_as_far_as_it_has_to() -> None:
    here = board()
    for x in range(35, 70, 5):
        for y in range(35, 70, 5):
            here.take((float(x), float(y)), (5.0, 5.0))
    lies = here.rectangle(here.place((50.0, 50.0), (6.0, 4.0), clear_mm=2.0, is_apart=True), (6.0, 4.0))
    assert all(lies.shared(other) == 0.0 for other in here.taken[:-1])


def test_where_nothing_is_free_a_label_lies_on_the_sheet_all_the_same() -> None:
    here = board()
    here.take((50.0, 50.0), (100.0, 100.0))
    x, y = here.place((50.0, 50.0), (6.0, 4.0), clear_mm=2.0, is_apart=True)
    assert 3.0 <= x <= 97.0
    assert 2.0 <= y <= 98.0


def test_a_line_to_a_label_keeps_on_its_side_of_a_wall() -> None:
    wall = shapely.box(52.0, 0.0, 53.0, 100.0)
    x, _ = board(solid=wall).place((51.8, 50.0), (6.0, 4.0), clear_mm=2.0, is_apart=True)
    assert x < 52.0


PLACES = st.tuples(st.floats(30.0, 70.0), st.floats(30.0, 70.0))


@given(points=st.lists(PLACES, min_size=1, max_size=25), wide=st.floats(4.0, 9.0))
def test_labels_of_any_cluster_lie_on_no_other_and_on_no_mark(
    points: list[tuple[float, float]], wide: float
) -> None:
    def laid() -> list[Taken]:
        here = board(solid=shapely.box(48.0, 0.0, 51.0, 100.0))
        for point in points:
            here.take(point, (2.0, 2.0))
        return [
            here.rectangle(here.place(p, (wide, 4.0), clear_mm=2.0, is_apart=True), (wide, 4.0))
            for p in points
        ]

    lie = laid()
    marks = [board().rectangle(point, (2.0, 2.0)) for point in points]
    assert all(a.shared(b) == 0.0 for i, a in enumerate(lie) for b in (*lie[:i], *marks))
    assert lie == laid()  # and always in the same places

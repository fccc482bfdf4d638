from __future__ import annotations

import shapely

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

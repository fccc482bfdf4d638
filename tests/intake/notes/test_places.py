from __future__ import annotations

import pytest

from wardwright.errors import NotesError
from wardwright.intake.notes.clauses import Clauses
from wardwright.intake.notes.places import floor_place
from wardwright.intake.notes.words import Line
from wardwright.model.fabric import Space

LINE = Line((), where="x")
ROOM = Space(id="room", name="room", storey="g", outline_m=((0, 0), (4, 0), (4, 3), (0, 3)))
ELL = ROOM.model_copy(update={"outline_m": ((0, 0), (9, 0), (9, 1), (1, 1), (1, 9), (0, 9))})


@pytest.mark.parametrize(
    ("clauses", "point", "is_told"),
    [
        ({}, (2, 1.5), False),
        ({"side": "middle"}, (2, 1.5), True),
        ({"ends": {"west": 0.9, "north": 1.0}}, (0.9, 2.0), True),
        ({"side": "east"}, (3.9, 1.5), False),
        ({"side": "east", "ends": {"south": 0.5}}, (3.9, 0.5), True),
        ({"side": "north-west"}, (0.1, 2.9), True),
    ],
)
def test_a_place_on_the_floor(clauses: dict, point: tuple[float, float], is_told: bool) -> None:  # type: ignore[type-arg]
    found, told = floor_place(LINE, ROOM, Clauses(LINE, **clauses), off=0.1)
    assert found == pytest.approx(point)
    assert told is is_told


def test_the_middle_of_a_bent_room_is_in_it() -> None:
    (x, y), _ = floor_place(LINE, ELL, Clauses(LINE))
    assert x < 1 or y < 1


@pytest.mark.parametrize(
    ("clauses", "message"),
    [
        ({"ends": {"west": 2.0, "south": 2.0}}, "that place is not in room"),
        ({"ends": {"west": 2.0}}, "one distance alone does not say where it is"),
    ],
)
def test_what_cannot_be_is_refused(clauses: dict, message: str) -> None:  # type: ignore[type-arg]
    with pytest.raises(NotesError, match=message):
        floor_place(LINE, ELL, Clauses(LINE, **clauses))

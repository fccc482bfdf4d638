"""Straight paths: length, walls and floors crossed, and a rough loss."""

from __future__ import annotations

import math

import pytest

from common.houses import two_rooms_and_hall
from wardwright.model.fabric import Storey
from wardwright.model.placement import Standing
from wardwright.rules.straight_paths import StraightPath, straight_path

HOUSE = two_rooms_and_hall(
    storeys=(
        Storey(id="ground", name="ground floor", elevation_m=0.0),
        Storey(id="first", name="first floor", elevation_m=2.7),
    )
)
KITCHEN = Standing("ground", 1.0, 1.0, 1.5, 0.0)


@pytest.mark.parametrize(
    ("end", "length", "walls", "floors"),
    [
        (Standing("ground", 3.0, 1.0, 1.5, 0.0), 2.0, 0, 0),
        (Standing("ground", 5.0, 1.0, 1.5, 0.0), 4.0, 1, 0),
        (Standing("ground", 8.0, 1.0, 1.5, 0.0), 7.0, 2, 0),
        # Straight up: the upper storey has no walls of its own here.
        (Standing("first", 1.0, 1.0, 1.5, 0.0), 2.7, 0, 1),
        # Up and across: it leaves the ground floor at x = 1 + 4 * 1.2 / 2.7 = 2.78, short of the first wall.
        (Standing("first", 5.0, 1.0, 1.5, 0.0), math.hypot(4.0, 2.7), 0, 1),
        # Farther across: it leaves it at x = 1 + 8 * 1.2 / 2.7 = 4.56, beyond one wall.
        (Standing("first", 9.0, 1.0, 1.5, 0.0), math.hypot(8.0, 2.7), 1, 1),
    ],
)
def test_what_lies_between(end: Standing, length: float, walls: int, floors: int) -> None:
    for path in (straight_path(HOUSE, KITCHEN, end), straight_path(HOUSE, end, KITCHEN)):
        assert path.length_m == pytest.approx(length)
        assert (path.walls, path.floors) == (walls, floors)


def test_a_doorway_is_free() -> None:
    """The kitchen's door is at y = 4.0."""
    at_door = straight_path(HOUSE, KITCHEN._replace(y_m=4.0), Standing("ground", 5.0, 4.0, 1.5, 0.0))
    assert at_door.walls == 0


def test_the_loss_adds_up_and_is_never_below_that_of_a_metre() -> None:
    assert StraightPath(10.0, 2, 1).loss_db == pytest.approx(20.0 + 10.0 + 9.0)
    assert StraightPath(0.1, 0, 0).loss_db == 0.0


@pytest.mark.parametrize(
    ("walls", "floors", "words"),
    [(0, 0, "through nothing"), (1, 0, "through 1 wall"), (2, 1, "through 2 walls and 1 floor")],
)
def test_it_is_said(walls: int, floors: int, words: str) -> None:
    assert StraightPath(1.0, walls, floors).words == words

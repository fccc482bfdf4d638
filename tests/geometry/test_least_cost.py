"""The way of least cost over cells: by hand, against the straight way, and round what is dear."""

from __future__ import annotations

import math

import numpy as np
import pytest

from wardwright.geometry.least_cost import Link, ways_over, web_of_cells

EVEN = np.ones((21, 21))
OPEN = np.ones((21, 21), dtype=np.bool_)


def _cell(row: int, column: int, width: int = 21) -> np.ndarray:
    return np.array([row * width + column])


def test_straight_and_aslant_are_exact() -> None:
    """Along a row, a diagonal and a knight's move a way has its own length."""
    ways = ways_over(web_of_cells(OPEN, EVEN, cell=0.1), _cell(10, 10))
    for row, column in ((10, 20), (0, 0), (20, 15), (14, 2), (0, 15), (6, 18)):
        expected = 0.1 * math.hypot(row - 10, column - 10)
        assert ways.cost[_cell(row, column)][0] == pytest.approx(expected, rel=1e-12)


def test_no_way_is_more_than_a_fortieth_too_long() -> None:
    """2.75 % at the worst angle, and never too short."""
    ways = ways_over(web_of_cells(OPEN, EVEN, cell=0.1), _cell(10, 10))
    rows, columns = np.indices(OPEN.shape)
    straight = 0.1 * np.hypot(rows - 10, columns - 10).ravel()
    some = straight > 0.0
    ratio = ways.cost[some] / straight[some]
    assert ratio.min() >= 1.0 - 1e-12
    assert ratio.max() <= 1.0275


def test_round_what_is_dear() -> None:
    """A dear middle is gone round; a dear wall from side to side is gone through once."""
    dear = EVEN.copy()
    dear[5:16, 5:16] = 100.0
    way = ways_over(web_of_cells(OPEN, dear, cell=0.1), _cell(10, 0)).to(_cell(10, 20))
    assert way is not None
    assert way[0] == 10 * 21
    assert way[-1] == 10 * 21 + 20
    assert dear.ravel()[way].max() == 1.0
    wall = EVEN.copy()
    wall[:, 10] = 100.0
    cost = ways_over(web_of_cells(OPEN, wall, cell=0.1), _cell(10, 0)).cost[_cell(10, 20)][0]
    assert cost == pytest.approx(1.8 + 2 * 0.1 * 50.5)


def test_no_step_jumps_a_wall() -> None:
    """A wall one cell thick parts two rooms; a link joins them at its own cost."""
    parted = OPEN.copy()
    parted[:, 10] = False
    ways = ways_over(web_of_cells(parted, EVEN, cell=0.1), _cell(3, 2))
    assert not np.isfinite(ways.cost.reshape(21, 21)[:, 11:]).any()
    assert ways.to(_cell(3, 15)) is None
    linked = web_of_cells(parted, EVEN, cell=0.1, links=[Link(3 * 21 + 9, 3 * 21 + 11, 7.0)])
    assert ways_over(linked, _cell(3, 2)).cost[_cell(3, 15)][0] == pytest.approx(0.7 + 7.0 + 0.4)


def test_a_mirrored_floor_costs_the_same() -> None:
    """Left and right, up and down: no step is forgotten on one side."""
    rng = np.random.default_rng(3)
    is_open, cost = rng.random((15, 22)) > 0.2, rng.random((15, 22))
    is_open[7, 11] = True
    found = ways_over(web_of_cells(is_open, cost, cell=0.1), np.array([7 * 22 + 11])).cost.reshape(15, 22)
    turned = ways_over(web_of_cells(is_open[:, ::-1], cost[:, ::-1], cell=0.1), np.array([7 * 22 + 10]))
    np.testing.assert_allclose(turned.cost.reshape(15, 22)[:, ::-1], found)
    over = ways_over(web_of_cells(is_open[::-1], cost[::-1], cell=0.1), np.array([7 * 22 + 11]))
    np.testing.assert_allclose(over.cost.reshape(15, 22)[::-1], found)


def test_many_starts() -> None:
    """The nearest of some starts counts, and nothing has been paid at any."""
    starts = np.array([0, 20])
    ways = ways_over(web_of_cells(OPEN, EVEN, cell=0.1), starts)
    assert ways.cost[starts].tolist() == [0.0, 0.0]
    assert ways.cost[_cell(0, 18)][0] == pytest.approx(0.2)
    way = ways.to(_cell(0, 18))
    assert way is not None
    assert way.tolist()[0] == 20

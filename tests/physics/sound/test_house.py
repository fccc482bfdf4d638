import numpy as np
import pytest

from wardwright.physics.sound.house import (
    OUTSIDE,
    Case,
    Elements,
    House,
    Leaves,
    Rooms,
    balance_of,
    open_shares,
)

CASES = (Case(0.0, 0.0, 1.0), Case(6.0, 0.01, 1.0), Case(0.0, 0.0, 2.0), Case(0.0, 0.0, 1.0, 2))


def house() -> House:
    rooms = Rooms(np.array([50.0, 30.0]), np.array([85.0, 60.0]), np.full((2, 6), 8.5), np.zeros((2, 6)))
    loss = np.stack([np.full((2, 6), one) for one in (30.0, 40.0, 50.0)])
    walls = Elements(np.array([1, 0]), np.array([0, OUTSIDE]), np.array([10.0, 20.0]), loss)
    leaves = Leaves(
        np.array([1, 0]),
        np.array([0, OUTSIDE]),
        np.array([1.6, 1.0]),
        np.full((2, 6), 20.0),
        np.array([0.8, 0.0]),
    )
    return House(rooms, walls, leaves)


def test_what_leaks_out_is_swallowed_and_what_joins_rooms_is_shared() -> None:
    found = balance_of(house(), np.array([0.0, 0.0]), CASES)
    through = 10.0 * 1e-4 + 1.6e-2
    lost = 20.0 * 1e-4 + 1.0e-2
    whole = np.array([[8.5 + lost + through, -through], [-through, 8.5 + through]])
    assert found.heard[0, 0] == pytest.approx(np.linalg.inv(whole))
    assert found.left_over[0, :, 0] == pytest.approx(np.full(6, 0.9))


def test_each_case_changes_its_own_input() -> None:
    found = balance_of(house(), np.array([0.0, 0.0]), CASES)
    assert (found.walls_through[1] > found.walls_through[0]).all()
    assert (found.walls_through[3] < found.walls_through[0]).all()
    assert found.leaves_through[1, 0, 0] == pytest.approx(0.008 + 1.592 * 10.0**-1.4)
    assert found.left_over[2, 0, 0] == pytest.approx(0.8)


def test_an_open_leaf_lets_all_through() -> None:
    found = balance_of(house(), open_shares(("open", "shut")), CASES[:1])
    assert found.leaves_through[0, :, 0] == pytest.approx(np.full(6, 1.6))
    assert 0.1 < open_shares(("ajar",))[0] < 0.2

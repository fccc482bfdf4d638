import numpy as np
import pytest

from wardwright.physics.sound.house import OUTSIDE, Balance
from wardwright.physics.sound.levels import (
    Ears,
    Facade,
    Sources,
    energy_at,
    energy_outside,
    facade_gain,
    facade_through,
    rooms_energy,
)
from wardwright.physics.sound.network import answering
from wardwright.physics.sound.room_level import level_in_room

POWER = np.zeros((1, 6))
POWER[0, 3] = 1e11
NO_FACADE = Facade(
    np.empty(0, np.int64), np.empty(0), np.empty(0, np.int64), np.empty((0, 3)), np.empty((0, 2))
)
ONE_PIECE = Facade(
    np.array([0]), np.array([1.0]), np.array([0]), np.array([[0.0, 0.0, 1.5]]), np.array([[0.0, -1.0]])
)


def balance(absorption: float = 8.5, through: float = 0.01) -> Balance:
    swallowed = np.full((1, 6, 1), absorption)
    return Balance(
        answering(swallowed, np.zeros((1, 6, 1, 1))),
        np.full((1, 6, 1), 0.9),
        np.empty((1, 6, 0)),
        np.full((1, 6, 1), through),
    )


def test_in_its_own_room_a_sounder_is_heard_as_the_textbook_says() -> None:
    source = Sources(np.array([0]), np.array([[0.0, 0.0, 2.0]]), POWER)
    ears = Ears(np.array([0, 0]), np.array([[0.0, 3.0, 2.0], [0.0, 0.5, 2.0]]))
    energy = energy_at(rooms_energy(balance(), source, facade=NO_FACADE), source, ears)
    book = level_in_room([110.0], [3.0, 0.5], surface=85.0, absorption=[0.1], directivity=2.0)
    assert 10.0 * np.log10(energy[0, 0]) == pytest.approx(book[:, 0])


def test_a_sounder_outside_comes_in_by_the_facade_and_only_if_it_faces_it() -> None:
    front = Sources(np.array([OUTSIDE]), np.array([[0.0, -4.0, 1.5]]), POWER)
    behind = Sources(np.array([OUTSIDE]), np.array([[0.0, 4.0, 1.5]]), POWER)
    found = rooms_energy(balance(), front, facade=ONE_PIECE)[0, 0, 3, 0]
    # Pressure at 4 m over a half sphere, on 1 m2 times the share, into 8.5 m2.
    assert found == pytest.approx(4.0 * 1e11 * 2.0 / (4.0 * np.pi * 16.0) * 0.01 / 8.5)
    assert rooms_energy(balance(), behind, facade=ONE_PIECE).sum() == 0.0


def test_a_place_outside_hears_the_room_by_the_facade_and_a_sounder_outside_straight() -> None:
    places = np.array([[0.0, -5.0, 1.5]])
    gain = facade_gain(balance(), ONE_PIECE, places, screened=np.ones((1, 1, 6)))
    assert gain[0, 0, 0, 0] == pytest.approx(0.01 / (8.0 * np.pi * 25.0))
    both = Sources(
        np.array([0, OUTSIDE]), np.array([[0.0, 1.0, 2.0], [0.0, -0.1, 1.5]]), np.repeat(POWER, 2, 0)
    )
    rooms = rooms_energy(balance(), both, facade=ONE_PIECE)
    found = energy_outside(rooms, both, gain=gain, places=places, screened=np.ones((2, 1, 6)))
    assert found[0, 0, 0] == pytest.approx(rooms[0, 0, 3, 0] * gain[0, 3, 0, 0])
    assert found[0, 1, 0] == pytest.approx(1e11 * 2.0 / (4.0 * np.pi * 4.9**2))


def test_walls_and_leaves_of_the_facade_are_told_apart() -> None:
    two = Facade(np.array([0, 0]), np.array([0.0, 1.0]), np.array([0, 0]), np.zeros((2, 3)), np.zeros((2, 2)))
    one = balance()
    walled = Balance(one.heard, one.left_over, np.full((1, 6, 1), 0.5), one.leaves_through)
    assert facade_through(two, walled)[0, 0].tolist() == [0.5, 0.01]

import numpy as np
import pytest

from wardwright.physics.sound.outside import SCREEN_MOST_DB, facade_share, power_let_in, screen_loss


def test_a_facade_gives_six_decibels_less_for_twice_the_distance() -> None:
    near, far = 10.0 * np.log10(facade_share(0.01, [5.0, 10.0]))
    assert float(near - far) == pytest.approx(6.02, abs=0.01)


def test_an_open_window_is_never_louder_outside_than_in_the_room() -> None:
    assert float(facade_share(2.0, 0.01)) == 1.0


def test_sound_along_a_facade_puts_nothing_into_it() -> None:
    assert power_let_in(0.5, [1.0, 0.5, 0.0, -1.0]).tolist() == [0.5, 0.25, 0.0, 0.0]


def test_a_longer_way_round_takes_more_and_never_more_than_the_most() -> None:
    found = screen_loss(np.array([[-1.0], [0.01], [0.3], [50.0]]), np.array([500.0, 4000.0]))
    assert (np.diff(found, axis=0) >= 0.0).all()
    assert (found[:, 1] >= found[:, 0]).all()
    assert found[0].tolist() == [0.0, 0.0]
    assert found[-1].tolist() == [SCREEN_MOST_DB, SCREEN_MOST_DB]

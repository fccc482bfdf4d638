import numpy as np
import pytest

from wardwright.physics.sound.power import direct_level, power_level


def test_the_direct_level_at_the_stated_distance_is_the_stated_level() -> None:
    for directivity in (1.0, 2.0):
        power = power_level(93.0, distance=3.0, directivity=directivity)
        assert float(direct_level(power, 3.0, directivity=directivity)) == pytest.approx(93.0)


def test_twice_as_far_is_six_decibels_less() -> None:
    found = direct_level(100.0, [1.0, 2.0, 4.0])
    assert np.diff(found) == pytest.approx([-6.0206, -6.0206], abs=1e-4)


def test_no_level_at_no_distance() -> None:
    with pytest.raises(ValueError, match="above zero"):
        power_level(90.0, distance=0.0)
    with pytest.raises(ValueError, match="above zero"):
        direct_level(90.0, [1.0, 0.0])

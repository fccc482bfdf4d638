import numpy as np
import pytest

from wardwright.errors import OutOfRangeError
from wardwright.physics.radio.free_space import free_space_loss


def test_twice_as_far_loses_6_db() -> None:
    near, far = free_space_loss([5.0, 10.0], 868e6)
    assert far - near == pytest.approx(20 * np.log10(2.0), abs=1e-12)


def test_each_distance_may_have_its_own_frequency() -> None:
    losses = free_space_loss([10.0, 10.0], [868.3e6, 2440e6])
    assert losses == pytest.approx([51.22, 60.20], abs=0.006)


def test_nearer_than_a_wavelength_is_refused_and_marked() -> None:
    with pytest.raises(OutOfRangeError, match="shorter than one wavelength") as caught:
        free_space_loss([0.1, 1.0], 868e6)
    assert np.asarray(caught.value.mask).tolist() == [True, False]

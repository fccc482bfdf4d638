import numpy as np
import pytest

from wardwright.physics.sound.reverberation import absorption_area, eyring_time, sabine_time


def test_both_agree_where_little_is_swallowed_and_eyring_is_shorter_where_much_is() -> None:
    for mean, share in ((0.001, 0.999), (0.5, 0.73)):
        ratio = float(eyring_time(50.0, surface=85.0, absorption=mean) / sabine_time(50.0, 85.0 * mean))
        assert ratio < 1.0
        assert ratio == pytest.approx(share, abs=0.01)


def test_surfaces_add_up_band_by_band() -> None:
    found = absorption_area([10.0, 5.0], [[0.1, 0.2], [0.4, 0.0]])
    assert found == pytest.approx(np.array([3.0, 2.0]))

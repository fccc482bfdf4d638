import numpy as np
import pytest

from wardwright.physics.sound.air import air_absorption


def test_a_higher_tone_loses_more() -> None:
    found = air_absorption(np.geomspace(50.0, 10000.0, 60))
    assert (np.diff(found) > 0).all()


def test_dry_air_swallows_more_of_a_high_tone() -> None:
    dry, damp = (float(air_absorption(4000.0, celsius=15.0, humidity=one)) for one in (20.0, 80.0))
    assert dry > 3 * damp
    assert damp == pytest.approx(0.024, abs=0.001)

import numpy as np
import pytest

from wardwright.physics.sound.bands import BANDS_HZ, a_weighting, band_of, exact_middles, level_sum


def test_middles_are_an_octave_apart_to_half_a_per_cent() -> None:
    found = exact_middles()
    assert found[1:] / found[:-1] == pytest.approx(np.full(5, 10.0**0.3))
    assert found == pytest.approx(np.asarray(BANDS_HZ), rel=0.011)


def test_the_ear_makes_most_of_two_and_a_half_kilohertz() -> None:
    tones = np.linspace(100.0, 8000.0, 500)
    assert 2000.0 < tones[int(np.argmax(a_weighting(tones)))] < 3200.0
    assert float(a_weighting(1000.0)) == 0.0


def test_silence_adds_nothing() -> None:
    assert float(level_sum([70.0, -np.inf])) == pytest.approx(70.0)
    assert float(level_sum([-np.inf, -np.inf])) == -np.inf


@pytest.mark.parametrize(("tone", "band"), [(60.0, 125.0), (520.0, 500.0), (700.0, 500.0), (720.0, 1000.0)])
def test_a_tone_falls_in_its_octave(tone: float, band: float) -> None:
    assert BANDS_HZ[band_of(tone)] == band

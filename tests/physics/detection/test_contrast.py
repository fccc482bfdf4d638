import math

import pytest

from wardwright.physics.detection.contrast import (
    ZERO_C_K,
    _radiance,
    band_share,
    contrast_factor,
    peak_wavelength,
    relative_contrast,
)

# Reference notes on heat sensing, section 5a and 5c: computed there with another program (not by this code).
RELATIVE = {10.0: 1.61, 15.0: 1.31, 25.0: 0.66, 28.0: 0.45, 30.0: 0.30, 33.0: 0.08}


@pytest.mark.parametrize(("air_c", "expected"), RELATIVE.items())
def test_contrast_falls_with_warmth_as_published(air_c: float, expected: float) -> None:
    assert relative_contrast(air_c) == pytest.approx(expected, abs=0.006)


def test_at_skin_temperature_nothing_is_left() -> None:
    assert relative_contrast(34.0) == pytest.approx(0.0, abs=1e-12)
    assert contrast_factor(40.0, 1.7) > 0.0


@pytest.mark.parametrize(("celsius", "micrometres"), [(37.0, 9.34), (34.0, 9.43), (20.0, 9.89)])
def test_the_peak_is_where_wien_says(celsius: float, micrometres: float) -> None:
    assert peak_wavelength(celsius + ZERO_C_K) * 1e6 == pytest.approx(micrometres, abs=0.006)


@pytest.mark.parametrize(
    ("band", "share"), [((8e-6, 14e-6), 0.380), ((7e-6, 14e-6), 0.441), ((5.5e-6, 14e-6), 0.505)]
)
def test_share_of_output_in_the_band(band: tuple[float, float], share: float) -> None:
    assert band_share(34.0 + ZERO_C_K, band) == pytest.approx(share, abs=0.0006)


def test_all_wavelengths_together_are_all_the_output() -> None:
    # Stefan and Boltzmann against Planck: two ways to one number.
    parts = [(10 ** (a / 10 - 6), 10 ** ((a + 1) / 10 - 6)) for a in range(35)]
    assert math.fsum(band_share(300.0, part) for part in parts) == pytest.approx(1.0, abs=1e-4)


def test_slope_at_room_temperature() -> None:
    assert float(_radiance(293.65) - _radiance(292.65)) == pytest.approx(0.786, abs=0.001)


@pytest.mark.parametrize(
    ("air_c", "least_k", "low", "high"),
    [(30.0, 1.7, 1.67, 1.69), (31.6, 1.7, 0.97, 1.05), (29.0, 3.5, 0.9, 1.1)],
)
def test_factor_against_the_sheet(air_c: float, least_k: float, low: float, high: float) -> None:
    # "1.68 at 30 C and falls under 1 near 31.6 C"; "against 3.5 K blind from 29 C" (same notes).
    assert low < contrast_factor(air_c, least_k) < high

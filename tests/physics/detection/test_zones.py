import numpy as np
import pytest

from wardwright.physics.detection.zones import beam_width, pair_rate, rate_gain, zone_amplitude, zone_halves

SPLIT = np.radians(1.6)
# The layout of the reference notes, 5b: row, pairs, depression [deg], where it meets the floor from 2.2 m [m].
ROWS = (
    ("far", 11, 5.71, 22.0),
    ("middle", 9, 13.13, 9.43),
    ("near", 5, 29.54, 3.88),
    ("creep", 3, 61.39, 1.20),
)


@pytest.mark.parametrize(("name", "pairs", "depression", "floor"), ROWS)
def test_rows_meet_the_floor_where_the_layout_says(
    name: str, pairs: int, depression: float, floor: float
) -> None:
    halves = zone_halves([(pairs, np.radians(depression))], heading=0.0, angle=np.pi / 2, split=SPLIT)
    assert len(halves.azimuth) == 2 * pairs, name
    assert 2.2 / -halves.rise == pytest.approx(floor, rel=3e-3)


def test_the_far_row_s_pairs_are_8_18_degrees_apart() -> None:
    halves = zone_halves([(11, 0.1)], heading=0.3, angle=np.pi / 2, split=SPLIT)
    middles = halves.azimuth.reshape(-1, 2).mean(axis=1)
    assert np.degrees(np.diff(middles)) == pytest.approx(8.18, abs=0.005)
    assert middles.mean() == pytest.approx(0.3)
    assert np.diff(halves.azimuth.reshape(-1, 2)) == pytest.approx(SPLIT)


def test_tilt_looks_further_down() -> None:
    plain = zone_halves([(1, 0.2)], heading=0.0, angle=1.0, split=SPLIT)
    tilted = zone_halves([(1, 0.1)], heading=0.0, angle=1.0, split=SPLIT, tilt=0.1)
    assert tilted.rise == pytest.approx(plain.rise)


@pytest.mark.parametrize(
    ("speed", "distance", "hertz"), [(0.1, 12, 0.15), (3, 12, 4.5), (0.1, 2, 0.9), (3, 2, 27)]
)
def test_pair_rates_of_the_notes(speed: float, distance: float, hertz: float) -> None:
    assert float(pair_rate(speed, distance, split=SPLIT)) == pytest.approx(hertz, rel=0.02)


def test_slow_changes_are_lost_and_fast_ones_fall_off() -> None:
    assert rate_gain([0.0, 0.099, 0.1, 10.0, 40.0]).tolist() == [0.0, 0.0, 1.0, 1.0, 0.25]


def test_a_body_narrower_or_lower_than_the_zone_is_weaker() -> None:
    width = float(beam_width(12.0, SPLIT))
    assert width == pytest.approx(0.335, abs=0.001)  # by hand: 2 x 12 x tan 0.8 deg
    whole = zone_amplitude(12.0, width, height_within=2 * width, split=SPLIT, contrast=3.0)
    half = zone_amplitude(12.0, width / 2, height_within=width, split=SPLIT, contrast=3.0)
    assert (float(whole), float(half)) == pytest.approx((3.0, 0.75))

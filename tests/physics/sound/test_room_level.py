import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.physics.sound.power import direct_level
from wardwright.physics.sound.room_level import equal_fields_distance, level_in_room, room_constant


def test_where_the_fields_are_equal_the_level_is_three_decibels_above_either() -> None:
    away = equal_fields_distance(60.0, [0.25], directivity=2.0)
    level = level_in_room([90.0], away, surface=60.0, absorption=[0.25], directivity=2.0)
    direct = direct_level(90.0, away, directivity=2.0)
    assert float(level[0, 0] - direct[0]) == pytest.approx(3.0103, abs=1e-4)


@given(st.floats(0.02, 0.9), st.floats(0.001, 0.09), st.floats(0.2, 9.0))
def test_an_added_absorber_never_raises_the_level(mean: float, more: float, away: float) -> None:
    before, after = (
        level_in_room([100.0], [away], surface=80.0, absorption=[one])[0, 0] for one in (mean, mean + more)
    )
    assert after <= before


@pytest.mark.parametrize("mean", [0.0, 1.0, -0.1])
def test_a_coefficient_outside_its_range_is_refused(mean: float) -> None:
    with pytest.raises(ValueError, match="not inside"):
        room_constant(80.0, [mean])


def test_bands_that_do_not_match_are_told_with_both_lengths() -> None:
    with pytest.raises(ValueError, match="2 bands of power beside 1"):
        level_in_room(np.full(2, 90.0), [1.0], surface=80.0, absorption=[0.2])

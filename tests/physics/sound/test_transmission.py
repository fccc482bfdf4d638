import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.physics.sound.transmission import composite_loss, level_through, mass_law_loss, massive_loss


@given(st.lists(st.tuples(st.floats(0.0, 60.0), st.floats(0.01, 20.0)), min_size=1, max_size=6))
def test_the_whole_is_between_its_best_and_its_worst_part(parts: list[tuple[float, float]]) -> None:
    losses, areas = zip(*parts, strict=True)
    whole = float(composite_loss(losses, areas))
    assert min(losses) - 1e-9 <= whole <= max(losses) + 1e-9


def test_bands_are_kept_apart() -> None:
    found = composite_loss([[40.0, 50.0], [0.0, 50.0]], [9.0, 1.0])
    assert found == pytest.approx(np.array([10.0, 50.0]), abs=0.01)


def test_a_barer_room_behind_the_wall_is_louder() -> None:
    bare, furnished = (
        float(level_through(90.0, loss=30.0, area=10.0, absorption_area=a)) for a in (5.0, 20.0)
    )
    assert bare - furnished == pytest.approx(6.02, abs=0.01)


def test_twice_the_mass_or_the_tone_is_six_decibels() -> None:
    first, second = mass_law_loss([500.0, 1000.0], 20.0)
    assert float(second - first) == pytest.approx(6.02, abs=0.01)
    assert float(massive_loss(920.0)[2] - massive_loss(460.0)[2]) == pytest.approx(6.02, abs=0.01)

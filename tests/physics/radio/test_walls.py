import numpy as np
import pytest

from wardwright.physics.radio.slab import Layer
from wardwright.physics.radio.walls import JUDGED_AT_HZ, LEAST_SHARE, MOST_DB, wall_losses


def brick(thickness: float):  # noqa: ANN201 - a plain function
    return lambda frequency: [Layer(thickness, 3.91, 0.0238 * (frequency / 1e9) ** 0.16)]


def test_its_own_build_in_the_band_it_was_judged_for_takes_what_was_judged() -> None:
    losses = wall_losses(7.0, brick(0.102), brick(0.102), frequency=JUDGED_AT_HZ)
    assert losses.mean() == pytest.approx(7.0, abs=0.3)


def test_a_thicker_wall_takes_more() -> None:
    thin, thick = (wall_losses(7.0, brick(t), brick(0.102), frequency=JUDGED_AT_HZ) for t in (0.102, 0.33))
    assert (thick > thin).all()


def test_without_a_build_nothing_is_told_apart() -> None:
    assert wall_losses(22.0, None, None, frequency=2.44e9).tolist() == [22.0] * 5


def test_it_stays_between_a_share_and_the_cap() -> None:
    metal = lambda frequency: [Layer(0.001, 1.0, 1e7)]  # noqa: ARG005, E731 - a build as the engine takes it
    assert wall_losses(32.0, metal, brick(0.102), frequency=2.44e9).tolist() == [MOST_DB] * 5
    air = lambda frequency: [Layer(0.1, 1.0, 0.0)]  # noqa: ARG005, E731 - a build as the engine takes it
    least = wall_losses(3.0, air, brick(0.4), frequency=JUDGED_AT_HZ)
    assert np.allclose(least, LEAST_SHARE * 3.0)

import math

import numpy as np
import pytest

from wardwright.physics.radio.slab import (
    Layer,
    Polarisation,
    at_frequency,
    layered_loss,
    layered_reflection,
    smoothed_loss,
)

BRICK = Layer(0.102, 3.91, 0.0232)
BOARD = Layer(0.0125, 2.73, 0.0074)
AIR = Layer(0.075, 1.0, 0.0)


def test_the_order_of_layers_does_not_matter_for_what_goes_through() -> None:
    build = [BRICK, AIR, BOARD]
    angles = np.linspace(0.0, 1.2, 7)
    ahead, behind = (layered_loss(b, 868e6, incidence=angles) for b in (build, build[::-1]))
    assert ahead == pytest.approx(behind, abs=1e-9)


@pytest.mark.parametrize("polarisation", ["electric", "magnetic"])
def test_two_halves_are_one_whole(polarisation: Polarisation) -> None:
    half = BRICK._replace(thickness=BRICK.thickness / 2)
    for angle in (0.0, 0.7):
        parts, whole = (
            float(layered_loss(b, 868e6, incidence=angle, polarisation=polarisation))
            for b in ([half, half], [BRICK])
        )
        assert parts == pytest.approx(whole, abs=1e-9)


def test_air_takes_nothing_and_throws_nothing_back() -> None:
    assert float(layered_loss([AIR], 868e6, incidence=0.5)) == pytest.approx(0.0, abs=1e-12)
    with np.errstate(divide="ignore"):
        assert float(layered_reflection([AIR], 868e6)) > 200.0


def test_what_does_not_conduct_only_shares_out() -> None:
    glass = [Layer(0.006, 6.31, 0.0)]
    through, back = float(layered_loss(glass, 2.4e9)), float(layered_reflection(glass, 2.4e9))
    assert 10 ** (-through / 10) + 10 ** (-back / 10) == pytest.approx(1.0, abs=1e-12)


def test_metal_gives_a_large_number_and_no_overflow() -> None:
    loss = float(layered_loss([Layer(0.01, 1.0, 1e7)], 2.44e9))
    assert math.isfinite(loss)
    assert loss > 1000.0


def test_smoothed_lies_among_the_losses_that_it_is_made_of() -> None:
    concrete = [Layer(0.2, 5.24, 0.0414)]
    stretch = np.linspace(0.85, 1.15, 61)
    straight = layered_loss(concrete, 868e6, stretch=stretch)
    at_right_angles = smoothed_loss(concrete, 868e6, incidence=[0.0])
    assert straight.min() < float(at_right_angles[0]) < straight.max()


def test_beyond_60_degrees_it_stays() -> None:
    losses = smoothed_loss([BRICK], 868e6, incidence=[math.pi / 3, 1.5])
    assert losses[0] == losses[1]


def test_a_property_follows_a_power_of_the_frequency() -> None:
    assert float(at_frequency(0.0462, 0.7822, frequency=2e9)) == pytest.approx(0.0462 * 2**0.7822)

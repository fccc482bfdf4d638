from __future__ import annotations

import pytest

from wardwright.documents.content.drivers import chance_words, driver_lines
from wardwright.model.estimate import Driver, Estimate


def estimate(*drivers: Driver) -> Estimate:
    return Estimate(value=10.0, low=5.0, high=40.0, unit="s", drivers=drivers)


def test_the_two_strongest_are_named_with_how_they_are_known() -> None:
    found = driver_lines(
        estimate(
            Driver(name="message leaving", swing=24.6, basis="default"),
            Driver(name="lock and frame", swing=0.64, basis="told"),
            Driver(name="pace", swing=0.3, basis="default"),
        )
    )
    assert [(line.name, line.swing, line.basis) for line in found] == [
        ("message leaving", "25 s", "default"),
        ("lock and frame", "0.6 s", "told"),
    ]
    assert found[0].share == 1.0
    assert found[1].share == pytest.approx(0.026)


def test_what_moves_nothing_is_not_named() -> None:
    assert driver_lines(estimate()) == ()
    assert driver_lines(estimate(Driver(name="pace", swing=0.0, basis="default"))) == ()


def test_a_chance_is_never_rounded_to_certainty() -> None:
    assert chance_words(0.9951) == "met in over 99 % of draws"
    assert chance_words(0.004) == "met in under 1 % of draws"
    assert chance_words(None) == ""

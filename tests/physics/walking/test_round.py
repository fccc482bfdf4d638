"""The shortest round, against every order there is."""

from __future__ import annotations

from itertools import permutations

import numpy as np
import pytest

from wardwright.geometry.raster import FloatArray
from wardwright.physics.walking import round as rounds
from wardwright.physics.walking.round import EXACT_UP_TO, round_time, shortest_round


def scattered(n: int, seed: int) -> FloatArray:
    at = np.random.default_rng(seed).random((n, 2))
    return np.asarray(np.hypot(*(at[:, None] - at).transpose(2, 0, 1)))


@pytest.mark.parametrize("n", [1, 2, 3, 4, 6, 8])
@pytest.mark.parametrize("seed", range(4))
def test_no_other_order_is_shorter(n: int, seed: int) -> None:
    times = scattered(n, seed)
    order = shortest_round(times)
    assert sorted(order) == list(range(n))
    assert order[0] == 0
    least = min(round_time(times, (0, *rest)) for rest in permutations(range(1, n)))
    assert round_time(times, order) == pytest.approx(least, abs=1e-12)


@pytest.mark.parametrize("seed", range(6))
def test_with_many_places_it_comes_near_the_shortest(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    times = scattered(EXACT_UP_TO + 1, seed)
    shortest = round_time(times, shortest_round(times))
    monkeypatch.setattr(rounds, "EXACT_UP_TO", 2)
    order = shortest_round(times)
    assert sorted(order) == list(range(EXACT_UP_TO + 1))
    assert shortest - 1e-12 <= round_time(times, order) <= 1.05 * shortest


def test_places_on_a_circle_are_walked_in_their_order() -> None:
    turn = 2 * np.pi * np.arange(30) / 30
    mixed = np.random.default_rng(7).permutation(30)
    at = np.stack([np.cos(turn), np.sin(turn)], axis=1)[mixed]
    times = np.hypot(*(at[:, None] - at).transpose(2, 0, 1))
    around = mixed[list(shortest_round(times))]
    steps = np.diff(np.append(around, around[0])) % 30
    assert set(steps.tolist()) in ({1}, {29})


def test_the_order_of_the_places_makes_it_neither_longer_nor_shorter() -> None:
    times = scattered(10, 3)
    mixed = np.array([0, *np.random.default_rng(1).permutation(np.arange(1, 10))])
    again = times[np.ix_(mixed, mixed)]
    assert round_time(again, shortest_round(again)) == pytest.approx(round_time(times, shortest_round(times)))

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.physics.sound.network import answering, diffuse_energy, level_of

ROOMS = st.integers(2, 6)


def house(count: int, seed: int) -> tuple[np.ndarray, np.ndarray]:
    drawn = np.random.default_rng(seed)
    joined = np.triu(10.0 ** drawn.uniform(-5.0, 1.0, (count, count)), 1)
    return drawn.uniform(2.0, 30.0, count), joined + joined.T


def levels(swallowed: np.ndarray, joined: np.ndarray, room: int) -> np.ndarray:
    sources = np.zeros(len(swallowed))
    sources[room] = 1e10
    return level_of(diffuse_energy(answering(swallowed, joined), sources))


@given(ROOMS, st.integers(0, 10_000), st.floats(0.0, 50.0))
def test_an_added_absorber_never_raises_a_level(count: int, seed: int, more: float) -> None:
    swallowed, joined = house(count, seed)
    where = seed % count
    after = swallowed.copy()
    after[where] += more
    for room in range(count):
        assert (levels(after, joined, room) <= levels(swallowed, joined, room) + 1e-9).all()


@given(ROOMS, st.integers(0, 10_000), st.floats(0.0, 5.0))
def test_opening_a_door_never_lowers_its_quieter_side_nor_raises_its_louder(
    count: int, seed: int, more: float
) -> None:
    swallowed, joined = house(count, seed)
    a, b = 0, 1 + seed % (count - 1)
    after = joined.copy()
    after[a, b] += more
    after[b, a] += more
    for room in range(count):
        before, then = levels(swallowed, joined, room), levels(swallowed, after, room)
        loud, quiet = (a, b) if before[a] >= before[b] else (b, a)
        assert then[quiet] >= before[quiet] - 1e-9
        assert then[loud] <= before[loud] + 1e-9


@given(ROOMS, st.integers(0, 10_000))
def test_all_sound_that_is_put_in_is_swallowed(count: int, seed: int) -> None:
    swallowed, joined = house(count, seed)
    sources = np.arange(1.0, count + 1.0)
    energy = diffuse_energy(answering(swallowed, joined), sources)
    assert float((energy / 4.0 * swallowed).sum()) == pytest.approx(float(sources.sum()))


def test_a_room_that_swallows_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="swallows nothing"):
        answering([10.0, 0.0], np.zeros((2, 2)))


def test_bands_go_together() -> None:
    found = answering([[10.0, 10.0], [5.0, 5.0]], np.zeros((2, 2, 2)))
    assert found[:, 0, 0] == pytest.approx(np.array([0.1, 0.2]))

import math

import numpy as np
import pytest

from wardwright.geometry.crossings import AT_ONCE, Boxes, passages
from wardwright.geometry.raster import FloatArray


def walls(*rows: tuple[float, float, float, float, float]) -> Boxes:
    """Walls from x, y to x, y, their thickness, 2.4 m high."""
    made = np.array(rows)
    way = made[:, 2:4] - made[:, :2]
    length = np.hypot(*way.T)
    low, high = np.zeros(len(made)), np.full(len(made), 2.4)
    return Boxes(made[:, :2], way / length[:, None], length, made[:, 4] / 2, low, high)


def path(*ends: tuple[float, float, float]) -> tuple[FloatArray, FloatArray]:
    return np.array([ends[0]]), np.array([ends[1]])


ACROSS = walls((2.0, 0.0, 2.0, 4.0, 0.2))


def test_straight_through_is_the_whole_thickness() -> None:
    found = passages(*path((0, 1, 1), (5, 1, 1)), ACROSS)
    assert found.share[0, 0] == pytest.approx(1.0)
    assert found.at[0, 0] == pytest.approx(0.4)
    assert found.inside[0, 0] == pytest.approx(0.2)
    assert found.incidence[0, 0] == pytest.approx(0.0)


def test_aslant_is_still_one_wall_and_tells_its_angle() -> None:
    found = passages(*path((0, 0, 1), (4, 4, 1)), ACROSS)
    assert found.share[0, 0] == pytest.approx(1.0)
    assert found.incidence[0, 0] == pytest.approx(math.pi / 4)
    assert found.inside[0, 0] == pytest.approx(0.2 * math.sqrt(2))


@pytest.mark.parametrize(
    ("one", "other"),
    [((0, 1, 1), (1.8, 1, 1)), ((0, 5, 1), (5, 5, 1)), ((0, 1, 3), (5, 1, 3)), ((1, 0, 1), (1, 3, 1))],
)
def test_beside_beyond_above_and_along_miss(
    one: tuple[float, float, float], other: tuple[float, float, float]
) -> None:
    found = passages(*path(one, other), ACROSS)
    assert found.share[0, 0] == 0.0
    assert np.isnan(found.at[0, 0])


def test_over_its_top_it_goes_through_a_share() -> None:
    # It comes down through the wall's top in the middle of its thickness.
    found = passages(*path((1.0, 1, 3.4), (3.0, 1, 1.4)), ACROSS)
    assert found.share[0, 0] == pytest.approx(0.5)


def test_where_two_walls_meet_end_to_end_nothing_is_counted_twice_or_left_out() -> None:
    two = walls((2.0, 0.0, 2.0, 1.5, 0.2), (2.0, 1.5, 2.0, 4.0, 0.2))
    for y in np.linspace(1.0, 2.0, 21):
        found = passages(*path((0, y, 1), (5, 3.0 - y, 1)), two)
        assert found.share[0].sum() == pytest.approx(1.0, abs=1e-9)


def test_inside_a_wall_along_it_counts_by_how_long() -> None:
    found = passages(*path((2.0, 1, 1), (2.0, 1.4, 1)), ACROSS)
    assert found.share[0, 0] == pytest.approx(0.4 / 4.0 / 0.2)


def test_many_paths_are_the_same_as_one_by_one() -> None:
    rng = np.random.default_rng(5)
    starts, ends = rng.uniform(0, 5, (2, AT_ONCE + 3, 3))
    together = passages(starts, ends, ACROSS)
    for i in (0, AT_ONCE - 1, AT_ONCE, AT_ONCE + 2):
        alone = passages(starts[i : i + 1], ends[i : i + 1], ACROSS)
        assert together.share[i] == pytest.approx(alone.share[0])


def test_a_path_past_many_boxes_meets_each_as_it_would_alone() -> None:
    # Only pairs that come near each other are worked out: none that meets may be left out, none put elsewhere.
    rng = np.random.default_rng(9)
    rows = np.column_stack([rng.uniform(0, 5, (30, 4)), rng.uniform(0.05, 0.4, 30)])
    many, (starts, ends) = walls(*rows.tolist()), rng.uniform(-1, 6, (2, 200, 3))
    together = passages(starts, ends, many)
    for i in range(30):
        alone = passages(starts, ends, walls(tuple(rows[i].tolist())))
        for name in ("share", "inside"):
            assert np.array_equal(getattr(together, name)[:, i], getattr(alone, name)[:, 0]), name
    samples = starts[:, None] + np.linspace(0.0, 1.0, 400)[:, None] * (ends - starts)[:, None]
    off = samples[:, :, None, :2] - many.origin
    along = (off * many.along).sum(axis=-1)
    aside = np.abs(off[..., 1] * many.along[:, 0] - off[..., 0] * many.along[:, 1])
    held = (along > 0.01) & (along < many.length - 0.01) & (aside < many.half - 0.01)
    held &= (samples[..., None, 2] > 0.01) & (samples[..., None, 2] < 2.39)
    assert (together.inside[held.any(axis=1)] > 0.0).all()
    assert held.any()


def test_no_path_and_no_box_are_no_trouble() -> None:
    none = np.empty((0, 3))
    assert passages(none, none, ACROSS).share.shape == (0, 1)

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.geometry.panels import NOTHING, box, joined, sheets
from wardwright.geometry.polar import Through
from wardwright.geometry.rays import ray_ranges

SQUARE = ((2.0, -1.0), (3.0, -1.0), (3.0, 1.0), (2.0, 1.0))


def test_a_box_is_met_on_its_face_on_its_top_or_not_at_all() -> None:
    # By hand: eye at 2 m; box from x = 2 to 3, 1 m high. Slope -0.6 meets the face at 2 m (0.8 m high); slope -0.4
    # falls to 1 m at x = 2.5, on the top; slope -0.3 is still at 1.1 m over the far edge.
    reached = ray_ranges((0, 0, 2), ([0, 0, 0], [-0.6, -0.4, -0.3]), box(SQUARE, low=0, high=1))
    assert reached == pytest.approx([2.0, 2.5, math.inf])


def test_a_hung_box_is_met_from_below() -> None:
    reached = ray_ranges((0, 0, 1), ([0, 0], [0.2, 0.45]), box(SQUARE, low=2.0, high=2.2))
    assert reached == pytest.approx([math.inf, 1.0 / 0.45])


def test_a_box_that_holds_the_eye_stops_nothing() -> None:
    reached = ray_ranges((2.5, 0, 0.5), ([0.0, 2.0], [0.0, 0.1]), box(SQUARE, low=0, high=1))
    assert np.isinf(reached).all()


def test_the_nearest_of_several_counts_whatever_their_order() -> None:
    rows = [(4, -1, 4, 1, 0, 2.4), (2, -1, 2, 1, 0, 0.5), (3, -1, 3, 1, 0, 2.4)]
    for order in (rows, rows[::-1]):
        assert ray_ranges((0, 0, 2), ([0.0], [-0.1]), sheets(order)).tolist() == [3.0]


def test_a_floor_is_passed_at_its_hole_only() -> None:
    hole = np.array([[1.0, -1.0], [2.0, -1.0], [2.0, 1.0], [1.0, 1.0]])
    floors = [Through(2.4, (hole,))]
    reached = ray_ranges((0, 0, 1.4), ([0, 0, math.pi], [0.8, 0.4, 0.8]), sheets([]), through=floors)
    # By hand: 1 m up is reached after 1.25 m (in the hole), 2.5 m (beyond it), and 1.25 m the other way.
    assert reached == pytest.approx([math.inf, 2.5, 1.25])


@given(st.integers(0, 9999))
def test_what_lies_beyond_a_floor_changes_nothing(seed: int) -> None:
    # Panels and boxes of three storeys, one hole: together they stop each ray where the first of them does.
    rng = np.random.default_rng(seed)
    hole = np.array([[1.0, -1.0], [3.0, -1.0], [3.0, 1.0], [1.0, 1.0]])
    floors = [Through(2.4, (hole,)), Through(2.7, (hole,)), Through(0.0, ()), Through(5.1, ())]
    parts = []
    for _ in range(12):
        low, middle = float(rng.uniform(-2.7, 5.0)), rng.uniform(-5.0, 5.0, 2)
        if rng.random() < 0.5:
            parts.append(
                box(middle + 0.6 * np.array(SQUARE), low=low, high=low + float(rng.uniform(0.1, 1.5)))
            )
        else:
            parts.append(sheets([(*middle, *(middle + rng.uniform(-2.0, 2.0, 2)), low, low + 1.2)]))
    aims = (rng.uniform(-np.pi, np.pi, 60), np.where(rng.random(60) < 0.1, 0.0, rng.uniform(-1.5, 1.5, 60)))
    together = ray_ranges((0.1, 0.2, 1.9), aims, joined(parts), through=floors)
    alone = [ray_ranges((0.1, 0.2, 1.9), aims, part) for part in parts]
    assert np.array_equal(
        together, np.min([*alone, ray_ranges((0.1, 0.2, 1.9), aims, NOTHING, through=floors)], axis=0)
    )

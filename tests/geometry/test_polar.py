import math

import numpy as np
import pytest

from wardwright.geometry.polar import MAX_INTERVALS, STEEP, Frame, Through, crossings, opening_slopes, packed

MIDDLES = (np.arange(360) + 0.5) * math.radians(1.0)
FRAME = Frame(
    np.array([0.0, 0.0, 2.0]),
    0.0,
    math.radians(1.0),
    360,
    np.stack([np.cos(MIDDLES), np.sin(MIDDLES)]),
    10.0,
)


def test_a_closed_ring_is_crossed_once_by_every_azimuth_from_inside() -> None:
    ring = np.array([[-2.0, -1.0], [3.0, -1.0], [2.0, 4.0], [-3.0, 2.0]])
    _, azimuth, reached = crossings(FRAME, np.hstack([ring, np.roll(ring, -1, axis=0)]))
    assert sorted(azimuth.tolist()) == list(range(360))
    assert (reached > 0.9).all()


def test_a_panel_is_crossed_where_trigonometry_says() -> None:
    _, azimuth, reached = crossings(FRAME, np.array([[2.0, -1.0, 2.0, 1.0]]))
    assert reached == pytest.approx(2.0 / np.cos(MIDDLES[azimuth]), abs=1e-12)  # by hand: x = 2
    assert len(azimuth) == 54  # whole degrees within +-26.57 of x, middles at half degrees


def test_a_hole_lets_through_the_slopes_of_its_near_and_far_edge() -> None:
    hole = np.array([[1.0, -1.0], [3.0, -1.0], [3.0, 1.0], [1.0, 1.0]])
    bottoms, tops = opening_slopes(FRAME, [Through(3.0, (hole,))])
    # By hand, along x: the floor 1 m above the eye is open from 1 m to 3 m away: slopes 1/3 to 1.
    assert (bottoms[0, 0], tops[0, 0]) == pytest.approx((1 / 3, 1.0), rel=1e-3)
    assert not (tops[90:270] > bottoms[90:270]).any()


def test_over_its_own_hole_an_eye_looks_straight_down() -> None:
    hole = np.array([[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]])
    bottoms, tops = opening_slopes(FRAME, [Through(1.0, (hole,))])
    assert bottoms[0, 0] <= -STEEP / 2
    assert tops[0, 0] == pytest.approx(-1.0, rel=1e-3)


def test_a_floor_without_a_hole_lets_nothing_through() -> None:
    bottoms, tops = opening_slopes(FRAME, [Through(3.0, ())])
    assert not (tops > bottoms).any()


def test_packing_keeps_order_and_drops_the_narrowest_beyond_the_most() -> None:
    low = np.arange(8.0)[None, :]
    width = np.array([[0.5, 0.01, 0.5, 0.0, 0.5, 0.4, 0.6, 0.7]])
    bottoms, tops = packed(low, low + width)
    assert bottoms.shape == (1, MAX_INTERVALS)
    assert bottoms[0].tolist() == [0, 2, 4, 5, 6, 7]
    assert tops[0] == pytest.approx([0.5, 2.5, 4.5, 5.4, 6.6, 7.7])

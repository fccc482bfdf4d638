import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import ndimage

from wardwright.geometry.panels import sheets
from wardwright.geometry.sight import look, visible_heights
from wardwright.physics.detection.shapes import (
    Fan,
    Figures,
    Sensed,
    any_in_view,
    bearing_and_distance,
    enough_in_view,
    in_fan,
    row_senses,
    sensed_places,
    widened,
    within_reach,
)

FAN = Fan(
    (0.0, 0.0, 2.2), math.pi, math.radians(45.0), tuple(map(math.radians, (5.71, 13.13, 29.54, 61.39))), 0.028
)
OPEN = look(FAN.eye, sheets([]), reach=15.0, band=(0.0, 2.4))


def figures(*distances: float, height: float = 1.75) -> Figures:
    places = np.array([[-d, 0.0] for d in distances])
    return Figures(places, np.zeros(len(places)), np.full(len(places), height), 0.44)


def test_bearings_are_measured_across_the_seam_of_the_circle() -> None:
    bearing, distance = bearing_and_distance(FAN, np.array([[-3.0, 0.1], [-3.0, -0.1], [0.0, 2.0]]))
    assert bearing == pytest.approx([0.0333, 0.0333, math.pi / 2], abs=1e-3)
    assert distance[2] == 2.0


def test_the_margin_widens_or_narrows_the_fan() -> None:
    bearing = np.radians([38.0, 43.0, 48.0, 60.0])
    assert in_fan(bearing, FAN, margin=0.0).tolist() == [True, True, False, False]
    assert in_fan(bearing, FAN, margin=math.radians(5)).tolist() == [True, True, True, False]
    assert in_fan(bearing, FAN, margin=-math.radians(5)).tolist() == [True, False, False, False]
    assert in_fan(bearing, FAN._replace(half_angle=math.pi), margin=-0.1).all()


def test_a_crawler_is_sensed_only_where_a_row_comes_low() -> None:
    # By hand from 2.2 m: middle row 0.8 m high at 6 m and 0.57 m at 7 m; near row 0.5 m high at 3 m.
    for height, expected in ((1.75, [True, True, True]), (0.6, [True, False, True])):
        who = figures(3.0, 6.0, 7.0, height=height)
        heights = visible_heights(OPEN, who.places)
        sensed = row_senses(FAN, who, heights=heights, distance=np.array([3.0, 6.0, 7.0]), contrasts=[5.0])[0]
        assert sensed.tolist() == expected


def test_close_under_the_detector_every_row_passes_overhead() -> None:
    who = figures(0.1, 1.0)
    heights = visible_heights(OPEN, who.places)
    sensed = row_senses(FAN, who, heights=heights, distance=np.array([0.1, 1.0]), contrasts=[5.0])[0]
    assert sensed.tolist() == [False, True]


def test_too_little_contrast_is_not_sensed() -> None:
    who = figures(3.0)
    heights = visible_heights(OPEN, who.places)
    assert not row_senses(FAN, who, heights=heights, distance=np.array([3.0]), contrasts=[0.9]).any()


def test_behind_a_high_screen_too_little_is_in_view() -> None:
    # By hand: 1.9 m high at 1 m hides everything below 2.2 - 0.3 d: at 1.5 m below 1.75, at 3 m below 1.3 m.
    sight = look(FAN.eye, sheets([(-1.0, -5.0, -1.0, 5.0, 0.0, 1.9)]), reach=15.0, band=(0.0, 2.4))
    who = figures(1.5, 3.0, 5.0)
    heights = visible_heights(sight, who.places)
    assert enough_in_view(who, heights=heights).tolist() == [False, False, True]
    assert any_in_view(FAN, who, heights=heights, distance=np.array([1.5, 3.0, 5.0])).tolist() == [
        False,
        True,
        True,
    ]


def test_each_shape_lies_within_the_next() -> None:
    rng = np.random.default_rng(7)
    places = rng.uniform(-14, 14, (4000, 2))
    who = Figures(places, np.zeros(4000), np.full(4000, 1.75), 0.44)
    panels = sheets([(-3, -2, -3, 1, 0, 1.3), (-6, 0, -5, 4, 0, 2.4), (-4, -4, -2, -3, 1.0, 2.4)])
    told = look(FAN.eye, panels, reach=15, band=(0, 2.4))
    found = sensed_places(FAN, who, told=told, away=OPEN, contrasts=(2.3, 5.4))
    assert found.low.any()
    assert not (found.low & ~found.seen).any()
    assert not (found.seen & ~found.high).any()
    assert (found.seen & ~found.low).any()
    assert (found.high & ~found.seen).any()
    # Each shape is looked for in the one that holds it only: asked everywhere, the answers are the same.
    bearing, distance = bearing_and_distance(FAN, places)
    by_sight = [visible_heights(sight, places) for sight in (told, OPEN)]
    high = in_fan(bearing, FAN, margin=math.radians(5))
    high &= any_in_view(FAN, who, heights=by_sight[1], distance=distance)
    worst, usual = row_senses(FAN, who, heights=by_sight[0], distance=distance, contrasts=(2.3, 5.4))
    seen = high & in_fan(bearing, FAN, margin=0.0) & usual
    low = seen & worst & enough_in_view(who, heights=by_sight[0])
    low &= in_fan(bearing, FAN, margin=-math.radians(5))
    for name, expected in (("high", high), ("seen", seen), ("low", low)):
        assert np.array_equal(getattr(found, name), expected), name


def test_widening_stops_at_walls() -> None:
    free = np.ones((5, 9), dtype=bool)
    free[:, 5] = False
    places = np.zeros_like(free)
    places[2, 4] = True
    wide = widened(places, free, by=0.22, cell=0.11)
    assert wide[2, 2:5].all()
    assert wide[:, 4].all()
    assert not wide[:, 5:].any()
    assert not wide[:, :2].any()


@given(st.integers(0, 9999))
def test_widening_a_part_of_the_floor_is_widening_it_all(seed: int) -> None:
    rng = np.random.default_rng(seed)
    free = rng.random((40, 50)) < 0.9
    places = np.zeros_like(free)
    row, column = rng.integers(0, 40), rng.integers(0, 50)
    places[row : row + rng.integers(1, 9), column : column + rng.integers(1, 9)] = True
    inside = places & free
    near = ndimage.distance_transform_edt(~inside, sampling=0.1) <= 0.22 + 0.05
    expected = ndimage.binary_dilation(inside, np.ones((3, 3)), iterations=4, mask=free & near)
    if inside.any():
        assert np.array_equal(widened(places, free, by=0.22, cell=0.1), expected)


def test_reach_ends_sooner_for_what_is_sure_and_a_body_later_for_what_is_possible() -> None:
    distance = np.array([9.5, 9.7, 12.0, 12.1, 14.6, 14.7])
    everywhere = np.ones(len(distance), dtype=np.bool_)
    sensed = Sensed(distance, everywhere, everywhere, everywhere, everywhere)
    seen, low, high = within_reach(sensed, 12.0, radius=0.22)
    assert (seen.sum(), low.sum(), high.sum()) == (3, 1, 5)
    assert not (low & ~seen).any()
    assert not (seen & ~high).any()

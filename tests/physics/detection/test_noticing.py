import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.physics.detection.contrast import contrast_factor
from wardwright.physics.detection.noticing import Detector, Needs, Walk, filled_halves, noticed_at
from wardwright.physics.detection.walkers import body_of
from wardwright.physics.detection.walks import walks_of
from wardwright.physics.detection.zones import (
    beam_width,
    pair_rate,
    rate_gain,
    zone_amplitude,
    zone_halves,
)

SPLIT = np.radians(1.6)
# The layout of the reference notes, 5b, with the reach of each row in the prototype's second run.
ROWS = ((11, 5.71, 14.0), (9, 13.13, 9.43), (5, 29.54, 3.88), (3, 61.39, 1.20))
ACROSS_M = (1.10, 0.10, 0.42, 0.30, 0.46, 1.24)  # crossing at 2, 4, ... 12 m, from 3 m aside
TOWARD_M = (2.58, 8.19, 7.16, 7.50)  # from 12 m at bearings 0, 4.1, 8.2, 12 deg


def detector(*, air_c: float = 20.0, edges: int = 2) -> Detector:
    halves = zone_halves(
        [(pairs, np.radians(depression)) for pairs, depression, _ in ROWS],
        heading=0.0,
        angle=np.pi / 2,
        split=SPLIT,
    )
    ends = np.concatenate([np.full(2 * pairs, end) for pairs, _, end in ROWS])
    needs = Needs(edges, 5.0, SPLIT, contrast_factor(air_c, 1.7))
    return Detector(np.array([0.0, 0.0, 2.2]), halves, ends, needs)


def walk(start: Any, end: Any, pace: float = 1.0) -> Walk:
    start, end = np.asarray(start, dtype=float), np.asarray(end, dtype=float)
    length = float(np.hypot(*(end - start)))
    share = np.linspace(0.0, 1.0, int(length / 0.02) + 1)[:, None]
    return Walk(start + share * (end - start), np.zeros(len(share)), share[:, 0] * length / pace)


def noticed_on(way: Walk, one: Detector, *, reaches: Any, posture: Any = "upright") -> np.ndarray:
    alone = walks_of([(way.places, ("ground",) * len(way.places), way.clock)])
    return noticed_at(alone, way.floors[None], [one], reaches=reaches, body=body_of(posture))[0, 0]


def noticed(way: Walk, *, posture: Any = "upright", **facts: Any) -> float:
    return float(noticed_on(way, detector(**facts), reaches=[99.0], posture=posture)[0])


def across(radius: float, pace: float = 1.0, **facts: Any) -> float:
    return noticed(walk((radius, -3.0), (radius, 3.0), pace), **facts)


def toward(bearing: float, **facts: Any) -> float:
    way = np.array([np.cos(np.radians(bearing)), np.sin(np.radians(bearing))])
    return noticed(walk(12.0 * way, 0.1 * way), **facts)


def test_across_is_noticed_sooner_than_toward() -> None:
    crossings = [across(radius) for radius in (2, 4, 6, 8, 10, 12)]
    approaches = [toward(bearing) for bearing in (0.0, 4.1, 8.2, 12.0)]
    assert max(crossings) < min(approaches)


def test_the_prototype_s_walks_come_out_the_same() -> None:
    # Another program, same model but for contrast and rates, which pass everything at 20 deg C and 1 m/s.
    assert [across(radius) for radius in (2, 4, 6, 8, 10, 12)] == pytest.approx(ACROSS_M, abs=0.02)
    assert [toward(bearing) for bearing in (0.0, 4.1, 8.2, 12.0)] == pytest.approx(TOWARD_M, abs=0.02)


@pytest.mark.parametrize("pace", [0.1, 0.3, 1.0, 2.0, 3.0])
def test_crossing_at_8_m_is_noticed_at_the_same_place_at_any_pace(pace: float) -> None:
    assert across(8.0, pace) == pytest.approx(0.30, abs=0.02)


def test_very_slow_movement_is_missed() -> None:
    assert np.isinf(across(8.0, 0.01))


def test_in_a_room_as_warm_as_skin_nobody_is_noticed() -> None:
    assert np.isinf(across(8.0, air_c=33.0))
    assert np.isfinite(across(8.0, air_c=28.0))


def test_running_past_close_in_is_missed_in_a_warm_room_only() -> None:
    assert np.isfinite(across(2.0, 3.0))
    assert np.isinf(across(2.0, 3.0, air_c=31.0))
    assert np.isfinite(across(2.0, 1.0, air_c=31.0))


def test_crawling_under_the_zones_is_missed() -> None:
    assert np.isinf(across(6.0, posture="crawl"))


def test_more_edges_take_longer() -> None:
    assert across(6.0, edges=2) <= across(6.0, edges=4) < np.inf


def test_edges_too_far_apart_in_time_do_not_add_up() -> None:
    # At 12 m one pair is crossed in 0.34 m; 0.05 m/s takes 6.7 s from half to half, more than the 5 s window.
    near = detector()
    slow = near._replace(needs=near.needs._replace(window=0.05))
    way = walk((6.0, -3.0), (6.0, -1.0), 0.3)
    assert noticed_on(way, slow, reaches=[99.0])[0] > noticed(way)


def test_a_longer_reach_never_notices_later() -> None:
    way = walk((11.0, -4.0), (5.0, 3.0))
    found = noticed_on(way, detector(), reaches=[6.0, 8.0, 10.0, 14.0])
    assert (np.diff(found) <= 0.0).all()


def test_a_ray_that_ends_before_the_body_does_not_fill() -> None:
    one = detector()
    way = walk((8.0, -1.0), (8.0, 1.0))
    filled, _, _ = filled_halves(way, one._replace(ends=np.full(len(one.ends), 7.5)), body=body_of("upright"))
    assert not filled.any()
    assert filled_halves(way, one, body=body_of("upright"))[0].any()


def test_points_at_the_same_time_are_no_infinite_speed() -> None:
    way = walk((8.0, -3.0), (8.0, 3.0))
    still = Walk(np.repeat(way.places, 2, axis=0), np.repeat(way.floors, 2), np.repeat(way.clock, 2))
    assert noticed(still) >= noticed(way)


def test_out_of_reach_or_a_single_point_is_never_noticed() -> None:
    assert np.isinf(noticed(walk((200.0, 0.0), (190.0, 0.0))))
    single = Walk(np.array([[5.0, 0.0]]), np.zeros(1), np.zeros(1))
    assert np.isinf(noticed_on(single, detector(), reaches=[9.0])[0])


def noticed_step_by_step(way: Walk, one: Detector, *, reach: float, posture: Any) -> float:
    """The same model told slowly: every half at every point, one after another, nothing left out beforehand."""
    body = body_of(posture)
    halves, needs = one.halves, one.needs
    filled, near, along = filled_halves(way, one, body=body)
    last: dict[int, float] = {}
    walked = 0.0
    for i in range(1, len(way.places)):
        step, lasting = way.places[i] - way.places[i - 1], way.clock[i] - way.clock[i - 1]
        walked += math.hypot(*step)
        stood = (way.floors[i] + way.floors[i - 1]) / 2
        for half in range(len(halves.azimuth)):
            was, now = (bool(filled[k, half]) and near[k, half] <= reach for k in (i - 1, i))
            if was == now:
                continue
            distance = max((along[i, half] + along[i - 1, half]) / 2, 1e-6)
            cos, sin = math.cos(halves.azimuth[half]), math.sin(halves.azimuth[half])
            across, climbing = (
                step[1] * cos - step[0] * sin,
                (step[0] * cos + step[1] * sin) * halves.rise[half] / 2,
            )
            rate = float(pair_rate(math.hypot(across, climbing) / lasting, distance, split=needs.split))
            width = float(beam_width(distance, needs.split))
            level = one.eye[2] + halves.rise[half] * distance
            within = max(min(level + width, stood + body.height) - max(level - width, stood), 0.0)
            strength = zone_amplitude(
                distance, 2 * body.radius, height_within=within, split=needs.split, contrast=needs.contrast
            )
            if strength * rate_gain(rate) >= 1.0:
                last[half] = way.clock[i]
        if sum(way.clock[i] - time <= needs.window for time in last.values()) >= needs.edges:
            return walked
    return math.inf


@given(st.integers(0, 9999), st.sampled_from(["upright", "crouch", "crawl", "pet"]))
def test_points_left_out_beforehand_change_nothing(seed: int, posture: Any) -> None:
    rng = np.random.default_rng(seed)
    corners = rng.uniform(-4.0, 13.0, (3, 2))
    legs = [walk(corners[i], corners[i + 1]) for i in (0, 1)]
    places = np.vstack([leg.places for leg in legs])[::3]
    floors = np.where(rng.random() < 0.3, np.linspace(0.0, 2.7, len(places)), 0.0)
    clock = np.arange(len(places)) * 0.06 / rng.uniform(0.1, 3.0)
    one = detector(air_c=float(rng.uniform(15, 30)), edges=int(rng.integers(1, 4)))
    one = one._replace(ends=one.ends * rng.uniform(0.3, 1.2, len(one.ends)))
    reaches = (6.0, 9.0, 9.0, 14.0)
    found = noticed_on(Walk(places, floors, clock), one, reaches=reaches, posture=posture)
    slow = [noticed_step_by_step(Walk(places, floors, clock), one, reach=r, posture=posture) for r in reaches]
    assert found == pytest.approx(slow, abs=1e-9)


@given(st.integers(0, 9999))
def test_walks_laid_end_to_end_are_noticed_as_each_alone(seed: int) -> None:
    rng = np.random.default_rng(seed)
    ways = []
    for _ in range(int(rng.integers(0, 5))):
        whole = walk(*rng.uniform(-4.0, 13.0, (2, 2)), pace=float(rng.uniform(0.2, 3.0)))
        kept = slice(0, int(rng.integers(0, len(whole.places) + 1)))
        ways.append(Walk(whole.places[kept], whole.floors[kept], whole.clock[kept]))
    one, reaches = detector(edges=int(rng.integers(1, 4))), (9.0, 6.0, 9.0, 14.0)
    together = walks_of((way.places, ("ground",) * len(way.places), way.clock) for way in ways)
    floors = np.concatenate([np.zeros(0), *(way.floors for way in ways)])
    found = noticed_at(together, floors[None], [one], reaches=reaches, body=body_of("upright"))[0]
    assert found.tolist() == [noticed_on(way, one, reaches=reaches).tolist() for way in ways]


@given(st.integers(0, 9999))
def test_detectors_asked_together_notice_as_each_alone(seed: int) -> None:
    rng = np.random.default_rng(seed)
    ways = [walk(*rng.uniform(-4.0, 13.0, (2, 2)), pace=float(rng.uniform(0.2, 3.0))) for _ in range(3)]
    together = walks_of((way.places, ("ground",) * len(way.places), way.clock) for way in ways)
    ones = []
    for _ in range(int(rng.integers(1, 5))):
        place = np.append(rng.uniform(-3.0, 9.0, 2), rng.uniform(1.8, 2.4))
        halves = detector().halves._replace(azimuth=detector().halves.azimuth + rng.uniform(-3.0, 3.0))
        ones.append(detector()._replace(eye=place, halves=halves))
    floors = rng.choice([0.0, -2.6], (len(ones), len(together.points)))
    reaches, body = (6.0, 9.0, 14.0), body_of("upright")
    found = noticed_at(together, floors, ones, reaches=reaches, body=body)
    alone = [
        noticed_at(together, floors[i, None], [one], reaches=reaches, body=body) for i, one in enumerate(ones)
    ]
    assert found.tolist() == np.concatenate(alone).tolist()


def test_no_detectors_notice_nothing() -> None:
    alone = walks_of([(np.zeros((2, 2)), ("ground",) * 2, np.arange(2.0))])
    assert noticed_at(alone, np.zeros((0, 2)), [], reaches=[9.0], body=body_of("upright")).shape == (0, 1, 1)

"""Walks past a movement detector: in its view, toward and across; beyond it, where it is to stay quiet."""

from __future__ import annotations

import math

import pytest
import shapely

from common.turning import quarter_turned
from wardwright.model.placement import standing
from wardwright.model.room_shapes import floor_polygon
from wardwright.model.site import Site
from wardwright.questions import what_it_sees
from wardwright.questions.answer import Answer
from wardwright.questions.walk_past import WalkTest
from wardwright.questions.walks_by_view import SHORTEST_M, walks_by_view
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
BUNGALOW = read_sample("bungalow")


def seen_by(site: Site, device: str) -> Answer:
    return next(one for one in what_it_sees.answers(site, CATALOGUE) if one.subject_id == device)


def walks(site: Site, device: str) -> tuple[WalkTest, ...]:
    return walks_by_view(site, CATALOGUE, site.device(device), seen=seen_by(site, device))


LIVING = walks(BUNGALOW, "living-movement")


def test_it_is_walked_across_slow_and_fast_nearer_by_and_toward() -> None:
    found = [(one.manner, one.pace) for one in LIVING if one.expected == "notices" and one.is_wanted]
    assert found == [
        ("across, far", "slow"), ("across, far", "fast"), ("across, near", "usual"), ("toward", "usual"),
        ("in by", "usual"),
    ]  # fmt: skip


def test_across_is_across_and_toward_comes_nearer() -> None:
    at = standing(BUNGALOW, BUNGALOW.device("living-movement"))
    for one in LIVING:
        (x0, y0), (x1, y1) = one.from_m, one.to_m
        if one.manner == "toward":
            assert math.dist(one.to_m, (at.x_m, at.y_m)) < math.dist(one.from_m, (at.x_m, at.y_m))
            along = (x1 - x0, y1 - y0)
    for one in LIVING:
        if one.manner.startswith("across"):
            (x0, y0), (x1, y1) = one.from_m, one.to_m
            assert (x1 - x0) * along[0] + (y1 - y0) * along[1] == pytest.approx(0.0, abs=1e-6)


def test_walks_in_view_lie_on_floor_that_is_surely_seen() -> None:
    rings = [
        shapely.Polygon(ring)
        for sketch in seen_by(BUNGALOW, "living-movement").sketches
        if sketch.role == "seen"
        for ring in sketch.rings
    ]
    floor = shapely.union_all(rings).buffer(1e-6)
    for one in LIVING:
        if one.manner.startswith(("across", "toward")):
            assert floor.covers(shapely.LineString([one.from_m, one.to_m]))


def test_walks_beyond_are_outside_its_room_and_say_what_the_model_expects() -> None:
    room = floor_polygon(next(one for one in BUNGALOW.spaces if one.id == "living"))
    beyond = [one for one in LIVING if one.manner in ("beyond", "outside the door", "past the pane")]
    assert {one.manner for one in beyond} == {"beyond", "past the pane"}
    for one in beyond:
        assert not room.intersects(shapely.LineString([one.from_m, one.to_m]))
        assert one.is_wanted == (one.expected == "stays quiet")
        assert (one.within_m is None) == (one.expected != "notices")


def test_a_pane_stops_body_heat() -> None:
    panes = [one for one in LIVING if one.manner == "past the pane"]
    assert [one.expected for one in panes] == ["stays quiet"]


def test_it_is_left_alone_as_long_as_it_sleeps_and_noticed_within_the_custom() -> None:
    assert {one.wait_s for one in LIVING} == {180.0}
    for one in LIVING:
        assert one.length_m >= SHORTEST_M
        if one.within_m is not None:
            assert one.within_m == min(3.0, one.length_m)


def test_what_is_not_known_has_no_walks() -> None:
    assert walks_by_view(BUNGALOW, CATALOGUE, BUNGALOW.device("living-movement"), seen=None) == ()


def test_a_turned_house_is_walked_alike() -> None:
    found = [(one.manner, one.subject, one.expected, round(one.length_m, 3)) for one in LIVING]
    turned = walks(quarter_turned(BUNGALOW), "living-movement")
    assert [(one.manner, one.subject, one.expected, round(one.length_m, 3)) for one in turned] == found


def test_a_way_that_only_touches_the_view_at_its_end_is_no_walk() -> None:
    better = read_sample("terrace-better")
    assert all(walks(better, one.id) for one in better.devices if one.id.endswith("-movement"))

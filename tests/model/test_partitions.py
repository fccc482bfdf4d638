from collections import defaultdict

import pytest

from wardwright.model.partitions import area_of, facings, joining, stacked, wells
from wardwright.store.samples import read_sample

TERRACE = read_sample("terrace")


def shared() -> dict[tuple[str, str | None], float]:
    found: dict[tuple[str, str | None], float] = defaultdict(float)
    for one in facings(TERRACE):
        found[one.space, one.other] += one.length_m
    return found


def test_a_partition_is_as_long_from_either_side() -> None:
    lengths = shared()
    assert lengths["hall", "living"] == pytest.approx(4.6)
    assert lengths["living", "hall"] == pytest.approx(4.6)
    assert lengths["bedroom-1", "bedroom-3"] == lengths["bedroom-3", "bedroom-1"] == pytest.approx(2.7)


def test_all_of_an_outline_faces_something() -> None:
    round_it = sum(length for (space, _), length in shared().items() if space == "bedroom-1")
    assert round_it == pytest.approx(2 * (2.7 + 3.3))


def test_the_walls_between_are_named() -> None:
    between = {one.walls for one in facings(TERRACE) if (one.space, one.other) == ("bedroom-1", "landing")}
    assert between == {("landing-bedroom-1-wall",)}
    out = [one for one in facings(TERRACE) if one.space == "living" and one.walls == ("hall-south-wall",)]
    assert [one.other for one in out] == [None]
    assert out[0].normal == pytest.approx((0.0, -1.0))


def test_rooms_lie_over_one_another_less_the_well() -> None:
    floors = {(one.lower, one.upper): one.area_m2 for one in stacked(TERRACE)}
    hole = {(one.lower, one.upper): one.area_m2 for one in wells(TERRACE)}
    assert floors["living", "bedroom-1"] == pytest.approx(2.7 * 3.3)
    assert hole == {("hall", "landing"): pytest.approx(2.8 * 0.85)}
    assert floors["hall", "landing"] < 1.8 * 4.6 - 2.38


def test_openings_that_join_two_spaces_or_lead_out() -> None:
    found = {opening.id: set(sides) for opening, sides in joining(TERRACE)}
    assert found["front-door"] == {"hall", None}
    assert found["living-door"] == {"hall", "living"}
    assert area_of(TERRACE.opening("front-door")) == pytest.approx(0.85 * 2.0)

"""Alarms in their places, and the walks and distances from them, worked by hand."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, one_room, open_edge, two_rooms_and_hall
from common.rule_houses.fire import hung, thing, with_stove
from wardwright.errors import CatalogueError, NoneOfAKind
from wardwright.physics.walking.from_site import Spot
from wardwright.rules.fire_alarms import (
    CAUTION,
    advised,
    alarms,
    below,
    door_spot,
    doors_of,
    is_cooker,
    to_fixture_m,
    to_walls_m,
    walk_m,
)
from wardwright.rules.limits import limit_for

HALL = two_rooms_and_hall(devices=(hung("smoke", "smoke", 1.0, 4.0),))


def test_a_walk_is_told_in_metres() -> None:
    """From x 1 to the study's door at x 6.15, straight along y 4 through the kitchen's door."""
    (alarm,) = alarms(HALL, CATALOGUE, "smoke-alarm")
    assert walk_m(HALL, below(alarm), door_spot(HALL, HALL.opening("study-door"))) == pytest.approx(5.15)


def test_where_there_is_no_floor_there_is_no_walk() -> None:
    assert math.isinf(walk_m(HALL, Spot("attic", 0.0, 0.0), Spot("ground", 1.0, 1.0)))


def test_doors_are_those_between_rooms_of_ours() -> None:
    assert [(round(x, 2), y) for _, x, y in doors_of(HALL, HALL.space("hall"))] == [(4.05, 4.0), (6.15, 4.0)]
    joined = two_rooms_and_hall(open_edges=(open_edge("hall", "study", ((6.15, 1.0), (6.15, 2.0))),))
    assert Spot("ground", 6.15, 1.5) in doors_of(joined, joined.space("study"))


def test_distances_stop_at_walls() -> None:
    assert to_walls_m(HALL, "ground", (1.0, 4.0)) == pytest.approx(1.0)
    site = two_rooms_and_hall(fixtures=(thing("stove", 3.0, 1.0),))
    stove = site.fixtures[0]
    assert to_fixture_m(site, "ground", (1.0, 1.0), fixture=stove) == pytest.approx(1.75)
    assert math.isinf(to_fixture_m(site, "ground", (5.0, 1.0), fixture=stove))
    assert math.isinf(to_fixture_m(site, "upper", (1.0, 1.0), fixture=stove))


@pytest.mark.parametrize(
    ("kind", "name", "x", "is_one"),
    [
        ("stove", "stove", 2.0, True),
        ("stove", "stove", 8.0, False),
        ("appliance", "Oven", 8.0, True),
        ("appliance", "Washing machine", 2.0, False),
        ("other", "Cooker", 2.0, False),
    ],
)
def test_what_is_cooked_on(kind: str, name: str, x: float, is_one: bool) -> None:
    """The kitchen is west of x 4."""
    site = two_rooms_and_hall(fixtures=(thing(kind, x, 1.0, name),))
    assert is_cooker(site, site.fixtures[0]) is is_one


def test_every_cure_carries_the_caution() -> None:
    row = limit_for(CATALOGUE, "heat-alarm-reach", one_room())
    assert advised("Move it", CATALOGUE) == f"Move it ({CAUTION})"
    assert advised("Move it", CATALOGUE, row, row) == f"Move it (bs-5839-6 2019, kept from memory; {CAUTION})"


def test_alarms_come_by_kind_with_their_spaces() -> None:
    site = with_stove(hung("b", "co", 2.0, 2.0), hung("a", "smoke", 3.0, 2.0))
    found = alarms(site, CATALOGUE, "smoke-alarm", "co-alarm")
    assert [one.device.id for one in found] == ["a", "b"]
    assert all(one.space == site.spaces[0] and one.may_hang for one in found)
    with pytest.raises(NoneOfAKind) as reason:
        alarms(one_room(), CATALOGUE, "smoke-alarm", "co-alarm")
    assert reason.value.kind == "smoke-alarm"


def test_a_sheet_without_its_table_is_refused() -> None:
    bare = CATALOGUE.model_copy(
        update={"sheets": tuple(one.model_copy(update={"fire": None}) for one in CATALOGUE.sheets)}
    )
    with pytest.raises(CatalogueError, match="without a table 'fire'"):
        alarms(HALL, bare, "smoke-alarm")

"""Warm things by distance, walls between."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room, radiator, two_rooms_and_hall
from wardwright.physics.detection.from_site import watch
from wardwright.rules.hot_things import hot_things_in_view, hot_things_near


def test_the_nearest_comes_first() -> None:
    site = one_room(fixtures=(radiator(2.5, 1.0), radiator(2.5, 0.5, id="stove", heat="warm")))
    near = hot_things_near(site, "ground", (2.5, 0.0), clearance_m=1.0)
    assert [one.fixture.id for one in near] == ["stove", "radiator"]
    assert [one.distance_m for one in near] == [pytest.approx(0.45), pytest.approx(0.95)]


def test_right_above_counts_even_without_a_clearance() -> None:
    site = one_room(fixtures=(radiator(2.5, 0.1),))
    assert len(hot_things_near(site, "ground", (2.5, 0.1), clearance_m=0.0)) == 1
    assert hot_things_near(site, "ground", (2.5, 0.2), clearance_m=0.0) == ()


def test_another_storey_does_not_count() -> None:
    assert hot_things_near(one_room(fixtures=(radiator(2.5, 0.1),)), "up", (2.5, 0.1), clearance_m=1.0) == ()


def test_through_a_doorway_it_counts_and_through_the_wall_not() -> None:
    """The kitchen's door is at y = 4: the radiator stands right behind it."""
    site = two_rooms_and_hall(fixtures=(radiator(3.3, 4.0),))
    assert len(hot_things_near(site, "ground", (4.2, 4.0), clearance_m=1.0)) == 1
    assert hot_things_near(site, "ground", (4.2, 3.0), clearance_m=1.4) == ()


def test_a_thing_let_into_the_wall_counts_from_its_face() -> None:
    site = one_room(fixtures=(radiator(2.5, -0.02),))
    assert len(hot_things_near(site, "ground", (2.5, 0.3), clearance_m=1.0)) == 1


def test_in_view_are_those_whose_floor_is_watched_in_the_order_of_names() -> None:
    looking_south = on_wall("living-movement", "fan", "north", 2.65)
    things = (radiator(2.6, 1.0, id="b", name="stove"), radiator(2.2, 1.6, id="a", name="heater"))
    beside = radiator(0.2, 3.9, id="c", name="behind its fan")
    site = one_room(devices=(looking_south,), fixtures=(*things, beside))
    seen = hot_things_in_view(site, watch(site.bare, CATALOGUE, looking_south))
    assert seen == ("heater", "stove")
    cold = one_room(devices=(looking_south,))
    assert hot_things_in_view(cold, watch(cold.bare, CATALOGUE, looking_south)) == ()

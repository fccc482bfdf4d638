"""How much room a detector leaves an animal, worked by hand."""

from __future__ import annotations

import math
from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, pet, two_rooms_and_hall
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from common.turning import quarter_turned
from wardwright.model.site import Site
from wardwright.rules.animals import animals
from wardwright.trials.pet_room import PetRoom, room_for


def room(site: Site) -> PetRoom:
    device = site.devices[0]
    sheet = CATALOGUE.sheet(device.sheet).movement
    assert sheet is not None
    animal = animals(site, CATALOGUE)[0]
    return room_for(site.bare, CATALOGUE, device, sheet=sheet, animal=animal)


def house(**parts: Any) -> Site:
    return one_room(**({"devices": (PASSING_PETS,), "pets": (pet("cat"),)} | parts))


# The middle row passes at 2.2 m - 0.1405 d: over the sideboard's far corners, 4.93 m off, at 1.507 m; on its top of
# 1.4 m stands a cat of 0.28 m.
OVER_SIDEBOARD = 2.2 - math.hypot(4.91, 0.45) * math.tan(math.radians(8.0))


def test_a_cat_on_the_sideboard_stands_in_the_zone() -> None:
    found = room(house(fixtures=(SIDEBOARD,)))
    assert found.estimate.value == pytest.approx(OVER_SIDEBOARD - 1.4 - 0.28)
    assert found.needs_m == pytest.approx(1.4)
    assert [top.thing for top in found.breaks] == ["sideboard"]
    assert found.trips_on is not None
    assert found.trips_on.thing == "sideboard"
    assert found.left.passes


def test_a_quarter_turn_changes_nothing() -> None:
    site = house(fixtures=(SIDEBOARD,))
    one, two = room(site), room(quarter_turned(site))
    assert two.estimate.value == pytest.approx(one.estimate.value)
    assert two.trips_after == pytest.approx(one.trips_after)


def test_the_way_by_which_it_gets_where_it_is_not_told_to_be() -> None:
    fan = on_wall("fan", "fan", "east", 2.0)
    found = room(two_rooms_and_hall(devices=(fan,), pets=(pet("cat", spaces=("kitchen",)),)))
    assert [one.by for one in found.lets_in] == ["study-door", "kitchen-door"]


def test_below_the_zones_it_does_not_walk() -> None:
    found = room(house(pets=(pet("small-dog", height_m=0.35, basis=(("height_m", "told"),)),)))
    assert (found.breaks, found.trips_on, found.trips_after) == ((), None, None)

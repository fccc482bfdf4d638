"""How much room a detector leaves an animal, worked by hand."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.houses import CATALOGUE, on_wall, one_room, pet, two_rooms_and_hall
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from common.turning import quarter_turned
from wardwright.model.site import Site
from wardwright.rules.animals import animals
from wardwright.trials.pet_room import PetRoom, room_for


def room(site: Site, **changes: Any) -> PetRoom:
    device = site.devices[0]
    sheet = CATALOGUE.sheet(device.sheet).movement
    assert sheet is not None
    animal = animals(site, CATALOGUE)[0]
    return room_for(site.bare, CATALOGUE, device, sheet=sheet, animal=animal, **changes)


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
    assert found.passes


def test_a_dog_on_the_floor_stays_below() -> None:
    """Over the farthest free cell of the floor the middle row is at 2.2 m - 0.1405 x 5.28 m = 1.458 m."""
    found = room(house(pets=(pet("small-dog", height_m=0.35, basis=(("height_m", "told"),)),)))
    assert found.estimate.value == pytest.approx(
        2.2 - math.hypot(4.91, 1.95) * math.tan(math.radians(8.0)) - 0.35, abs=0.02
    )
    assert (found.breaks, found.trips_on) == ((), None)


def test_the_jump_decides_where_the_top_is_just_out_of_it() -> None:
    """A top of 1.7 m is above a cat's likely jump of 1.6 m and below its high one of 2.0 m."""
    found = room(house(fixtures=(SIDEBOARD.model_copy(update={"height_m": 1.7}),)))
    assert found.estimate.value > 0.0 > found.estimate.low
    assert found.estimate.drivers[0].name == "how high it jumps"


def test_a_thing_that_is_thought_away_is_not_got_onto() -> None:
    found = room(house(fixtures=(SIDEBOARD,)), without=frozenset({"sideboard"}))
    assert found.estimate.low > 0.0


def test_a_door_that_stands_open_is_a_driver_and_one_that_is_kept_shut_is_none() -> None:
    fan = on_wall("fan", "fan", "east", 2.0)
    site = two_rooms_and_hall(devices=(fan,), pets=(pet("cat", spaces=("kitchen",)),))
    found = room(site)
    # Out of sight as it is told: at most the detector's own height less its own.
    assert found.estimate.value == pytest.approx(2.2 - 0.28)
    assert found.estimate.low < 0.0
    assert found.estimate.drivers[0].name == "doors left open"
    assert [one.by for one in found.lets_in] == ["study-door", "kitchen-door"]
    shut = room(site, shut=frozenset({"study-door"}))
    assert (shut.estimate.low > 0.0, shut.lets_in, shut.is_in_view) == (True, (), False)


def test_how_its_height_is_known_sets_the_range() -> None:
    guessed = room(house(pets=(pet("cat"),)))
    told = room(house(pets=(pet("cat", height_m=0.28, basis=(("height_m", "told"),)),)))
    assert guessed.estimate.high - guessed.estimate.low > told.estimate.high - told.estimate.low
    assert told.estimate.basis == "told"


@given(st.floats(0.1, 0.9), st.floats(0.0, 0.3))
def test_a_taller_animal_never_has_more_room(height: float, more: float) -> None:
    low, high = (
        room(house(fixtures=(SIDEBOARD,), pets=(pet("cat", height_m=one, basis=(("height_m", "told"),)),)))
        for one in (height, height + more)
    )
    assert high.estimate.value <= low.estimate.value + 1e-9
    assert high.estimate.low <= low.estimate.low + 1e-9


def test_a_quarter_turn_changes_nothing() -> None:
    site = house(fixtures=(SIDEBOARD,))
    one, two = room(site), room(quarter_turned(site))
    assert two.estimate.value == pytest.approx(one.estimate.value)
    assert two.trips_after == pytest.approx(one.trips_after)

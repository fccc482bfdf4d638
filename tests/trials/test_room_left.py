"""How much room is left to an animal before it walks, worked by hand."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.houses import CATALOGUE, on_wall, one_room, pet, two_rooms_and_hall
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from wardwright.model.site import Site
from wardwright.rules.animals import animals
from wardwright.trials.room_left import Left, room_left


def left(site: Site, **changes: Any) -> Left:
    device = site.devices[0]
    sheet = CATALOGUE.sheet(device.sheet).movement
    assert sheet is not None
    return room_left(site.bare, device, sheet=sheet, animal=animals(site, CATALOGUE)[0], **changes)


def house(**parts: Any) -> Site:
    return one_room(**({"devices": (PASSING_PETS,), "pets": (pet("cat"),)} | parts))


def test_the_tops_it_gets_to_and_those_where_it_stands_in_a_zone() -> None:
    found = left(house(fixtures=(SIDEBOARD,)))
    reached, inside = (
        [found.told.tops[one.number].kind for one in some] for some in (found.reached, found.inside)
    )
    assert (reached, inside) == (["floor", SIDEBOARD.kind], [SIDEBOARD.kind])


def test_enough_is_below_the_zones_on_a_sheet_that_passes_it_or_out_of_view() -> None:
    assert left(house()).is_enough
    assert not left(house(fixtures=(SIDEBOARD,))).is_enough
    heavy = left(house(pets=(pet("big-dog", height_m=0.6, mass_kg=30.0),)))
    assert (heavy.estimate.low > 0.0, heavy.passes, heavy.is_enough) == (True, False, False)


def test_a_dog_on_the_floor_stays_below() -> None:
    """Over the farthest free cell of the floor the middle row is at 2.2 m - 0.1405 x 5.28 m = 1.458 m."""
    found = left(house(pets=(pet("small-dog", height_m=0.35, basis=(("height_m", "told"),)),)))
    assert found.estimate.value == pytest.approx(
        2.2 - math.hypot(4.91, 1.95) * math.tan(math.radians(8.0)) - 0.35, abs=0.02
    )
    assert found.inside == ()


def test_the_jump_decides_where_the_top_is_just_out_of_it() -> None:
    """A top of 1.7 m is above a cat's likely jump of 1.6 m and below its high one of 2.0 m."""
    found = left(house(fixtures=(SIDEBOARD.model_copy(update={"height_m": 1.7}),)))
    assert found.estimate.value > 0.0 > found.estimate.low
    assert found.estimate.drivers[0].name == "how high it jumps"


def test_a_thing_that_is_thought_away_is_not_got_onto() -> None:
    found = left(house(fixtures=(SIDEBOARD,)), without=frozenset({"sideboard"}))
    assert found.estimate.low > 0.0


def test_a_door_that_stands_open_is_a_driver_and_one_that_is_kept_shut_is_none() -> None:
    fan = on_wall("fan", "fan", "east", 2.0)
    site = two_rooms_and_hall(devices=(fan,), pets=(pet("cat", spaces=("kitchen",)),))
    found = left(site)
    # Out of sight as it is told: at most the detector's own height less its own.
    assert found.estimate.value == pytest.approx(2.2 - 0.28)
    assert found.estimate.low < 0.0
    assert found.estimate.drivers[0].name == "doors left open"
    shut = left(site, shut=frozenset({"study-door"}))
    assert (shut.estimate.low > 0.0, shut.is_in_view) == (True, False)


def test_how_its_height_is_known_sets_the_range() -> None:
    guessed = left(house(pets=(pet("cat"),)))
    told = left(house(pets=(pet("cat", height_m=0.28, basis=(("height_m", "told"),)),)))
    assert guessed.estimate.high - guessed.estimate.low > told.estimate.high - told.estimate.low
    assert told.estimate.basis == "told"


@given(st.floats(0.1, 0.9), st.floats(0.0, 0.3))
def test_a_taller_animal_never_has_more_room(height: float, more: float) -> None:
    low, high = (
        left(house(fixtures=(SIDEBOARD,), pets=(pet("cat", height_m=one, basis=(("height_m", "told"),)),)))
        for one in (height, height + more)
    )
    assert high.estimate.value <= low.estimate.value + 1e-9
    assert high.estimate.low <= low.estimate.low + 1e-9

"""How long the household takes between its door and its keypad, worked by hand.

The way in begins at (5.1, 0.27), a body's radius and 0.05 m inside the wall; who stands before the keypad is at
(4.5, 3.0). Somebody slow walks at 0.8 m/s, with shopping at 0.8 of that.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.arrival_house import KEYPAD, QUICK, SLOW, USUAL, arrival_house
from common.houses import standing_free
from common.turning import quarter_turned
from wardwright.errors import NotComputable
from wardwright.model.household import Person
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.trips import SOMEBODY, Legs, controls_of, household, taken, trips

CATALOGUE = load_catalogue()
WALKED_M = math.hypot(5.1 - 4.5, 3.0 - 0.27)
THRESHOLD_M = 0.3 + 2 * (0.22 + 0.05)


def test_the_way_in_is_the_straight_line_to_the_keypad() -> None:
    (trip,) = trips(arrival_house(), CATALOGUE)
    assert trip.door.id == "front-door"
    assert trip.control == KEYPAD
    assert trip.legs.flat_m == pytest.approx(WALKED_M)
    assert trip.legs.threshold_m == pytest.approx(THRESHOLD_M)
    assert (trip.legs.stairs_m, trip.legs.inside_doors, trip.legs.at_keypad) == (0, 0, True)


@pytest.mark.parametrize(("person", "pace"), [(SLOW, 0.8), (USUAL, 1.3), (QUICK, 1.6)])
def test_a_person_takes_what_one_works_out_by_hand(person: Person, pace: float) -> None:
    (trip,) = trips(arrival_house(), CATALOGUE)
    one = taken(CATALOGUE, trip.legs, person)
    loaded = pace * 0.8
    walk, through = WALKED_M / loaded, THRESHOLD_M / loaded
    # Shut the door 4 s, put down 3 s, enter the code 7 s; to leave, unlock 4 s and shut 4 s.
    assert one.arriving[0] == pytest.approx(through + 4.0 + walk + 3.0 + 7.0)
    assert one.leaving[0] == pytest.approx(walk + 4.0 + through + 4.0)


def test_stairs_and_inside_doors_cost_what_their_figures_say() -> None:
    plain = Legs(0.8, 4.0, 0.0, 0, at_keypad=True)
    more = plain._replace(stairs_m=4.4, inside_doors=2)
    one, other = taken(CATALOGUE, plain, SLOW), taken(CATALOGUE, more, SLOW)
    added = 4.4 / (0.8 * 0.8 * 0.5) + 2 * 1.0
    assert other.arriving[0] - one.arriving[0] == pytest.approx(added)
    assert other.leaving[0] - one.leaving[0] == pytest.approx(added)


def test_a_keyfob_alone_is_pressed_in_the_door_and_nothing_is_walked() -> None:
    fob = standing_free("fob", "keyfob-radio", 5.0, 1.0)
    site = arrival_house(without=("keypad",), also=(fob,))
    (trip,) = trips(site, CATALOGUE)
    assert trip.control is None
    one = taken(CATALOGUE, trip.legs, SLOW)
    assert one.arriving[0] == pytest.approx(THRESHOLD_M / 0.64 + 4.0)
    assert not one.leaving.any()


def test_without_keypad_or_entry_door_it_is_not_computable() -> None:
    with pytest.raises(NotComputable, match="no keypad"):
        trips(arrival_house(without=("keypad",)), CATALOGUE)
    site = arrival_house()
    shut_off = tuple(one.model_copy(update={"is_entry_door": False}) for one in site.openings)
    with pytest.raises(NotComputable, match="entry door"):
        trips(site.model_copy(update={"openings": shut_off}), CATALOGUE)


def test_somebody_slow_is_taken_where_nobody_is_named() -> None:
    assert household(arrival_house(people=())) == (SOMEBODY,)
    assert [one.id for one in household(arrival_house(people=(USUAL, SLOW)))] == ["father", "grandmother"]


def test_a_quarter_turn_changes_no_time() -> None:
    site = arrival_house()
    (one,), (other,) = trips(site, CATALOGUE), trips(quarter_turned(site), CATALOGUE)
    assert other.legs.flat_m == pytest.approx(one.legs.flat_m, abs=1e-9)
    assert controls_of(site, CATALOGUE) == (KEYPAD,)


@given(
    flat=st.floats(0.0, 40.0),
    stairs=st.floats(0.0, 10.0),
    doors=st.integers(0, 4),
    extra=st.floats(0.01, 10.0),
)
def test_slower_people_and_longer_ways_never_take_less(
    flat: float, stairs: float, doors: int, extra: float
) -> None:
    legs = Legs(0.8, flat, stairs, doors, at_keypad=True)
    slow, usual, quick = (taken(CATALOGUE, legs, one) for one in (SLOW, USUAL, QUICK))
    assert slow.arriving[0] >= usual.arriving[0] >= quick.arriving[0]
    assert slow.leaving[0] >= usual.leaving[0] >= quick.leaving[0]
    longer = taken(CATALOGUE, legs._replace(flat_m=flat + extra), SLOW)
    assert np.all(longer.arriving >= slow.arriving)
    assert np.all(longer.leaving >= slow.leaving)

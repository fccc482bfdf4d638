"""The deciding number of a trip from bed."""

from __future__ import annotations

import pytest

from common.arrival_house import KITCHEN
from common.night_house import night_house
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.questions.night_numbers import (
    MEASURES,
    NightCase,
    nearest_detector,
    night_number,
    unset_after,
    until,
)
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.night_rings import ring_on, unset_s
from wardwright.trials.night_trips import night_trips
from wardwright.trials.night_walk import Moment

CATALOGUE = load_catalogue()


def case_of(site: Site, goal: str) -> NightCase:
    trip = next(one for one in night_trips(site, CATALOGUE) if one.goal == goal)
    assert trip.ends is not None
    return NightCase(trip, trip.ends, ring_on(site, CATALOGUE, trip), "night")


def test_a_trip_that_rings_is_told_by_its_second() -> None:
    site = night_house()
    verdict, measure, estimate, chance = night_number(site, CATALOGUE, case_of(site, "kitchen"))
    assert (verdict, measure, chance) == ("bad", MEASURES["rings"], None)
    assert estimate is not None
    # 2.1 m at 1.3 m/s, and a leaf.
    assert estimate.value == pytest.approx(2.1 / 1.3 + CATALOGUE.figure("pass-door").value, abs=0.4)
    assert estimate.low < estimate.value < estimate.high
    assert estimate.drivers[0].name in ("pace of Ann", "opening inside doors")


def test_only_with_another_habit_it_is_thin() -> None:
    site = night_house()
    case = case_of(site, "kitchen")._replace(leaves="most")
    assert night_number(site, CATALOGUE, case)[0] == "thin"


def test_what_is_left_of_an_entry_time() -> None:
    site = night_house({"hall-movement": "entry-exit"})
    case = case_of(site, "out")
    verdict, measure, estimate, chance = night_number(site, CATALOGUE, case)
    assert (verdict, measure) == ("good", MEASURES["left"])
    assert estimate is not None
    # 20 s from the study door on; the keypad and its code are some 2 m and 5 s later.
    first = until(site, CATALOGUE, case, moment=Moment(0))[0]
    assert first == 0.0
    left = 20.0 - (unset_s(site, CATALOGUE, case.trip) - (2.1 / 1.3 + CATALOGUE.figure("pass-door").value))
    assert estimate.value == pytest.approx(left, abs=0.5)
    assert chance is not None
    assert chance > 0.95
    assert unset_after(site, CATALOGUE, case)[0] == pytest.approx(unset_s(site, CATALOGUE, case.trip))
    hasty = night_house({"hall-movement": "entry-exit"}, programme=Programme(entry_time_s=estimate.value))
    assert case_of(hasty, "out").ring is not None or night_number(hasty, CATALOGUE, case)[0] == "thin"


def test_clearance_in_metres_and_none_where_nothing_looks() -> None:
    # It looks south along the kitchen's west wall; the way out leads through the hall, from x = 4.32 on.
    away = KITCHEN.model_copy(update={"heading_deg": -85.0})
    house = night_house({"kitchen-movement": "instant"})
    devices = tuple(away if one.id == KITCHEN.id else one for one in house.devices)
    site = house.model_copy(update={"devices": devices})
    case = case_of(site, "out")
    verdict, measure, estimate, _ = night_number(site, CATALOGUE, case)
    assert (verdict, measure) == ("good", MEASURES["clear"])
    assert estimate is not None
    assert estimate.unit == "m"
    assert 0.1 < estimate.value < 4.0
    found = nearest_detector(site, CATALOGUE, case)
    assert found is not None
    assert (estimate.value, found[1]) == (found[0], "kitchen-movement")
    only_a_contact = night_house({"front-contact": "instant"})
    case = case_of(only_a_contact, "kitchen")
    assert nearest_detector(only_a_contact, CATALOGUE, case) is None
    assert night_number(only_a_contact, CATALOGUE, case)[2] is None

"""All trips of a household in one list."""

from __future__ import annotations

import math

import pytest

from common.arrival_house import SLOW, USUAL, arrival_house
from common.night_house import ANN, night_house
from wardwright.model.household import Pass
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.arrival import arrive
from wardwright.trials.household_trips import household_trips
from wardwright.trials.leaving import leave
from wardwright.trials.trip_played import HouseholdTrip
from wardwright.trials.trips import trips

CATALOGUE = load_catalogue()


def of_kind(site: Site, kind: str, leaves: str = "usual") -> list[HouseholdTrip]:
    return [one for one in household_trips(site, CATALOGUE) if (one.kind, one.leaves) == (kind, leaves)]


def test_coming_and_going_are_the_trips_of_question_3() -> None:
    site = arrival_house(kitchen_door="open")
    (way,) = trips(site, CATALOGUE)
    for person in (SLOW, USUAL):
        played = arrive(site, CATALOGUE, way, person=person)
        (one,) = [each for each in of_kind(site, "arrival") if each.person == person.id]
        assert (one.second, one.device, one.part) == (played.alarm_s, played.by, "full")
        (out,) = [each for each in of_kind(site, "leaving") if each.person == person.id]
        left = leave(site, CATALOGUE, way, person=person)
        assert (out.device, out.rings) == (left.by, left.outcome != "set")


def test_a_forgotten_code_and_a_wrong_turn_are_told_and_are_no_fault() -> None:
    site = arrival_house(kitchen_door="shut")
    forgot = of_kind(site, "forgotten code")
    assert {(one.person, one.device, one.second, one.message_due_s) for one in forgot} == {
        ("father", "front-contact", 30.0, 40.0), ("grandmother", "front-contact", 30.0, 40.0),
    }  # fmt: skip
    turns = {(one.person, one.place): one for one in of_kind(site, "wrong turn")}
    kitchen = turns["father", "kitchen"]
    assert kitchen.device == "kitchen-movement"
    assert kitchen.spot is not None
    assert kitchen.spot.x < 4.3  # at the kitchen's door, or in it
    assert not any(one.is_ordinary for one in (*forgot, *turns.values()))


def test_an_ordinary_arrival_rings_nowhere() -> None:
    site = arrival_house(kitchen_door="shut")
    (one, two) = of_kind(site, "arrival")
    assert [(each.rings, each.second, each.device, each.spot) for each in (one, two)] == [
        (False, math.inf, None, None)
    ] * 2


def test_a_night_trip_has_device_second_behaviour_and_place() -> None:
    site = night_house()
    (one,) = of_kind(site, "night", "night")
    assert (one.person, one.part, one.place) == ("ann", "night", "kitchen")
    assert (one.device, one.behaviour, one.rings, one.is_ordinary) == (
        "hall-movement", "instant", True, True,
    )  # fmt: skip
    assert one.spot is not None
    assert one.spot.x == pytest.approx(6.15, abs=0.5)  # the study door
    assert one.message_due_s == one.second


def test_the_abort_delay_counts_in_the_message_of_an_entry_zone() -> None:
    site = night_house({"hall-movement": "entry-exit"})
    (one,) = of_kind(site, "night", "night")
    assert one.message_due_s == pytest.approx(one.second + 10.0)


def test_without_a_night_part_there_are_no_night_trips() -> None:
    assert of_kind(night_house({}), "night", "night") == []


def test_the_list_is_the_same_however_the_site_lists_its_things() -> None:
    site = arrival_house(kitchen_door="open")
    turned = site.model_copy(
        update={name: tuple(reversed(getattr(site, name))) for name in ("devices", "zones", "people")}
    )
    assert household_trips(turned, CATALOGUE) == household_trips(site, CATALOGUE)


def test_a_wrong_turn_at_night_is_told_with_device_and_second() -> None:
    told = ANN.model_copy(update={"passes": (Pass(part="night", may_not=("kitchen",)),)})
    site = night_house(people=(told,))
    (one,) = [each for each in of_kind(site, "wrong turn", "night") if each.part == "night"]
    assert (one.place, one.device, one.is_ordinary) == ("kitchen", "hall-movement", False)
    assert 0.0 < one.second < 10.0
    assert of_kind(site, "night", "night") == []

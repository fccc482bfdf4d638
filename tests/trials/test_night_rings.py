"""Trips from bed with part of the alarm set, by hand and by what must hold of any."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.arrival_house import HALL, KEYPAD, KITCHEN
from common.houses import on_opening, zone
from common.night_house import ANN, AT_NIGHT, CHILD, night_house
from common.random_houses import random_house
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.night_rings import active_in, clock_of, noticed_by, ring_on, unset_s
from wardwright.trials.night_trips import NightTrip, night_trips
from wardwright.trials.night_walk import steps_on, walked_until
from wardwright.trials.trip_floor import clearance

CATALOGUE = load_catalogue()
DEVICES = ("front-contact", "hall-movement", "kitchen-movement", "study-movement")


def trip_to(site: Site, goal: str) -> NightTrip:
    return next(one for one in night_trips(site, CATALOGUE) if one.goal == goal)


def second_of(site: Site, trip: NightTrip, **how: object) -> float:
    ring = ring_on(site, CATALOGUE, trip, **how)  # type: ignore[arg-type]
    if ring is None or trip.ends is None:
        return math.inf
    steps = steps_on(site.bare, CATALOGUE, trip.ends)
    assert steps is not None
    return clock_of(CATALOGUE, trip.person, walked_until(steps, ring.moment)) + ring.waits_s


def test_the_second_by_hand() -> None:
    site = night_house()
    trip = trip_to(site, "kitchen")
    # 2.1 m at 1.3 m/s to the study door, and its leaf; the detector looks at the doorway once it is open.
    leaf = CATALOGUE.figure("pass-door").value
    assert second_of(site, trip) == pytest.approx(2.1 / 1.3 + leaf, abs=0.4)
    ring = ring_on(site, CATALOGUE, trip)
    assert ring is not None
    assert (ring.device.id, ring.behaviour.id, ring.waits_s) == ("hall-movement", "instant", 0.0)


def test_an_entry_zone_rings_when_its_time_is_over() -> None:
    at_once = night_house()
    waits = night_house({"hall-movement": "entry-exit"})
    assert second_of(waits, trip_to(waits, "kitchen")) == pytest.approx(
        second_of(at_once, trip_to(at_once, "kitchen")) + 20.0
    )


def test_nothing_in_the_part_is_nothing_that_rings() -> None:
    site = night_house({})
    assert active_in(site, "night") == ()
    assert noticed_by(site, CATALOGUE, trip_to(site, "kitchen")) == ()
    assert active_in(night_house(parts=()), "night") == ()


def test_a_contact_on_a_door_on_the_way_tells_that_it_is_opened() -> None:
    leaf = on_opening("leaf", "kitchen-door", "contact-radio")
    site = night_house({"leaf": "instant"}, also=(leaf,))
    trip = trip_to(site, "kitchen")
    assert [one.id for one, _, _ in noticed_by(site, CATALOGUE, trip)] == ["leaf"]
    # 4.3 m, and the study's leaf; the alarm comes as the kitchen's begins to open.
    assert second_of(site, trip) == pytest.approx(4.3 / 1.3 + CATALOGUE.figure("pass-door").value, abs=0.4)
    stands_open = night_house({"leaf": "instant"}, leaves="open", also=(leaf,))
    assert ring_on(stands_open, CATALOGUE, trip_to(stands_open, "kitchen")) is None
    at_times_shut = night_house({"leaf": "instant"}, leaves="open", ever="shut", also=(leaf,))
    trip = trip_to(at_times_shut, "kitchen")
    assert ring_on(at_times_shut, CATALOGUE, trip) is None
    assert ring_on(at_times_shut, CATALOGUE, trip, leaves="most") is not None


def test_in_the_morning_it_is_unset_on_the_way() -> None:
    site = night_house({"hall-movement": "entry-exit", "front-contact": "entry-exit"})
    out = trip_to(site, "out")
    assert (out.place.id, out.control) == ("front-door", KEYPAD)
    # 2.1 m to the door, a leaf, 2 m to the keypad, a code.
    leaf, code = (CATALOGUE.figure(name).value for name in ("pass-door", "code-entry"))
    assert unset_s(site, CATALOGUE, out) == pytest.approx((2.1 + 2.1) / 1.3 + leaf + code, abs=0.7)
    assert ring_on(site, CATALOGUE, out) is None
    at_once = night_house({"hall-movement": "instant"})
    ring = ring_on(at_once, CATALOGUE, trip_to(at_once, "out"))
    assert ring is not None
    assert ring.device.id == "hall-movement"


def test_without_a_keypad_the_door_rings_or_a_keyfob_unsets_it_by_the_bed() -> None:
    without = tuple(one for one in night_house().devices if one.id != "keypad")
    site = night_house({"front-contact": "instant"}, devices=without)
    ring = ring_on(site, CATALOGUE, trip_to(site, "out"))
    assert ring is not None
    assert ring.device.id == "front-contact"
    keyfob = KEYPAD.model_copy(update={"id": "fob", "sheet": "keyfob-radio"})
    carried = night_house({"front-contact": "instant"}, devices=(*without, keyfob))
    out = trip_to(carried, "out")
    assert out.ends is None
    assert unset_s(carried, CATALOGUE, out) == CATALOGUE.figure("keyfob-press").value
    assert ring_on(carried, CATALOGUE, out) is None


@pytest.mark.parametrize("seed", range(1, 7))
def test_in_any_home_a_habit_that_lets_more_be_seen_rings_no_later(seed: int) -> None:
    drawn = random_house(seed, CATALOGUE)
    zones = tuple(one.model_copy(update={"parts": AT_NIGHT}) for one in drawn.zones)
    site = drawn.model_copy(update={"zones": zones})
    for trip in night_trips(site, CATALOGUE):
        # An entry time may be started by one device and its alarm given by another: of those that alarm at once.
        if all(
            not behaviour.starts_entry for _, behaviour, _ in noticed_by(site, CATALOGUE, trip, leaves="most")
        ):
            assert second_of(site, trip, leaves="most") <= second_of(site, trip) + 1e-9


@given(chosen=st.sets(st.sampled_from(DEVICES)), more=st.sampled_from(DEVICES))
def test_one_more_device_that_alarms_at_once_never_takes_a_ring_away(chosen: set[str], more: str) -> None:
    fewer = night_house(dict.fromkeys(chosen, "instant"))
    all_of_them = night_house(dict.fromkeys({*chosen, more}, "instant"))
    for trip in night_trips(fewer, CATALOGUE):
        for leaves in ("night", "most"):
            assert second_of(all_of_them, trip, leaves=leaves) <= second_of(fewer, trip, leaves=leaves)


@given(out=st.sampled_from(DEVICES), roles=st.sampled_from(("instant", "entry-exit", "entry-route")))
def test_taking_a_zone_out_of_the_part_never_adds_a_ring_in_the_night(out: str, roles: str) -> None:
    site = night_house(dict.fromkeys(DEVICES, roles))
    zones = tuple(
        one.model_copy(update={"parts": ("full",)}) if out in one.devices else one for one in site.zones
    )
    fewer = site.model_copy(update={"zones": zones})
    for trip in night_trips(site, CATALOGUE):
        if trip.goal != "out" and ring_on(site, CATALOGUE, trip) is None:
            assert ring_on(fewer, CATALOGUE, trip) is None


@given(order=st.permutations(range(4)))
def test_the_order_of_lists_changes_nothing(order: list[int]) -> None:
    site = night_house(dict.fromkeys(DEVICES, "instant"), people=(ANN, CHILD))
    turned = site.model_copy(
        update={
            "zones": tuple(site.zones[i] for i in order),
            "devices": tuple(reversed(site.devices)),
            "people": tuple(reversed(site.people)),
        }
    )
    for trip, other in zip(night_trips(site, CATALOGUE), night_trips(turned, CATALOGUE), strict=True):
        assert trip == other
        assert ring_on(site, CATALOGUE, trip) == ring_on(turned, CATALOGUE, other)


def test_both_are_told_of_by_name() -> None:
    site = night_house({}, zones=(zone(1, "all", HALL.id, KITCHEN.id, parts=AT_NIGHT),))
    trip = trip_to(site, "kitchen")
    assert [one.id for one, _, _ in noticed_by(site, CATALOGUE, trip)] == [
        "hall-movement",
        "kitchen-movement",
    ]


@pytest.mark.parametrize("sample", ["terrace", "terrace-better", "bungalow", "lakeside", "sunrise"])
def test_a_detector_that_sees_no_floor_of_a_trip_never_notices_on_it(sample: str) -> None:
    site = read_sample(sample)
    for trip in night_trips(site, CATALOGUE):
        for device, _, _ in noticed_by(site, CATALOGUE, trip, leaves="most"):
            if CATALOGUE.sheet(device.sheet).kind == "movement-detector":
                assert trip.ends is not None
                assert clearance(site.bare, CATALOGUE, device, ends=trip.ends) == 0.0

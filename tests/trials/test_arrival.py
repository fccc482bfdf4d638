"""Coming in, played on the control unit: times by hand, wrong turns, a forgotten code."""

from __future__ import annotations

import math

import pytest

from common.arrival_house import QUICK, SLOW, USUAL, arrival_house
from common.turning import quarter_turned
from common.worked_terrace import worked_terrace
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.arrival import arrive, heard_devices, rooms_beside, wrong_turns
from wardwright.trials.trips import Trip, taken, trips

CATALOGUE = load_catalogue()
WALKED_M = math.hypot(0.6, 2.73)


def trip_of(site: Site) -> Trip:
    return trips(site, CATALOGUE)[0]


def test_an_ordinary_arrival_line_by_line() -> None:
    site = arrival_house(kitchen_door="shut", roles={"study-movement": "instant"})
    played = arrive(site, CATALOGUE, trip_of(site), person=SLOW)
    lines = [(one.what, one.subject) for one in played.timeline]
    assert lines == [("entry time starts", "front-contact"), ("allowed", "hall-movement"), ("unset", "")]
    # The hall's detector is looked at from the door: seen through the doorway, 0.84 m at 0.64 m/s.
    assert played.timeline[1].time_s == pytest.approx(0.84 / 0.64)
    assert played.unset_s == pytest.approx((0.84 + WALKED_M) / 0.64 + 14.0)
    assert (played.by, played.alarm_s) == (None, math.inf)


def test_the_entry_time_may_end_before_the_slowest_is_done() -> None:
    short = Programme(entry_time_s=18.0, exit_time_s=30.0, abort_delay_s=5.0)
    site = arrival_house(programme=short)
    slow = arrive(site, CATALOGUE, trip_of(site), person=SLOW)
    assert (slow.alarm_s, slow.by, slow.message_due_s) == (18.0, "front-contact", 23.0)
    assert arrive(site, CATALOGUE, trip_of(site), person=QUICK).by is None


def test_a_forgotten_code_is_an_alarm_as_the_entry_time_ends() -> None:
    site = arrival_house()
    played = arrive(site, CATALOGUE, trip_of(site), person=USUAL, knows_code=False)
    assert (played.alarm_s, played.by) == (30.0, "front-contact")
    assert played.message_due_s == 40.0  # the abort delay of 10 s counts
    assert played.unset_s == math.inf


def test_an_instant_detector_in_sight_of_the_way_in_rings_on_whoever_comes_home() -> None:
    site = arrival_house(kitchen_door="open")
    played = arrive(site, CATALOGUE, trip_of(site), person=USUAL)
    assert played.by == "kitchen-movement"
    assert 0.0 < played.alarm_s < played.unset_s
    as_route = arrival_house(kitchen_door="open", roles={"kitchen-movement": "entry-route"})
    assert arrive(as_route, CATALOGUE, trip_of(as_route), person=USUAL).by is None


def test_an_entry_route_detector_without_a_contact_before_it_rings_at_once() -> None:
    site = arrival_house(without=("front-contact",))
    played = arrive(site, CATALOGUE, trip_of(site), person=SLOW)
    assert (played.by, played.alarm_s) == ("hall-movement", pytest.approx(0.84 / 0.64))


def test_a_wrong_turn_is_an_alarm_with_device_and_second() -> None:
    site = arrival_house(kitchen_door="shut")
    found = {one.space.id: one.played for one in wrong_turns(site, CATALOGUE, trip_of(site), person=USUAL)}
    assert found.keys() == {"kitchen", "study"}
    assert found["kitchen"].by == "kitchen-movement"
    # Through the doorway and 4 s at the door, then no nearer than the kitchen door some 3.7 m on, and its leaf.
    assert found["kitchen"].alarm_s > 0.84 / 1.04 + 4.0 + 3.7 / 1.04
    blind = arrival_house(kitchen_door="shut", without=("kitchen-movement",))
    quiet = {one.space.id: one.played for one in wrong_turns(blind, CATALOGUE, trip_of(blind), person=USUAL)}
    assert quiet["kitchen"].by is None  # only the entry time would end
    assert quiet["kitchen"].alarm_s == math.inf


def test_rooms_beside_the_way_in_are_those_with_a_door_gap_or_stairs_to_it() -> None:
    site = arrival_house()
    assert [space.id for space in rooms_beside(site, trip_of(site))] == ["kitchen", "study"]
    terrace = read_sample("terrace")
    assert {space.id for space in rooms_beside(terrace, trip_of(terrace))} == {
        "cupboard", "kitchen", "landing", "living",
    }  # fmt: skip


@pytest.mark.parametrize("person", [SLOW, USUAL, QUICK])
def test_a_slower_person_is_never_done_sooner_and_a_turn_changes_nothing(person: object) -> None:
    site = arrival_house(kitchen_door="shut")
    turned = quarter_turned(site)
    one = arrive(site, CATALOGUE, trip_of(site), person=person)  # type: ignore[arg-type]
    other = arrive(turned, CATALOGUE, trip_of(turned), person=person)  # type: ignore[arg-type]
    assert other.unset_s == pytest.approx(one.unset_s, abs=1e-9)
    assert [line.subject for line in other.timeline] == [line.subject for line in one.timeline]
    slow = taken(CATALOGUE, trip_of(site).legs, SLOW).arriving[0]
    assert one.unset_s <= slow + 1e-12


def test_only_devices_of_zones_are_heard() -> None:
    site = worked_terrace(contacts={"front-door": "entry-exit"})
    assert [device.id for device, _ in heard_devices(site)] == ["front-door-contact"]
    assert heard_devices(arrival_house(zones=())) == ()

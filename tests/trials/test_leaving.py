"""Leaving, played on the control unit, and setting with something open."""

from __future__ import annotations

import math

import pytest

from common.arrival_house import SLOW, USUAL, arrival_house
from common.houses import on_opening, zone
from wardwright.model.opening import Opening
from wardwright.model.programme import STANDARD_BEHAVIOURS, Programme
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.leaving import Left, leave, open_when_setting, settle
from wardwright.trials.trips import trips
from wardwright.trials.zone_response import Signal

CATALOGUE = load_catalogue()
INSTANT, DOOR, ROUTE, ALWAYS, LOG = STANDARD_BEHAVIOURS[:5]
TIMES = Programme(exit_time_s=30.0)


def left(site: Site, person: object = SLOW) -> Left:
    (trip,) = trips(site, CATALOGUE)
    return leave(site, CATALOGUE, trip, person=person)  # type: ignore[arg-type]


def test_zones_of_the_way_out_are_left_alone_and_others_keep_it_from_being_set() -> None:
    quiet = [Signal(1.0, ROUTE, "hall"), Signal(2.0, LOG, "shed"), Signal(9.0, DOOR, "door")]
    done = settle(quiet, TIMES, shut_s=12.0)
    assert (done.outcome, done.at_s, done.by) == ("set", 30.0, None)
    assert [line.what for line in done.timeline] == ["allowed", "logged", "allowed", "set"]
    for behaviour in (INSTANT, ALWAYS):
        kept = settle([*quiet, Signal(4.0, behaviour, "room")], TIMES, shut_s=12.0)
        assert (kept.outcome, kept.at_s, kept.by) == ("kept from setting", 4.0, "room")


def test_a_door_that_stands_open_as_the_exit_time_ends() -> None:
    late = settle([Signal(26.0, DOOR, "door")], TIMES, shut_s=30.0)
    assert (late.outcome, late.at_s, late.by) == ("door open too long", 30.0, "door")
    assert settle([Signal(26.0, DOOR, "door")], TIMES, shut_s=29.9).outcome == "set"


def test_leaving_takes_what_one_works_out_by_hand() -> None:
    site = arrival_house(kitchen_door="shut")
    done = left(site)
    assert (done.outcome, done.at_s) == ("set", 30.0)
    door = next(line for line in done.timeline if line.subject == "front-contact")
    # Back along the walk, unlock 4 s, out through the doorway: then it is shut.
    assert door.time_s == pytest.approx((math.hypot(0.6, 2.73) + 0.84) / 0.64 + 4.0)
    short = arrival_house(kitchen_door="shut", programme=Programme(exit_time_s=12.0))
    assert left(short).outcome == "door open too long"
    assert left(short, USUAL).outcome == "set"


def test_an_instant_detector_that_sees_the_way_out_keeps_the_alarm_from_being_set() -> None:
    done = left(arrival_house(kitchen_door="open"))
    assert (done.outcome, done.by) == ("kept from setting", "kitchen-movement")
    assert done.at_s < 2.0  # it looks at the keypad's place


def with_contacts(**changes: object) -> Site:
    site = arrival_house(
        also=(
            on_opening("kitchen-contact", "kitchen-window", "contact-radio"),
            on_opening("study-contact", "study-window", "contact-radio"),
        ),
        programme=Programme.model_validate(changes.pop("programme", {})),
        without=("study-movement",),
    )
    windows = zone(90, "windows", "kitchen-contact", "study-contact", behaviour="instant")
    ajar = changes.pop("ajar", None)

    def stands(one: Opening) -> Opening:
        return one.model_copy(update={"habit": "ajar"}) if one.id == ajar else one

    return site.model_copy(
        update={"zones": (*site.zones, windows), "openings": tuple(map(stands, site.openings)), **changes}
    )


def test_setting_with_a_window_open_is_refused_as_the_programme_says() -> None:
    kitchen, study = open_when_setting(with_contacts(), CATALOGUE)
    assert (kitchen.opening.id, study.opening.id) == ("kitchen-window", "study-window")
    assert kitchen.is_refused
    assert kitchen.left_out == ()
    assert not kitchen.is_usual
    (usual, _) = open_when_setting(with_contacts(ajar="kitchen-window"), CATALOGUE)
    assert usual.is_usual


def test_a_zone_that_is_left_out_takes_all_its_devices_along() -> None:
    site = with_contacts(programme={"if_open_when_setting": "inhibit"})
    kitchen, study = open_when_setting(site, CATALOGUE)
    assert not kitchen.is_refused
    assert [device.id for device in kitchen.left_out] == ["kitchen-contact", "study-contact"]
    assert kitchen.watched_by == ("kitchen-movement",)
    assert 0.5 < kitchen.watched_share <= 1.0
    assert (study.watched_by, study.watched_share) == ((), 0.0)  # nothing else watches the study


def test_a_zone_that_may_not_be_inhibited_is_refused_all_the_same() -> None:
    behaviours = tuple(one.model_copy(update={"may_be_inhibited": False}) for one in STANDARD_BEHAVIOURS)
    site = with_contacts(programme={"if_open_when_setting": "inhibit"}, behaviours=behaviours)
    assert all(one.is_refused for one in open_when_setting(site, CATALOGUE))

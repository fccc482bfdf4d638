"""CTL102: watched by shape or by contacts, at once or not."""

from __future__ import annotations

from common.houses import CATALOGUE, on_opening, on_wall, two_rooms_and_hall, zone
from common.rule_houses.control import KEYPAD, STUDY_FAN, STUDY_ZONE, UNIT_IN_HALL, UNIT_IN_STUDY
from wardwright.model.device import Device
from wardwright.model.programme import Zone
from wardwright.rules.control.control_unit_not_watched_by_an_instant_device import (
    control_unit_not_watched_by_an_instant_device as rule,
)
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of


def findings(*devices: Device, zones: tuple[Zone, ...]) -> tuple[Finding, ...]:
    return findings_of(rule, two_rooms_and_hall(devices=devices, zones=zones), CATALOGUE)


def test_a_detector_that_alarms_at_once_guards_it() -> None:
    assert findings(UNIT_IN_STUDY, STUDY_FAN, zones=(STUDY_ZONE,)) == ()


def test_an_entry_route_detector_does_not_and_is_named() -> None:
    late = zone(1, "Study movement", "study-fan", behaviour="entry-route")
    (found,) = findings(UNIT_IN_STUDY, STUDY_FAN, zones=(late,))
    assert found.message.endswith("; study fan does, but not at once")
    assert found.related == ("study-fan",)
    assert found.mends == ()


def test_a_zone_that_is_only_set_at_night_does_not() -> None:
    night = zone(1, "Study movement", "study-fan", parts=("night",))
    assert len(findings(UNIT_IN_STUDY, STUDY_FAN, zones=(night,))) == 1


def test_a_detector_of_another_room_does_not() -> None:
    (found,) = findings(KEYPAD, UNIT_IN_HALL, STUDY_FAN, zones=(STUDY_ZONE,))
    assert found.severity == "advise"
    assert found.related == ()


def test_contacts_on_every_way_into_its_room_guard_it() -> None:
    door, window = on_opening("door-contact", "study-door"), on_opening("window-contact", "study-window")
    both = zone(1, "Study", "door-contact", "window-contact")
    assert findings(UNIT_IN_STUDY, door, window, zones=(both,)) == ()
    assert len(findings(UNIT_IN_STUDY, door, window, zones=(zone(1, "Study", "door-contact"),))) == 1


def test_a_unit_with_its_own_keypad_gets_no_new_place() -> None:
    unit = on_wall("unit", "unit-with-keypad", "study-wall", 2.0, height_m=1.5)
    (found,) = findings(unit, STUDY_FAN, zones=(STUDY_ZONE,))
    assert found.mends == ()


def test_without_zones_nothing_is_known() -> None:
    (found,) = findings(UNIT_IN_STUDY, STUDY_FAN, zones=())
    assert (found.severity, found.message.split(",")[0]) == ("not run", "no zone is programmed")

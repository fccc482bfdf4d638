"""FIR108: a CO alarm in each room where something may burn."""

from __future__ import annotations

from common.houses import CATALOGUE, two_rooms_and_hall
from common.mending import mended
from common.rule_houses.fire import US, hung, thing, with_stove
from wardwright.rules.fire.burning_appliance_without_co_alarm import (
    burning_appliance_without_co_alarm as rule,
)
from wardwright.rules.fire.co_alarm_at_the_wrong_distance_from_its_appliance import (
    co_alarm_at_the_wrong_distance_from_its_appliance,
)
from wardwright.rules.registry import findings_of


def test_the_new_place_keeps_the_distance_too() -> None:
    (found,) = findings_of(rule, with_stove(), CATALOGUE)
    assert (found.subject, found.related) == ("living", ("stove",))
    after = mended(with_stove(), found.mends[0])
    assert findings_of(rule, after, CATALOGUE) == ()
    assert findings_of(co_alarm_at_the_wrong_distance_from_its_appliance, after, CATALOGUE) == ()


def test_an_alarm_in_another_room_does_not_count() -> None:
    site = two_rooms_and_hall(fixtures=(thing("boiler", 0.5, 1.0),), devices=(hung("co", "co", 8.0, 2.0),))
    assert [one.subject for one in findings_of(rule, site, CATALOGUE)] == ["kitchen"]


def test_america_asks_for_something_else() -> None:
    (found,) = findings_of(rule, with_stove(place=US), CATALOGUE)
    assert (found.severity, "no figure" in found.message) == ("not run", True)

"""CTL105: on the entry route, unwatched, or of no account."""

from __future__ import annotations

from typing import Any

from common.houses import CATALOGUE, on_wall, two_rooms_and_hall
from common.rule_houses.control import KEYPAD, ROUTER, ROUTER_IN_STUDY, STUDY_FAN, STUDY_ZONE, socket
from wardwright.rules.control.router_not_protected import router_not_protected as rule
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of

POINT = socket(1.0, 1.0).model_copy(update={"id": "router", "name": "router", "kind": "router"})


def findings(*devices: Any, **parts: Any) -> tuple[Finding, ...]:
    usual = {"devices": (KEYPAD, STUDY_FAN, *devices), "zones": (STUDY_ZONE,)}
    return findings_of(rule, two_rooms_and_hall(**(usual | parts)), CATALOGUE)


def test_on_the_entry_route_it_is_moved_to_the_watched_room() -> None:
    (found,) = findings(ROUTER)
    assert (found.severity, found.message) == ("advise", "router: it is on the entry route")
    assert found.cure == "Move it to the place given, in Study"
    assert findings(ROUTER_IN_STUDY) == ()


def test_a_point_of_the_house_counts_and_is_not_moved() -> None:
    (found,) = findings(outlets=(POINT,))
    assert found.message == "router: nothing that alarms at once watches it"
    assert found.mends == ()


def test_it_is_of_no_account_where_messages_go_by_mobile_data() -> None:
    assert findings(ROUTER, on_wall("path", "by-mobile", "south", 8.0)) == ()
    assert len(findings(ROUTER, on_wall("path", "by-both", "south", 8.0))) == 1


def test_without_zones_or_space_it_is_not_run() -> None:
    (found,) = findings(ROUTER, zones=())
    assert (found.severity, found.message.split(",")[0]) == ("not run", "no zone is programmed")
    (stray,) = findings(outlets=(POINT.model_copy(update={"at_m": (50.0, 50.0)}),))
    assert (stray.severity, stray.message) == ("not run", "router: it stands in no space")


def test_no_router_is_said() -> None:
    (found,) = findings()
    assert (found.severity, found.lacks) == ("not run", "router")

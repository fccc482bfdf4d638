"""CTL104: seen through a window, and where nobody sees it."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, two_rooms_and_hall
from common.rule_houses.control import UNIT_BY_WINDOW
from wardwright.rules.control.control_unit_in_view_from_outside import (
    control_unit_in_view_from_outside as rule,
)
from wardwright.rules.registry import findings_of

HOUSE = two_rooms_and_hall(devices=(UNIT_BY_WINDOW,))


def test_the_pane_and_the_distance_are_told() -> None:
    (found,) = findings_of(rule, HOUSE, CATALOGUE)
    assert found.message == "unit: it is seen from outside through study window"
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(4.76)
    assert (found.severity, found.related) == ("advise", ("study-window",))


def test_it_is_moved_within_its_room_where_it_can_be() -> None:
    (found,) = findings_of(rule, HOUSE, CATALOGUE)
    assert found.cure == "Move it to the place given, in Study"
    assert dict(found.mends[0].values)["height_m"] == 1.5


def test_a_curtain_ends_it() -> None:
    drawn = tuple(one.model_copy(update={"covering": "curtain"}) for one in HOUSE.openings)
    assert findings_of(rule, HOUSE.model_copy(update={"openings": drawn}), CATALOGUE) == ()


def test_no_unit_is_not_run() -> None:
    (found,) = findings_of(rule, two_rooms_and_hall(), CATALOGUE)
    assert (found.severity, found.lacks) == ("not run", "control-unit")

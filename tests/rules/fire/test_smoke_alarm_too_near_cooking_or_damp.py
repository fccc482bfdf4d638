"""FIR105: distances on the plan to cookers, wet doors and vents."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, one_room, two_rooms_and_hall
from common.mending import mended
from common.rule_houses.fire import COOKER, US, hung, thing
from wardwright.rules.fire.smoke_alarm_too_near_cooking_or_damp import (
    smoke_alarm_too_near_cooking_or_damp as rule,
)
from wardwright.rules.registry import findings_of


def test_the_distance_to_the_cooker_is_worked_by_hand() -> None:
    """From (2, 2) to the cooker's corner (0.8, 0.8)."""
    site = one_room(devices=(hung("smoke", "smoke", 2.0, 2.0),), fixtures=(COOKER,))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(math.hypot(1.2, 1.2))
    assert (found.limit, found.severity, found.related) == (3.0, "advise", ("cooker",))
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_in_america_the_outer_zone_is_to_be_checked() -> None:
    """From (4.5, 3.5): 4.58 m, over 10 ft and under 20 ft."""
    site = one_room(devices=(hung("smoke", "smoke", 4.5, 3.5),), fixtures=(COOKER,), place=US)
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(math.hypot(3.7, 2.7))
    assert (found.limit, found.severity) == (6.1, "check with the standard")


@pytest.mark.parametrize(("x", "distance"), [(4.9, 0.85), (5.0, None)])
def test_in_america_the_kitchens_door_keeps_its_36_inches(x: float, distance: float | None) -> None:
    """The kitchen's door is at (4.05, 4), the cooker behind the wall."""
    site = two_rooms_and_hall(devices=(hung("smoke", "smoke", x, 4.0),), fixtures=(COOKER,), place=US)
    found = [one for one in findings_of(rule, site, CATALOGUE) if one.limit == 0.91]
    assert [one.estimate.value for one in found if one.estimate] == (
        [] if distance is None else [pytest.approx(distance)]
    )


def test_blown_air_counts_in_america() -> None:
    site = one_room(
        devices=(hung("smoke", "smoke", 2.0, 2.0),), fixtures=(thing("vent", 2.5, 2.0),), place=US
    )
    found = [one for one in findings_of(rule, site, CATALOGUE) if one.severity != "not run"]
    assert [one.limit for one in found] == [0.91]


def test_without_a_cooker_it_says_so() -> None:
    (found,) = findings_of(rule, one_room(devices=(hung("smoke", "smoke", 2.0, 2.0),)), CATALOGUE)
    assert (found.severity, found.message) == ("not run", "No cooker is drawn")

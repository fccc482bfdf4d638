"""CTL106: the length of a lead, and a place within it."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, on_wall, two_rooms_and_hall
from common.rule_houses.control import MAINS_UNIT, socket
from wardwright.model.fixture import Outlet
from wardwright.model.site import Site
from wardwright.rules.control.control_unit_far_from_power import control_unit_far_from_power as rule
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of


def findings(*outlets: Outlet, **parts: object) -> tuple[Finding, ...]:
    site: Site = two_rooms_and_hall(**({"devices": (MAINS_UNIT,), "outlets": outlets} | parts))
    return findings_of(rule, site, CATALOGUE)


def test_a_point_of_its_room_that_is_too_far_gives_the_length() -> None:
    """From (6.24, 1.0), 1.5 m up, to (10.15, 4.0), 0.45 m up; the limit is a lead of 2 m."""
    (found,) = findings(socket(10.15, 4.0))
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(math.sqrt(3.91**2 + 3.0**2 + 1.05**2))
    assert (found.severity, found.limit, found.related) == ("advise", 2.0, ("socket",))


def test_the_mend_is_the_nearest_place_by_the_point() -> None:
    (found,) = findings(socket(10.15, 4.0))
    values = dict(found.mends[0].values)
    # The room's far half: south of the window on the east wall is nearest to where the unit is.
    assert (values["wall"], values["height_m"]) == ("east", 1.5)
    assert found.cure == "Move it to the place given, in Study"


def test_a_point_beyond_a_wall_does_not_count() -> None:
    (found,) = findings(socket(6.0, 1.0))
    assert "no power point is drawn in its room" in found.message
    assert (found.estimate, found.limit) == (None, None)


def test_a_unit_on_cells_needs_none() -> None:
    assert findings(socket(10.15, 4.0), devices=(on_wall("unit", "unit", "study-wall", 1.0),)) == ()


def test_without_a_unit_it_is_not_run() -> None:
    (found,) = findings(socket(1.0, 1.0), devices=())
    assert (found.severity, found.lacks) == ("not run", "control-unit")

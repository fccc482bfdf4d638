"""WTR102: a metre from what may leak, less the lead."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_floor, on_wall, one_room, two_rooms_and_hall
from common.mending import mended
from common.rule_houses.water import sink
from wardwright.rules.registry import findings_of
from wardwright.rules.water.water_detector_away_from_water import water_detector_away_from_water as rule


@pytest.mark.parametrize(("x", "distance"), [(1.8, None), (1.81, 1.01), (3.0, 2.2)])
def test_the_distance_is_worked_by_hand(x: float, distance: float | None) -> None:
    """The sink's edge is at x 0.8."""
    site = one_room(devices=(on_floor("water", "water", x, 2.0, 0.0),), fixtures=(sink(0.5, 2.0),))
    found = findings_of(rule, site, CATALOGUE)
    assert [one.estimate.value for one in found if one.estimate] == (
        [] if distance is None else [pytest.approx(distance)]
    )
    for one in found:
        assert (one.limit, one.severity, one.related) == (1.0, "advise", ("sink",))
        assert findings_of(rule, mended(site, one.mends[0]), CATALOGUE) == ()


def test_a_lead_is_taken_off() -> None:
    """From (3.5, 0.04) to the sink's corner (0.8, 1.7): 3.17 m, less 1.5 m."""
    site = one_room(
        devices=(on_wall("water", "water-lead", "south", 3.65, height_m=1.0),), fixtures=(sink(0.5, 2.0),)
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx((2.7**2 + 1.66**2) ** 0.5 - 1.5)
    assert found.mends == ()


def test_a_room_without_water_cannot_be_run() -> None:
    site = two_rooms_and_hall(
        devices=(on_floor("water", "water", 8.0, 2.0, 0.0),), fixtures=(sink(1.0, 1.0),)
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert (found.severity, found.subject) == ("not run", "water")

"""FIR107: level distance to the highest line, analytic."""

from __future__ import annotations

import pytest
import shapely

from common.houses import CATALOGUE, one_room
from common.rule_houses.fire import hung, under_a_ridge
from wardwright.rules.fire.alarm_off_the_apex_of_a_sloped_ceiling import (
    alarm_off_the_apex_of_a_sloped_ceiling as rule,
)
from wardwright.rules.fire.alarm_off_the_apex_of_a_sloped_ceiling import highest_line
from wardwright.rules.registry import findings_of


def test_the_highest_line_is_the_ridge() -> None:
    site = under_a_ridge()
    top, ridge = highest_line(site, site.spaces[0])
    assert top == pytest.approx(3.4)
    assert ridge.hausdorff_distance(shapely.LineString([(0, 2), (5, 2)])) < 1e-9


def test_a_flat_part_is_an_area() -> None:
    """Cut off at 2.65 m: the slopes reach it at y 1 and y 3."""
    site = under_a_ridge()
    cut = site.model_copy(update={"storeys": (site.storeys[0].model_copy(update={"height_m": 2.65}),)})
    top, area = highest_line(cut, cut.spaces[0])
    assert top == pytest.approx(2.65)
    assert area.bounds == pytest.approx((0.0, 1.0, 5.0, 3.0))


@pytest.mark.parametrize(("y", "distance"), [(0.5, 1.5), (1.05, 0.95), (1.15, None), (2.0, None)])
def test_the_distance_is_level(y: float, distance: float | None) -> None:
    found = findings_of(rule, under_a_ridge(hung("smoke", "smoke", 2.5, y)), CATALOGUE)
    assert [one.estimate.value for one in found if one.estimate] == (
        [] if distance is None else [pytest.approx(distance)]
    )
    assert all((one.limit, one.severity) == (0.9, "check with the standard") for one in found)


def test_a_flat_ceiling_has_no_apex() -> None:
    assert findings_of(rule, one_room(devices=(hung("smoke", "smoke", 0.5, 0.5),)), CATALOGUE) == ()

"""MOV108: high is needless where the usual setting reaches."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, on_wall, one_room
from common.mending import mended
from common.rule_houses.movement import LOOKING_EAST
from wardwright.model.device import Device
from wardwright.rules.movement.sensitivity_high_where_it_need_not_be import (
    sensitivity_high_where_it_need_not_be as rule,
)
from wardwright.rules.registry import findings_of


def set_to(sensitivity: str, sheet: str = "fan") -> Device:
    return on_wall("fan", sheet, "west", 2.15, sensitivity=sensitivity)


def test_within_its_reach_high_is_needless() -> None:
    """The farthest cell of the room is 4.91 m along and 1.95 m aside; it reaches 12 m."""
    site = one_room(devices=(set_to("high"),))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(math.hypot(4.91, 1.95))
    assert (found.limit, found.severity) == (12.0, "advise")
    assert dict(found.mends[0].values) == {"sensitivity": "usual"}
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


@pytest.mark.parametrize("sensitivity", ["low", "usual"])
def test_other_settings_are_left_alone(sensitivity: str) -> None:
    assert findings_of(rule, one_room(devices=(set_to(sensitivity),)), CATALOGUE) == ()


def test_beyond_its_reach_high_may_be_wanted() -> None:
    far = LOOKING_EAST.model_copy(update={"sensitivity": "high"})
    assert findings_of(rule, one_room(devices=(far,)), CATALOGUE) == ()


def test_one_that_sees_no_space_of_its_own_is_not_judged() -> None:
    outside = on_wall("fan", "fan", "south", 2.0, side="right", sensitivity="high")
    (found,) = findings_of(rule, one_room(devices=(outside,)), CATALOGUE)
    assert found.severity == "not run"

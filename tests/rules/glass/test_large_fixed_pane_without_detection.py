"""GLS104: how large, how high, and what would notice it."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, window
from common.rule_houses.glass import LARGE, long_room
from wardwright.model.site import Site
from wardwright.rules.glass.large_fixed_pane_without_detection import above_ground_m
from wardwright.rules.glass.large_fixed_pane_without_detection import (
    large_fixed_pane_without_detection as rule,
)
from wardwright.rules.registry import findings_of


def house(*devices: Any, **facts: Any) -> Site:
    return long_room(openings=(window("pane", "east", 2.15, **(LARGE | facts)),), devices=devices)


def test_the_area_is_the_number_and_a_detector_that_hears_it_the_mend() -> None:
    (found,) = findings_of(rule, house(), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(4.0)
    assert (found.estimate.unit, found.limit, found.severity) == ("m2", 1.0, "advise")
    assert found.mends[0].subject == "living"
    assert dict(found.mends[0].values)["sheet"] == "ear"


@pytest.mark.parametrize(
    "facts", [{"width_m": 0.49}, {"hinge": "start"}, {"sill_outside_m": 3.1}], ids=["small", "opens", "high"]
)
def test_what_is_small_or_high_or_opens_is_left(facts: dict[str, Any]) -> None:
    found = findings_of(rule, house(**facts), CATALOGUE)
    assert [one.severity for one in found if one.severity != "not run"] == []


@pytest.mark.parametrize(
    "device",
    [on_opening("shock", "pane", "shock"), on_wall("shock", "shock", "east", 3.8, height_m=1.2)],
    ids=["on it", "on its wall"],
)
def test_a_shock_detector_is_enough(device: Any) -> None:
    assert findings_of(rule, house(device), CATALOGUE) == ()


def test_a_movement_detector_is_not() -> None:
    assert len(findings_of(rule, house(on_wall("fan", "fan", "south", 2.65)), CATALOGUE)) == 1


def test_glass_that_only_the_other_sheet_knows_gets_that() -> None:
    (found,) = findings_of(rule, house(glazing="laminated"), CATALOGUE)
    assert dict(found.mends[0].values)["sheet"] == "ear-any-glass"


def test_the_ground_outside_counts() -> None:
    site = house()
    assert site.ground.level_m == -0.15
    assert above_ground_m(site, site.openings[0]) == pytest.approx(0.35)


def test_a_window_of_which_nobody_told_how_it_opens_cannot_be_run() -> None:
    (found,) = findings_of(rule, long_room(), CATALOGUE)
    assert (found.severity, found.message) == ("not run", "Nobody told whether east window opens")

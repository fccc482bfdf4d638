"""MOV105: what its sheet stands, and the way out of the light."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, opening
from common.mending import mended
from common.rule_houses.movement import ROAD_TO_WINDOW, SOUTH_WINDOW
from wardwright.model.site import Site
from wardwright.rules.movement.strong_light_straight_on_movement_detector import (
    strong_light_straight_on_movement_detector as rule,
)
from wardwright.rules.registry import findings_of


def house(sheet: str = "fan", **parts: Any) -> Site:
    fan = on_wall("living-movement", sheet, "north", 2.65)
    return one_room(**({"devices": (fan,), "openings": (SOUTH_WINDOW,), "ground": ROAD_TO_WINDOW} | parts))


# 30 000 cd through a double pane from 8.96 m along and 1.65 m down: 0.8 x 30 000 / 83.0 = 289 lx.
def test_a_silent_sheet_is_no_pass() -> None:
    (found,) = findings_of(rule, house(), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(289.1, abs=0.1)
    assert (found.limit, found.severity, found.related) == (None, "advise", ("south-window",))
    assert "its sheet does not say" in found.message


def test_a_sheet_that_stands_less_has_to_be_kept() -> None:
    (found,) = findings_of(rule, house("fan-of-200-lx"), CATALOGUE)
    assert (found.limit, found.severity) == (200.0, "must mend")
    assert findings_of(rule, house("fan-of-2000-lx"), CATALOGUE) == ()


def test_it_is_turned_out_of_the_light() -> None:
    """The fan is 45 degrees to each side, and on a bracket it turns as far: there the lamps are at its very edge."""
    (found,) = findings_of(rule, house(), CATALOGUE)
    assert found.mends[0].action in ("turn-device", "move-device")
    assert findings_of(rule, mended(house(), found.mends[0]), CATALOGUE) == ()


def test_where_it_cannot_go_the_pane_is_covered() -> None:
    """Free-standing panes all round but one: no other place looks past its glass."""
    panes = tuple(
        SOUTH_WINDOW.model_copy(
            update={"id": f"pane-{wall}", "wall": wall, "offset_m": size / 2 + 0.15, "width_m": size}
        )
        for wall, size in (("south", 5.0), ("north", 5.0), ("east", 4.0), ("west", 4.0))
    )
    site = house(openings=panes)
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.mends[0].action == "change-covering"
    assert found.cure.startswith("Put a blind")
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_a_rooflight_is_told_by_its_angle() -> None:
    light = opening("light", "south", 2.65, kind="rooflight", glazing="double", sill_m=2.0, head_m=2.4)
    (found,) = findings_of(rule, house(openings=(light,)), CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.estimate.unit, found.limit) == (
        pytest.approx(0.0, abs=1e-6),
        "deg",
        15.0,
    )
    assert "rooflight" in found.message
    assert findings_of(rule, mended(house(openings=(light,)), found.mends[0]), CATALOGUE) == ()


def test_without_a_road_only_a_bare_pane_in_view_is_a_question() -> None:
    no_road = ROAD_TO_WINDOW.model_copy(update={"road_m": None})
    (found,) = findings_of(rule, house(ground=no_road), CATALOGUE)
    assert (found.severity, "no road" in found.message) == ("not run", True)
    assert findings_of(rule, house(ground=no_road, openings=()), CATALOGUE) == ()

"""GLS105: corners in the plane of the wall, worked by hand; surfaces of the sheet."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, one_room, window
from common.mending import mended
from common.rule_houses.glass import with_shock
from wardwright.model.device import Fixing
from wardwright.rules.glass.shock_detector_beyond_its_radius_or_on_unfit_surface import (
    shock_detector_beyond_its_radius_or_on_unfit_surface as rule,
)
from wardwright.rules.registry import findings_of

TIMBER = {"fixing": Fixing(by="screws", surface="timber")}


def test_on_a_frame_the_best_place_is_the_middle_of_the_longer_side() -> None:
    """1.8 m by 1.4 m: from the middle of a long side, hypot(1.4, 0.9)."""
    (found,) = findings_of(rule, with_shock(width_m=1.8, sill_m=0.7), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(math.hypot(1.4, 0.9))
    assert (found.limit, found.severity, found.related) == (1.2, "must mend", ("window",))
    assert found.mends[0].values == (("sheet", "shock-wide"),)


def test_on_the_leaf_the_best_place_is_its_middle() -> None:
    pane = window("window", "north", 2.65, width_m=1.8, sill_m=0.7)
    device = on_opening("shock", "window", "shock", electronics_on="leaf").model_copy(update=TIMBER)
    assert findings_of(rule, one_room(openings=(pane,), devices=(device,)), CATALOGUE) == ()


def test_on_a_wall_it_is_moved_along_it() -> None:
    """At x 1, the window's middle at x 2.5: hypot(1.5 + 0.6, 0.6) to its farthest corner, both at 1.5 m."""
    pane = window("window", "south", 2.65)
    device = on_wall("shock", "shock", "south", 1.15, height_m=1.5).model_copy(update=TIMBER)
    site = one_room(openings=(pane,), devices=(device,))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(math.hypot(2.1, 0.6))
    # Beside the window the farthest corner is at least 0.75 + 0.6 m away: no place is near enough.
    assert found.mends == ()
    narrow = one_room(openings=(pane.model_copy(update={"width_m": 0.6}),), devices=(device,))
    (found,) = findings_of(rule, narrow, CATALOGUE)
    assert found.mends[0].action == "move-device"
    assert findings_of(rule, mended(narrow, found.mends[0]), CATALOGUE) == ()


@pytest.mark.parametrize(("surface", "sheets"), [("steel", ["shock-wide"]), ("glass", [])])
def test_a_surface_that_the_sheet_leaves_out(surface: str, sheets: list[str]) -> None:
    (found,) = findings_of(rule, with_shock(surface=surface, width_m=0.8), CATALOGUE)
    assert found.severity == "must mend"
    assert [dict(mend.values)["sheet"] for mend in found.mends] == sheets


@pytest.mark.parametrize("surface", ["", "unknown"])
def test_a_surface_that_nobody_told_cannot_be_run(surface: str) -> None:
    (found,) = findings_of(rule, with_shock(surface=surface, width_m=0.8), CATALOGUE)
    assert found.severity == "not run"

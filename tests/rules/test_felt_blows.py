"""What a shock detector feels: corners in the plane of the wall, worked by hand, and surfaces."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, one_room, opening, window
from wardwright.errors import CatalogueError
from wardwright.model.device import Fixing
from wardwright.rules.felt_blows import (
    FRAMES,
    farthest_corner_m,
    feels,
    from_wall_m,
    guarded_opening,
    shock_table,
)

TIMBER = {"fixing": Fixing(by="screws", surface="timber")}
ROW = CATALOGUE.sheet("shock")
PANE = window("window", "south", 2.65, width_m=0.8)


def test_on_a_frame_it_sits_in_the_middle_of_the_longer_side() -> None:
    """0.8 m by 1.2 m: from the middle of a long side across the short one; on the leaf half of that."""
    assert farthest_corner_m(on_opening("a", "window", "shock"), PANE) == pytest.approx(math.hypot(0.8, 0.6))
    leaf = on_opening("a", "window", "shock", electronics_on="leaf")
    assert farthest_corner_m(leaf, PANE) == pytest.approx(math.hypot(0.4, 0.6))


def test_on_a_wall_it_is_measured_to_the_far_side() -> None:
    """At 1.65 m, 1.5 m up: 1.0 + 0.4 m along, 0.6 m up and down."""
    assert from_wall_m(PANE, 1.65, 1.5) == pytest.approx(math.hypot(1.4, 0.6))
    device = on_wall("a", "shock", "south", 1.65, height_m=1.5)
    assert farthest_corner_m(device, PANE) == pytest.approx(math.hypot(1.4, 0.6))


def test_it_guards_what_it_is_on_or_the_nearest_way_in_of_its_wall() -> None:
    site = one_room(openings=(PANE, opening("door", "south", 4.0)))
    assert guarded_opening(site, on_opening("a", "window", "shock")) == PANE
    assert guarded_opening(site, on_wall("a", "shock", "south", 3.6)) == site.opening("door")
    assert guarded_opening(site, on_wall("a", "shock", "north", 3.6)) is None


@pytest.mark.parametrize(("width_m", "is_felt"), [(1.0, True), (1.1, False)])
def test_it_feels_all_of_a_frame_within_its_radius(width_m: float, is_felt: bool) -> None:
    """Radius 1.2 m: hypot(1.0, 0.6) is 1.17 m, hypot(1.1, 0.6) is 1.25 m."""
    device = on_opening("a", "window", "shock").model_copy(update=TIMBER)
    assert feels(device, ROW, PANE.model_copy(update={"width_m": width_m})) is is_felt


@pytest.mark.parametrize(("offset_m", "is_felt"), [(2.05, True), (1.95, False)])
def test_it_feels_from_the_wall_beside_it(offset_m: float, is_felt: bool) -> None:
    """To the far side 0.6 + 0.4 and 0.7 + 0.4 m, 0.6 m up: 1.17 m and 1.25 m."""
    device = on_wall("a", "shock", "south", offset_m, height_m=1.5).model_copy(update=TIMBER)
    assert feels(device, ROW, PANE) is is_felt


def test_it_feels_nothing_of_another_opening_or_wall() -> None:
    device = on_opening("a", "door", "shock").model_copy(update=TIMBER)
    assert not feels(device, ROW, PANE)
    assert not feels(on_wall("a", "shock", "north", 2.65).model_copy(update=TIMBER), ROW, PANE)


def test_a_surface_that_is_unfit_or_not_known_is_not_taken_for_fit() -> None:
    """Its sheet is for timber and upvc: a frame of unknown stuff may be of metal."""
    device = on_opening("a", "window", "shock")
    assert not feels(device, ROW, PANE)
    assert not feels(device.model_copy(update={"fixing": Fixing(by="screws", surface="glass")}), ROW, PANE)
    assert ROW.shock is not None
    any_frame = ROW.model_copy(
        update={"shock": ROW.shock.model_copy(update={"surfaces": tuple(sorted(FRAMES))})}
    )
    assert feels(device, any_frame, PANE)
    # A wall of unknown stuff may be anything.
    assert not feels(on_wall("a", "shock", "south", 2.05, height_m=1.5), any_frame, PANE)


def test_a_sheet_without_its_table_is_named() -> None:
    with pytest.raises(CatalogueError, match="without a table 'shock'"):
        shock_table(ROW.model_copy(update={"shock": None}))

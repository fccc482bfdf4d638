"""Headlamps and rooflights on a lens, worked by hand."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from common.houses import CATALOGUE, on_ceiling, on_wall, one_room, opening, window
from common.rule_houses.movement import FACING_SOUTH, ROAD_PAST_HOUSE, ROAD_TO_WINDOW, SOUTH_WINDOW
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing
from wardwright.rules.strong_lights import Light, Ray, headlamps, rooflight, sees_bare_pane


def table(sheet_id: str = "fan") -> MovementSheet:
    found = CATALOGUE.sheet(sheet_id).movement
    assert found is not None
    return found


def house(device: Device = FACING_SOUTH, **parts: Any) -> Site:
    usual: dict[str, Any] = {"openings": (SOUTH_WINDOW,), "ground": ROAD_TO_WINDOW}
    return one_room(devices=(device,), **(usual | parts))


def lamps(site: Site) -> Light | None:
    return headlamps(site, site.devices[0], table(), figure=CATALOGUE.figure("headlamp"))


# The lens is at (2.5, 3.96), 2.2 m up; the road ends at y = -5, 8.96 m off, where lamps are 0.55 m up: 1.65 m lower.
# On the way the line passes the middle of the window's wall, 4.11 m off, at 2.2 - 1.65 x 4.11 / 8.96 = 1.44 m.
def test_the_nearest_lamps_are_the_strongest() -> None:
    found = lamps(house())
    assert found is not None
    share = 0.8 / (8.96**2 + 1.65**2)
    assert found.strength.value == pytest.approx(30000 * share)
    assert (found.strength.low, found.strength.high) == pytest.approx((5000 * share, 100000 * share))
    assert (found.opening.id, found.source, found.strength.unit) == ("south-window", (2.5, -5.0), "lx")


@pytest.mark.parametrize(
    ("sill_m", "head_m", "is_lit"), [(0.9, 2.1, True), (1.8, 2.1, False), (0.2, 0.9, False)]
)
def test_the_light_has_to_pass_between_sill_and_head(sill_m: float, head_m: float, is_lit: bool) -> None:
    """Farther down the road the line is flatter: never above 2.2 m - 1.65 m x 4.11 / 43.96, which is 2.05 m."""
    pane = window("pane", "south", 2.65, sill_m=sill_m, head_m=head_m)
    site = house(openings=(pane,), ground=Ground(road_m=((2.5, -12.0), (2.5, -5.0))))
    # To the far end, 15.96 m off, the line passes the wall at 1.78 m.
    assert (lamps(site) is not None) == is_lit


@pytest.mark.parametrize("facts", [{"covering": "blind"}, {"covering": "shutter"}, {"glazing": None}])
def test_a_covered_pane_lets_none_in(facts: dict[str, Any]) -> None:
    assert lamps(house(openings=(window("pane", "south", 2.65, **facts),))) is None


def test_a_road_past_the_house_lights_nothing() -> None:
    """Its cars head east or west, and no place of it is within 15 degrees of that from the lens in the fan."""
    assert lamps(house(ground=ROAD_PAST_HOUSE)) is None


@pytest.mark.parametrize(
    ("kind", "height_m", "is_lit"), [("fence", 1.8, False), ("fence", 0.6, True), ("tree", 6.0, True)]
)
def test_a_fence_hides_them_and_leaves_do_not(kind: Any, height_m: float, is_lit: bool) -> None:
    """2 m before the house: there the lines from the road are 0.9 to 1.9 m above the ground."""
    fence = GroundThing(id="f", name="f", kind=kind, outline_m=((-30, -2.3), (30, -2.3)), height_m=height_m)
    near = Ground(road_m=((2.5, -8.0), (2.5, -5.0)), things=(fence,))
    assert (lamps(house(ground=near)) is not None) == is_lit


def test_out_of_the_fan_or_turned_away_it_is_dark() -> None:
    turned = FACING_SOUTH.model_copy(update={"heading_deg": 180.0})
    assert lamps(house(turned)) is None


def test_from_too_far_off_nothing_dazzles() -> None:
    assert lamps(house(ground=Ground(road_m=((2.5, -99.0), (2.5, -57.0))))) is None


def test_one_that_looks_all_round_has_no_edge() -> None:
    site = house(on_ceiling("round", "round", 2.5, 2.0), ground=Ground(road_m=((2.5, -9.0), (2.5, -5.0))))
    found = headlamps(site, site.devices[0], table("round"), figure=CATALOGUE.figure("headlamp"))
    assert found is not None


def roof_house(sill_m: float, **facts: Any) -> Site:
    light = opening(
        "light",
        "south",
        2.65,
        kind="rooflight",
        glazing="double",
        sill_m=sill_m,
        head_m=sill_m + 0.4,
        **facts,
    )
    return house(openings=(light,))


# Its middle is at the inner face, 3.94 m off: 15 degrees are 1.05 m higher or lower than the lens.
@pytest.mark.parametrize(("sill_m", "off"), [(2.0, 0.0), (3.0, 14.22), (3.2, None), (1.0, 14.22)])
def test_a_rooflight_counts_by_its_angle_off_the_axis(sill_m: float, off: float | None) -> None:
    site = roof_house(sill_m)
    found = rooflight(site, FACING_SOUTH, table())
    if off is None:
        assert found is None
    else:
        assert found is not None
        assert found.strength.value == pytest.approx(off, abs=0.05)
        assert found.strength.unit == "deg"


def test_a_covered_rooflight_and_a_fan_without_axis() -> None:
    assert rooflight(roof_house(2.0, covering="blind"), FACING_SOUTH, table()) is None
    assert rooflight(roof_house(2.0), on_ceiling("round", "round", 2.5, 2.0), table("round")) is None


def test_bare_panes_in_the_fan() -> None:
    assert sees_bare_pane(house(), FACING_SOUTH, table())
    assert not sees_bare_pane(
        house(on_wall("fan", "fan", "south", 2.65)), on_wall("fan", "fan", "south", 2.65), table()
    )
    assert not sees_bare_pane(
        house(openings=(window("pane", "south", 2.65, covering="blind"),)), FACING_SOUTH, table()
    )


def test_a_ray_falls_evenly() -> None:
    ray = Ray(np.array([0.0, 0.0, 2.0]), np.array([0.0, 4.0, 1.0]))
    assert ray.line.length == 4.0
    assert ray.height_at((0.0, 1.0)) == 1.75

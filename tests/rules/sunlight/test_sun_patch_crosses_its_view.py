"""SUN102: what is left to other rules."""

from __future__ import annotations

from common.houses import CATALOGUE, on_wall, one_room
from common.rule_houses.sunlight import ACROSS, FACING_SUNRISE, LONDON, LOW, TALL_SOUTH, WIDE_SOUTH
from wardwright.rules.registry import findings_of
from wardwright.rules.sunlight.sun_patch_crosses_its_view import sun_patch_crosses_its_view as rule


def test_hours_of_sun_on_the_floor_are_told() -> None:
    site = one_room(devices=(ACROSS,), openings=(WIDE_SOUTH,), place=LONDON)
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value > 90_000.0
    assert (found.limit, found.related) == (90_000.0, ("wide",))


def test_one_that_is_aimed_at_the_glass_is_named_for_that_alone() -> None:
    facing = on_wall("living-movement", "fan", "north", 2.65, height_m=2.35)
    site = one_room(devices=(facing,), openings=(WIDE_SOUTH,), place=LONDON)
    assert findings_of(rule, site, CATALOGUE) == ()


def test_one_with_the_sun_in_its_eye_is_named_for_that_alone() -> None:
    site = one_room(devices=(LOW,), openings=(TALL_SOUTH,), place=FACING_SUNRISE)
    assert findings_of(rule, site, CATALOGUE) == ()

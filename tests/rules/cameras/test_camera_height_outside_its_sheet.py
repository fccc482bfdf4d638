"""CAM104: heights above floor and ground, and the room above."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_ceiling, on_wall, one_room
from common.mending import mended
from wardwright.model.fabric import Slope
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground
from wardwright.rules.cameras.camera_height_outside_its_sheet import camera_height_outside_its_sheet as rule
from wardwright.rules.registry import findings_of


def outside(height_m: float, **ground: Any) -> Site:
    camera = on_wall("cam", "camera-outside", "south", 2.5, side="right", height_m=height_m)
    return one_room(devices=(camera,), ground=Ground(**ground))


# The sheet says 2.2 to 4.5 m above the ground, which lies 0.15 m below the floor.
@pytest.mark.parametrize(
    ("height_m", "above", "nearest"), [(1.0, 1.15, 2.2), (2.0, 2.15, 2.2), (4.4, 4.55, 4.5)]
)
def test_outside_the_ground_counts(height_m: float, above: float, nearest: float) -> None:
    (found,) = findings_of(rule, outside(height_m), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(above)
    assert (found.limit, found.severity) == (nearest, "must mend")
    assert found.estimate.basis == "default"  # nobody told the ground's level


def test_the_mend_is_counted_from_the_floor_again() -> None:
    (found,) = findings_of(rule, outside(1.0, level_m=-0.1), CATALOGUE)
    assert dict(found.mends[0].values)["height_m"] == pytest.approx(2.1)
    assert findings_of(rule, mended(outside(1.0, level_m=-0.1), found.mends[0]), CATALOGUE) == ()


def test_no_mend_above_the_top_of_the_wall() -> None:
    """The ground 0.5 m higher than the floor: 2.2 m above it is 2.7 m, and the wall ends at 2.4 m."""
    (found,) = findings_of(rule, outside(2.3, level_m=0.5), CATALOGUE)
    assert found.mends == ()
    assert found.cure.startswith("Mount it where")


def test_one_under_a_slope_goes_where_the_ceiling_is_right() -> None:
    """A ceiling of 1.0 m at x = 0 that rises to 2.4 m at x = 5: 1.2 m is reached at x = 0.71."""
    slope = Slope(corners_m=((0, 0, 1.0), (5, 0, 2.4), (5, 4, 2.4), (0, 4, 1.0)))
    ground = one_room().storeys[0].model_copy(update={"slopes": (slope,)})
    site = one_room(storeys=(ground,), devices=(on_ceiling("cam", "camera", 0.5, 2.0),))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit) == (pytest.approx(1.14), 1.2)
    assert dict(found.mends[0].values)["x_m"] == pytest.approx(0.8)
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()

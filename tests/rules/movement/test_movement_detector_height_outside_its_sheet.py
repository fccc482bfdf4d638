"""MOV102: heights and the room above."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_ceiling, on_wall, one_room, standing_free
from common.mending import mended
from wardwright.model.device import Device
from wardwright.model.fabric import Slope
from wardwright.model.site import Site
from wardwright.rules.movement.movement_detector_height_outside_its_sheet import (
    movement_detector_height_outside_its_sheet as rule,
)
from wardwright.rules.registry import findings_of


def house(device: Device, ceiling_m: float = 2.4) -> Site:
    ground = one_room().storeys[0].model_copy(update={"height_m": ceiling_m})
    return one_room(storeys=(ground,), devices=(device,))


# The sheet says 2.0 to 2.4 m.
@pytest.mark.parametrize(("height_m", "nearest"), [(1.5, 2.0), (1.99, 2.0), (2.5, 2.4), (3.0, 2.4)])
def test_the_mend_is_the_nearest_height_inside(height_m: float, nearest: float) -> None:
    site = house(on_wall("fan", "fan", "south", 2.0, height_m=height_m), ceiling_m=3.2)
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit) == (height_m, nearest)
    assert found.mends[0].values == (("height_m", nearest),)
    assert found.severity == "must mend"


@pytest.mark.parametrize("height_m", [2.0, 2.2, 2.4])
def test_heights_of_the_sheet_are_inside(height_m: float) -> None:
    assert findings_of(rule, house(on_wall("fan", "fan", "south", 2.0, height_m=height_m)), CATALOGUE) == ()


def test_no_mend_under_a_ceiling_lower_than_the_sheet() -> None:
    (found,) = findings_of(rule, house(on_wall("fan", "fan", "south", 2.0, height_m=1.8), 1.95), CATALOGUE)
    assert found.mends == ()
    assert found.cure.startswith("Mount it where")


@pytest.mark.parametrize(("ceiling_m", "nearest"), [(1.99, 2.0), (2.0, None), (2.4, None), (2.41, 2.4)])
def test_a_ceiling_detector_is_judged_by_its_ceiling(ceiling_m: float, nearest: float | None) -> None:
    found = findings_of(rule, house(on_ceiling("round", "round", 2.0, 2.0), ceiling_m), CATALOGUE)
    assert [one.limit for one in found] == ([] if nearest is None else [nearest])
    assert [one.estimate and one.estimate.value for one in found] == ([] if nearest is None else [ceiling_m])
    assert all(one.mends == () and "its ceiling is" in one.message for one in found)


def test_under_a_slope_it_goes_where_the_ceiling_is_right() -> None:
    """A ceiling of 1.5 m at x = 0 that rises to 2.5 m at x = 5: 2.0 m is reached at x = 2.5."""
    slope = Slope(corners_m=((0, 0, 1.5), (5, 0, 2.5), (5, 4, 2.5), (0, 4, 1.5)))
    site = house(on_ceiling("round", "round", 2.0, 2.0))
    site = site.model_copy(
        update={"storeys": (site.storeys[0].model_copy(update={"height_m": 2.6, "slopes": (slope,)}),)}
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit) == (pytest.approx(1.9), 2.0)
    # Places lie every 0.25 m from 0.3 m on: the nearest with x of 2.5 or more is 2.55.
    assert dict(found.mends[0].values)["x_m"] == pytest.approx(2.55)
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_one_that_stands_free_is_lifted() -> None:
    (found,) = findings_of(rule, house(standing_free("fan", "fan", 2.0, 2.0)), CATALOGUE)
    assert found.mends[0].values == (("height_m", 2.0),)

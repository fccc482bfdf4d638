"""MOV102: heights and the room above."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_ceiling, on_wall, one_room, standing_free
from wardwright.model.device import Device
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


def test_a_ceiling_detector_cannot_be_moved_up_or_down() -> None:
    (found,) = findings_of(rule, house(on_ceiling("round", "round", 2.0, 2.0), 3.0), CATALOGUE)
    assert found.mends == ()
    assert findings_of(rule, house(on_ceiling("round", "round", 2.0, 2.0), 2.4), CATALOGUE) == ()


def test_one_that_stands_free_is_lifted() -> None:
    (found,) = findings_of(rule, house(standing_free("fan", "fan", 2.0, 2.0)), CATALOGUE)
    assert found.mends[0].values == (("height_m", 2.0),)

"""CAM101: heights above what one stands on, and where the camera goes."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room
from common.mending import mended
from common.room_over_room import back_addition, room_over_room
from wardwright.model.site import Site
from wardwright.rules.cameras.outside_camera_within_reach import outside_camera_within_reach as rule
from wardwright.rules.registry import findings_of


def house(height_m: float) -> Site:
    return one_room(
        devices=(on_wall("cam", "camera-outside", "south", 2.0, side="right", height_m=height_m),)
    )


# A tall person reaches 2.5 m; the ground is 0.15 m below the floor.
@pytest.mark.parametrize(("height_m", "above"), [(1.0, 1.15), (2.34, 2.49), (2.35, None), (2.4, None)])
def test_heights_count_from_the_ground(height_m: float, above: float | None) -> None:
    found = findings_of(rule, house(height_m), CATALOGUE)
    assert [one.estimate and one.estimate.value for one in found] == (
        [] if above is None else [pytest.approx(above)]
    )
    assert all((one.limit, one.severity) == (2.5, "advise") for one in found)


def test_the_mend_is_straight_up_where_the_wall_is_high_enough() -> None:
    (found,) = findings_of(rule, house(1.0), CATALOGUE)
    assert [(name, round(float(value), 9)) for name, value in found.mends[0].values] == [("height_m", 2.35)]
    assert findings_of(rule, mended(house(1.0), found.mends[0]), CATALOGUE) == ()


def test_no_mend_on_a_wall_that_ends_too_low() -> None:
    walls = tuple(wall.model_copy(update={"height_m": 2.2}) for wall in one_room().walls)
    site = house(2.0).model_copy(update={"walls": walls})
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.mends == ()
    assert found.cure.startswith("Mount it higher or elsewhere")


def test_a_flat_roof_is_stood_on() -> None:
    """The roof's top is at 2.45 m, the camera at 2.7 + 2.0 = 4.7 m: 2.25 m above it.

    No ladder stands firm on that roof, so the camera leaves it: along its own wall, where 5.15 - offset < 0.7.
    """
    camera = on_wall("cam", "camera-outside", "upper-north", 2.0, side="right", height_m=2.0)
    site = room_over_room(devices=(camera,), ground=back_addition())
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(2.25)
    assert found.related == ("roof",)
    values = dict(found.mends[0].values)
    assert values["wall"] == "upper-north"
    assert values["offset_m"] == pytest.approx(
        0.4
    )  # x = 4.75: the ladder's foot keeps 0.3 m off the roof's side
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()

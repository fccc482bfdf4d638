"""CAM105: ground and houses beyond the boundary."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, one_room
from common.rule_houses.cameras import AHEAD, FAR_DOOR, HEDGES, OUT, PLOT, WIDE_PLOT
from wardwright.model.surroundings import Ground, GroundThing
from wardwright.rules.cameras.camera_sees_beyond_the_boundary import camera_sees_beyond_the_boundary as rule
from wardwright.rules.registry import findings_of


def test_the_mend_is_the_least_turn_down_that_keeps_the_door() -> None:
    site = one_room(devices=(AHEAD,), openings=(FAR_DOOR,), ground=Ground(boundary_m=WIDE_PLOT))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value > 1.0
    assert found.limit == 1.0
    assert [mend.action for mend in found.mends] == ["turn-device"]


def test_the_area_by_hand() -> None:
    """Straight along a line 2 m off: beyond it lie all cells of the picture but those nearer."""
    near = ((-30.0, -2.34), (30.0, -2.34), (30.0, 8.0), (-30.0, 8.0))
    camera = OUT.model_copy(update={"heading_deg": -90.0, "tilt_deg": 40.0})
    site = one_room(devices=(camera,), ground=Ground(boundary_m=near))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    # A chest 1.5 m below the eye; the middle of the upper edge is 10.6 deg down, that of the lower 69.4: from 0.56 m
    # to 8.0 m; as wide as twice the depth along the view, y cos 40 + 1.5 sin 40, over 2 m to 8.0 m.
    by_hand = (0.766 * (8.0**2 - 2.0**2)) + 2 * 1.5 * 0.643 * (8.0 - 2.0)
    assert found.estimate.value == pytest.approx(by_hand, rel=0.08)


def test_a_house_beyond_is_named_even_where_no_ground_is() -> None:
    opposite = GroundThing(
        id="opposite",
        name="house opposite",
        kind="building",
        height_m=14.0,
        outline_m=((-3.0, -12.0), (8.0, -12.0), (8.0, -10.0), (-3.0, -10.0)),
    )
    low = tuple(one.model_copy(update={"height_m": 1.2}) for one in HEDGES)
    site = one_room(devices=(OUT,), ground=Ground(boundary_m=PLOT, things=(*low, opposite)))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert "house opposite" in found.message


def test_without_a_boundary_it_is_not_run() -> None:
    (found,) = findings_of(rule, one_room(devices=(OUT,)), CATALOGUE)
    assert (found.severity, found.message) == ("not run", "out: no boundary is drawn")

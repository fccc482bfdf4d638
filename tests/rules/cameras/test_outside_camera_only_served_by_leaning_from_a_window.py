"""CAM102: too high for a ladder, no firm ground, and the window that people would lean out of."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, window
from common.mending import mended
from common.room_over_room import back_addition, room_over_room
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground
from wardwright.rules.cameras.outside_camera_only_served_by_leaning_from_a_window import (
    outside_camera_only_served_by_leaning_from_a_window as rule,
)
from wardwright.rules.registry import findings_of


def house(offset_m: float = 1.45, height_m: float = 2.2, **parts: Any) -> Site:
    """The window's jambs are 2.05 m and 3.25 m along the wall, its head is at 2.1 m."""
    camera = on_wall("cam", "camera-outside", "upper-north", offset_m, side="right", height_m=height_m)
    return room_over_room(**({"devices": (camera,)} | parts))


def test_over_a_roof_no_ladder_stands() -> None:
    site = house(ground=back_addition())
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(5.05)  # 2.7 + 2.2 + 0.15: a ladder would reach, if it stood
    assert found.limit is None
    assert "no ladder stands firm below it" in found.message
    assert "never lean out" in found.cure
    assert found.related == ("bedroom-window",)
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_too_high_for_a_ladder() -> None:
    """The ground 1.2 m lower: 2.7 + 2.2 + 1.2 = 6.1 m, and 6.0 m is reached by a ladder."""
    site = house(ground=Ground(level_m=-1.2))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit) == (pytest.approx(6.1), 6.0)
    # The sheet ends 4.5 m above the ground, so it comes down to that: 3.3 m above the lower floor.
    assert dict(found.mends[0].values)["height_m"] == pytest.approx(0.6)
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


# The corner of the window's opening nearest to the camera is at (2.05, 2.1): from 0.6 m along, 1.45 m off.
@pytest.mark.parametrize(("offset_m", "count"), [(0.6, 1), (0.5, 0)])
def test_a_window_too_far_off_tempts_nobody(offset_m: float, count: int) -> None:
    site = house(offset_m, ground=back_addition(0.0, 5.0))
    assert len(findings_of(rule, site, CATALOGUE)) == count


def test_a_pane_that_does_not_open_tempts_nobody() -> None:
    site = house(ground=back_addition(), openings=(window("pane", "upper-north", 2.65, hinge="fixed"),))
    assert findings_of(rule, site, CATALOGUE) == ()


def test_no_mend_where_roofs_are_all_round() -> None:
    site = house(ground=back_addition(-9.0, 14.0))
    thing = site.ground.things[0].model_copy(update={"outline_m": ((-9, -9), (14, -9), (14, 14), (-9, 14))})
    site = site.model_copy(update={"ground": Ground(things=(thing,))})
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.mends == ()
    assert found.cure.startswith("Have it served from a platform")

"""Sheets that take the place of another."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, standing_free
from common.rule_houses.movement import FACING_NORTH
from wardwright.model.device import WallMount
from wardwright.rules.like_sheets import LIKE_ANGLE, LIKE_REACH, hung_for, is_alike

ROW = CATALOGUE.sheet("fan-passing-pets")
TABLE = ROW.movement
assert TABLE is not None


@pytest.mark.parametrize(
    ("reach", "angle", "is_like"), [(1.0, 1.0, True), (1.01, 1.0, False), (1.0, 1.01, False)]
)
def test_it_reaches_and_spans_nearly_as_far(reach: float, angle: float, is_like: bool) -> None:
    now = TABLE.model_copy(
        update={
            "reach_m": reach * TABLE.reach_m / LIKE_REACH,
            "angle_deg": angle * TABLE.angle_deg / LIKE_ANGLE,
        }
    )
    assert is_alike(ROW, TABLE, FACING_NORTH, sheet=now) is is_like


def test_it_hangs_as_the_detector_does() -> None:
    on_ceilings = ROW.model_copy(update={"mounts": ("ceiling",)})
    assert is_alike(ROW, TABLE, FACING_NORTH, sheet=TABLE)
    assert not is_alike(on_ceilings, TABLE, FACING_NORTH, sheet=TABLE)


def test_it_goes_to_the_nearest_height_of_its_sheet() -> None:
    assert isinstance(FACING_NORTH.mount, WallMount)
    up = FACING_NORTH.mount.height_m
    higher = TABLE.model_copy(update={"height_low_m": up + 0.1, "height_high_m": up + 0.5})
    values, hung = hung_for(FACING_NORTH, higher)
    assert values == (("height_m", up + 0.1),)
    assert isinstance(hung.mount, WallMount)
    assert hung.mount.height_m == up + 0.1
    as_it_is = TABLE.model_copy(update={"height_low_m": up, "height_high_m": up})
    assert hung_for(FACING_NORTH, as_it_is) == ((), FACING_NORTH)


def test_what_hangs_on_no_wall_stays() -> None:
    free = standing_free("fan", "fan", 2.5, 2.0)
    assert hung_for(free, TABLE) == ((), free)

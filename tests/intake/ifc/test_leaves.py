"""IFC's own words for IfcDoorTypeOperationEnum: the hinges of SINGLE_SWING_LEFT are on the left side as viewed in
the direction of the positive y axis of the door, which is the way that it opens (buildingSMART, IFC4 documentation).
"""

from __future__ import annotations

import pytest

from common.ifc_house import Wish, written
from wardwright.intake.ifc.reading import read_ifc
from wardwright.model.opening import Opening
from wardwright.model.placement import along, direction


def kitchen_door(operation: str, **wish: object) -> Opening:
    site, _ = read_ifc(written(Wish(operation=operation, **wish)), where="t.ifc")  # type: ignore[arg-type]
    return site.opening("kitchen-door")


# The kitchen door's x axis runs north along its wall (y axis of the plan), so its y axis points west, into the hall;
# the wall's line runs north too, so west is its left. Looking west, left is south: the start of the line.
@pytest.mark.parametrize(
    ("operation", "leaves", "hinge", "swing"),
    [
        ("SINGLE_SWING_LEFT", 1, "start", "left"),
        ("SINGLE_SWING_RIGHT", 1, "end", "left"),
        ("DOUBLE_DOOR_SINGLE_SWING", 2, "start", "left"),
        ("DOUBLE_DOOR_SLIDING", 2, "sliding", "none"),
        ("SLIDING_TO_LEFT", 1, "sliding", "none"),
    ],
)
def test_operations(operation: str, leaves: int, hinge: str, swing: str) -> None:
    door = kitchen_door(operation)
    assert (door.leaves, door.hinge, door.swing) == (leaves, hinge, swing)
    assert door.basis_of("swing") == "measured"


def test_a_door_that_does_not_say_is_guessed() -> None:
    door = kitchen_door("NOTDEFINED")
    assert [door.basis_of(field) for field in ("leaves", "hinge", "swing")] == ["guessed"] * 3
    assert door.swing == "left"


@pytest.mark.parametrize("schema", ["IFC4", "IFC2X3"])
@pytest.mark.parametrize("turn", [0.0, 90.0, 213.0])
def test_the_front_door_opens_outward_with_its_hinge_in_the_west(schema: str, turn: float) -> None:
    # Its x axis runs west, so y points south and it opens outward; right as seen looking south is west.
    site, _ = read_ifc(written(Wish(schema=schema, turn_deg=turn)), where="t.ifc")
    door = site.opening("front-door")
    wall = site.wall(door.wall)
    _, _, length = direction(wall.line_m)
    hinge_at = door.offset_m + (-0.45 if door.hinge == "start" else 0.45)
    # Before the turn the hinge is at x = 2.0 and the leaf opens to y < 0; both measured from the wall's west end.
    west = along(wall.line_m, 0.0)
    assert hinge_at == pytest.approx(2.0, abs=1e-3)
    assert west != along(wall.line_m, length)
    assert door.swing == "right"


def test_a_window_that_does_not_say_is_guessed() -> None:
    site, _ = read_ifc(written(), where="t.ifc")
    window = site.opening("kitchen-window")
    assert window.basis_of("hinge") == "guessed"

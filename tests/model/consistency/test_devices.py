from typing import Any

import pytest

from common.broken import found, hut, only
from wardwright.model.validation import problems

DETECTOR = "devices/kitchen-detector/"
CONTACT = "devices/front-contact/"


def free(x_m: float, y_m: float, height_m: float = 1.0) -> dict[str, Any]:
    return {"on": "free", "storey": "ground", "at_m": [x_m, y_m], "height_m": height_m}


def wall(name: str, side: str, offset_m: float, height_m: float = 2.2) -> dict[str, Any]:
    return {"on": "wall", "wall": name, "side": side, "offset_m": offset_m, "height_m": height_m}


@pytest.mark.parametrize(
    ("edits", "what"),
    [
        (((CONTACT + "mount", free(1, 1)),), "an opening contact is not fixed to an opening"),
        ((("openings/front-door/leaves", 0),), "it is fixed to 'front-door', which has no leaf"),
        ((("openings/front-door/kind", "gap"), ("openings/front-door/is_entry_door", False)),
         "it is fixed to 'front-door', which has no leaf"),
        (((DETECTOR + "mount", wall("middle", "right", -0.5)),),
         "it is on no wall: -0.5 m along 'middle', which is 4.00 m long"),
        ((("walls/middle/height_m", 2.15),), "it is on no wall: 2.2 m high, beyond the wall 'middle'"),
        (((DETECTOR + "mount", free(4, 1, -0.2)),), "it is below the floor (-0.2 m)"),
        (((DETECTOR + "mount", free(4, 1, 2.5)),), "it is above the ceiling: 2.5 m high, under a ceiling of 2.40 m"),
        (((DETECTOR + "mount", wall("east", "right", 2.1)),),
         "it is outside every space: the nearest, 'kitchen', is 0.2 m away"),
        (((DETECTOR + "sheet", "control-unit-radio"), ("zones", [])), "there is already a control unit, 'unit'"),
    ],
)  # fmt: skip
def test_a_device_where_it_cannot_be_stops(edits: tuple[tuple[str, Any], ...], what: str) -> None:
    weight, _, said = only(*edits)
    assert (weight, said) == ("stops", what)


@pytest.mark.parametrize(
    ("heading_deg", "count"), [(0, 0), (-90, 0), (90, 0), (359, 0), (91, 1), (180, 1), (-135, 1)]
)
def test_it_may_look_along_its_wall_but_not_into_it(heading_deg: float, count: int) -> None:
    # It hangs on the right of a wall drawn northward: straight off it is east, 0 deg.
    said = [p.what for p in found((DETECTOR + "heading_deg", heading_deg))]
    assert len(said) == count
    assert all(what.startswith("it looks into its wall 'middle'") for what in said)


def test_a_space_higher_than_its_storey_lets_a_device_be_higher() -> None:
    assert (
        found(
            (DETECTOR + "mount/height_m", 3.0),
            ("spaces/kitchen/height_m", 3.2),
            ("walls/middle/height_m", 3.2),
        )
        == ()
    )


def test_an_outside_sounder_is_outside() -> None:
    sounder = {
        "id": "s",
        "name": "sounder",
        "sheet": "sounder-outside",
        "mount": wall("east", "right", 2.1, 2.3),
    }
    assert found(("devices/+", sounder)) == ()
    keypad = sounder | {"sheet": "keypad-radio"}
    assert [p.weight for p in found(("devices/+", keypad))] == ["noted"]


def test_two_devices_in_one_place_are_noted() -> None:
    twin = {"id": "t", "name": "keyfob", "sheet": "keyfob-radio", "mount": wall("middle", "right", 3.5)}
    assert only(("devices/+", twin)) == ("noted", "t", "it is in the place of the device 'kitchen-detector'")


def test_without_a_catalogue_what_needs_a_sheet_is_left_alone() -> None:
    site = hut((DETECTOR + "sheet", "nothing"), (DETECTOR + "mount", free(20, 20)))
    assert problems(site) == ()
    assert problems(hut((DETECTOR + "heading_deg", 180))) != ()


def test_a_slope_is_a_ceiling_too() -> None:
    corners = [[0, 0, 1.0], [6, 0, 1.0], [6, 4, 2.0], [0, 4, 2.0]]
    weight, subject, what = only(
        ("storeys/ground/slopes", [{"corners_m": corners}]),
        ("devices/unit/mount/height_m", 1.0),
    )
    assert (weight, subject) == ("stops", "kitchen-detector")
    # On the wall at y = 3.5 the slope is 1.0 + 3.5 / 4 = 1.875 m up.
    assert what == "it is above the ceiling: 2.2 m high, under a ceiling of 1.88 m"

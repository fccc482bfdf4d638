"""SRV101: room on each side, and the shift that gives it."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_ceiling, on_opening, on_wall, one_room, opening, standing_free
from common.mending import mended
from common.rule_houses.service import WORKTOP
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.rules.registry import findings_of
from wardwright.rules.service.no_room_to_service_a_device import no_room_to_service_a_device as rule


def check(site: Site, number: float | None, shift: dict[str, Any]) -> None:
    """One finding with this much room, mended by this shift; or none."""
    found = findings_of(rule, site, CATALOGUE)
    if number is None:
        assert found == ()
        return
    assert [one.estimate and one.estimate.value for one in found] == [pytest.approx(number)]
    for mend in found[0].mends:
        assert {name: pytest.approx(value) for name, value in mend.values} == shift
        assert findings_of(rule, mended(site, mend), CATALOGUE) == ()
    assert bool(found[0].mends) == bool(shift)


# The worktop's top is 0.9 m up and room begins 0.05 m below the middle: 1.2 m - 0.9 m - 0.05 m.
@pytest.mark.parametrize(
    ("height_m", "room", "shift"),
    [(1.2, 0.25, {"height_m": 1.35}), (1.3, 0.35, {"height_m": 1.35}), (1.35, None, {})],
)
def test_below_it_goes_up(height_m: float, room: float | None, shift: dict[str, Any]) -> None:
    unit = on_wall("unit", "unit-opened-below", "south", 2.15, height_m=height_m)
    check(one_room(devices=(unit,), fixtures=(WORKTOP,)), room, shift)


def test_above_it_goes_down() -> None:
    """Under a ceiling of 2.4 m: 2.4 - 2.3 - 0.05 m."""
    keypad = on_wall("keypad", "keypad-opened-above", "east", 2.0, height_m=2.3)
    check(one_room(devices=(keypad,)), 0.05, {"height_m": 2.2})


@pytest.mark.parametrize(("depth_m", "room"), [(0.3, 0.11), (0.52, None)])
def test_in_front_it_goes_aside(depth_m: float, room: float | None) -> None:
    """A cupboard that begins so far from the wall: the device's middle is 0.04 m off it."""
    cupboard = WORKTOP.model_copy(
        update={
            "id": "cupboard",
            "height_m": 2.3,
            "centre_m": (2.0, depth_m - 0.1 + 0.3),
            "size_m": (1.0, 0.6),
        }
    )
    sounder = on_wall("sounder", "sounder-opened-in-front", "south", 2.15)
    # It stands from x = 1.5 to 2.5, the sounder at x = 2.0: first clear beyond its side, 0.55 m on.
    site = one_room(devices=(sounder,), fixtures=(cupboard,))
    check(site, room, {"offset_m": 2.7})


def test_beside_either_hand_will_do() -> None:
    corner = on_wall("repeater", "repeater-opened-beside", "south", 0.25)
    check(one_room(devices=(corner,)), None, {})


def test_beside_hemmed_in_it_is_shifted() -> None:
    """In a gap of 0.4 m about x = 2.0, between two cupboards: 0.2 - 0.05 m on each hand."""
    tall = [
        WORKTOP.model_copy(
            update={"id": f"cupboard-{x}", "height_m": 2.3, "centre_m": (x, 0.3), "size_m": (0.6, 0.6)}
        )
        for x in (1.5, 2.5)
    ]
    repeater = on_wall("repeater", "repeater-opened-beside", "south", 2.15)
    # 0.05 m aside it has 0.25 - 0.05 m on the other hand.
    check(one_room(devices=(repeater,), fixtures=tuple(tall)), 0.15, {"offset_m": 2.2})


def test_a_leaf_before_it_is_advised_against() -> None:
    """The door turns on its jamb at x = 0.1 and opens into the room, along the west wall."""
    door = opening("door", "south", 0.7, hinge="start", swing="left")
    sounder = on_wall("sounder", "sounder-opened-in-front", "west", 3.6, height_m=1.5)
    (found,) = findings_of(rule, one_room(devices=(sounder,), openings=(door,)), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(0.1 - 0.04 - 0.05)
    assert (found.severity, found.related) == ("advise", ("door",))
    assert "the leaf of door" in found.message


@pytest.mark.parametrize(
    "device",
    [
        standing_free("unit", "unit-opened-below", 2.0, 0.3),
        on_opening("contact", "door", "repeater-opened-beside"),
    ],
    ids=["picked up", "on a frame"],
)
def test_what_is_not_asked_about(device: Device) -> None:
    site = one_room(devices=(device,), openings=(opening("door", "south", 2.65),), fixtures=(WORKTOP,))
    assert findings_of(rule, site, CATALOGUE) == ()


def test_on_a_ceiling_its_room_is_below() -> None:
    """Over a cupboard 2.2 m high: 2.4 - 0.03 - 2.2 - 0.05 m, and 0.3 m is wanted."""
    cupboard = WORKTOP.model_copy(update={"height_m": 2.2})
    site = one_room(
        devices=(on_ceiling("sounder", "sounder-opened-in-front", 2.0, 0.5),), fixtures=(cupboard,)
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(0.12)
    assert "below it" in found.message
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_a_silent_sheet_beside_others_is_said() -> None:
    site = one_room(
        devices=(
            on_wall("keypad", "keypad", "east", 2.0),
            on_wall("opened", "keypad-opened-above", "east", 3.0, height_m=1.3),
        )
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert (found.severity, found.message) == (
        "not run",
        "of 1 devices the sheets do not say what room service wants",
    )

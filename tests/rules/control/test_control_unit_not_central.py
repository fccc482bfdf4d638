"""CTL103: the worst path, and a place by a power point that halves it."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, two_rooms_and_hall
from common.rule_houses.control import EAST_FAN, MANY_WALLS, WEST_UNIT, socket
from wardwright.model.placement import standing
from wardwright.rules.control.control_unit_not_central import control_unit_not_central as rule
from wardwright.rules.control.control_unit_not_central import worst_from
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of

SOCKET = (socket(7.0, 0.05),)


def findings(*devices: Any, **parts: Any) -> tuple[Finding, ...]:
    return findings_of(
        rule,
        two_rooms_and_hall(devices=devices, **({"outlets": SOCKET, "walls": MANY_WALLS} | parts)),
        CATALOGUE,
    )


def test_the_worst_path_is_told_with_what_it_crosses() -> None:
    """From (0.04, 1.0), 1.5 m up, to (10.16, 1.0), 2.2 m up: through three walls of the kitchen
    and both of the hall."""
    (found,) = findings(WEST_UNIT, EAST_FAN)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx((10.12**2 + 0.7**2) ** 0.5)
    assert "to east fan, goes through 5 walls" in found.message
    assert found.related == ("east-fan",)
    assert found.limit is not None
    assert found.limit < 4.0
    assert dict(found.mends[0].values)["wall"] in ("south", "study-wall")


def test_a_device_at_the_other_end_pulls_it_back() -> None:
    """With one at each end, no place in the study is twice as good."""
    west_fan = on_wall("west-fan", "fan", "west", 5.0)
    assert findings(WEST_UNIT, EAST_FAN, west_fan) == ()


def test_a_short_path_is_left_alone() -> None:
    """The same 10 m through two walls lose 30 dB only."""
    assert findings(WEST_UNIT, EAST_FAN, walls=two_rooms_and_hall().walls) == ()


def test_the_entry_route_is_no_better_place() -> None:
    keypad = on_wall("keypad", "keypad", "kitchen-wall", 1.0, side="right", height_m=1.2)
    in_hall = (socket(5.9, 0.05),)
    assert len(findings(WEST_UNIT, EAST_FAN, outlets=in_hall)) == 1
    assert findings(WEST_UNIT, EAST_FAN, keypad, outlets=in_hall) == ()


def test_of_many_devices_the_worst_counts() -> None:
    near = on_wall("near", "fan", "south", 2.0)
    site = two_rooms_and_hall(devices=(WEST_UNIT, EAST_FAN, near))
    assert worst_from(site, standing(site, WEST_UNIT), (near, EAST_FAN)).device.id == "east-fan"


@pytest.mark.parametrize(
    ("devices", "parts", "reason"),
    [
        ((WEST_UNIT,), {}, "no radio device"),
        ((EAST_FAN,), {}, "no control unit"),
        ((WEST_UNIT, EAST_FAN), {"outlets": ()}, "no power point is drawn"),
    ],
)
def test_what_is_missing_is_named(devices: Any, parts: dict[str, Any], reason: str) -> None:
    (found,) = findings(*devices, **parts)
    assert (found.severity, found.message) == ("not run", reason)

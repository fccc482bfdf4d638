"""What each kind of device notices at an opening, manner by manner."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import (
    CATALOGUE,
    on_opening,
    on_wall,
    one_room,
    opening,
    standing_free,
    two_rooms_and_hall,
    window,
)
from common.rule_houses.glass import ear, heard
from wardwright.model.device import Device, Fixing
from wardwright.model.opening import Manner
from wardwright.rules.at_the_opening import AT_OPENINGS, is_on, notices_at_the_opening

CONTACT = on_opening("contact", "window")
SHOCK = on_opening("shock", "window", "shock").model_copy(
    update={"fixing": Fixing(by="screws", surface="timber")}
)
OPENED: Manner = "opened"
GLASS: Manner = "through the glass"


def notices(device: Device, manner: Manner, **facts: Any) -> bool:
    """Whether a device on a locked, shut window of 0.8 m by 1.2 m notices, but for some facts of it."""
    pane = window("window", "north", 2.65, **({"width_m": 0.8, "lock": "latch"} | facts))
    site = one_room(openings=(pane,))
    return notices_at_the_opening(site.bare, CATALOGUE, device, opening=pane, manner=manner)


@pytest.mark.parametrize(
    ("manner", "facts", "by_contact", "by_shock"),
    [
        (OPENED, {}, True, True),
        (GLASS, {}, False, True),
        # Not locked, or nothing to lock it: it is only opened.
        (OPENED, {"is_locked": False}, True, False),
        (OPENED, {"lock": "none"}, True, False),
        (GLASS, {"is_locked": False}, False, True),
        # A lock of unknown kind is a lock; whether it is locked is told apart.
        (OPENED, {"lock": "unknown"}, True, True),
        # Standing open, nothing is opened and nothing is struck.
        (OPENED, {"habit": "open"}, False, False),
        (OPENED, {"habit": "ajar"}, False, False),
        (GLASS, {"habit": "open"}, False, False),
        (OPENED, {"kind": "gap"}, False, False),
        # The farthest corner beyond the radius of 1.2 m: hypot(1.2, 0.6) is 1.34 m.
        (OPENED, {"width_m": 1.2}, True, False),
        (GLASS, {"width_m": 1.2}, False, False),
    ],
)
def test_contacts_and_shock_detectors(
    manner: Manner, facts: dict[str, Any], by_contact: bool, by_shock: bool
) -> None:
    assert notices(CONTACT, manner, **facts) is by_contact
    assert notices(SHOCK, manner, **facts) is by_shock


def test_a_shock_detector_on_the_wall_beside_it_counts_within_its_radius() -> None:
    """The pane's middle is at 2.65 m: from 2.05 m it is hypot(1.0, 0.6) to the far corner, from 1.65 m more."""
    near = on_wall("shock", "shock", "north", 2.05, height_m=1.5).model_copy(update={"fixing": SHOCK.fixing})
    far = on_wall("shock", "shock", "north", 1.65, height_m=1.5).model_copy(update={"fixing": SHOCK.fixing})
    assert notices(near, GLASS)
    assert notices(near, OPENED)
    assert not notices(far, GLASS)


@pytest.mark.parametrize(("glazing", "is_heard"), [("double", True), ("laminated", False), (None, False)])
def test_a_glass_break_detector_notices_the_pane_alone(glazing: str | None, is_heard: bool) -> None:
    site = heard(8.15, glazing=glazing)
    pane = site.opening("east-window")
    for manner, expected in ((OPENED, False), (GLASS, is_heard)):
        found = notices_at_the_opening(site.bare, CATALOGUE, ear(8.15), opening=pane, manner=manner)
        assert found is expected


def test_a_door_inside_is_not_taken_for_forced() -> None:
    """Whatever its lock: inside the house it is walked through."""
    site = two_rooms_and_hall(openings=(opening("study-door", "study-wall", 4.0, head_m=1.4),))
    shock = on_opening("shock", "study-door", "shock-wide").model_copy(update={"fixing": SHOCK.fixing})
    contact = on_opening("contact", "study-door")
    door = site.opening("study-door")
    assert not notices_at_the_opening(site.bare, CATALOGUE, shock, opening=door, manner=OPENED)
    assert notices_at_the_opening(site.bare, CATALOGUE, contact, opening=door, manner=OPENED)


def test_other_devices_and_other_openings_tell_nothing() -> None:
    assert not notices(on_opening("contact", "door"), OPENED)
    for sheet in ("fan", "unit", "keypad"):
        assert not notices(standing_free("a", sheet, 2.0, 2.0), OPENED)
        assert CATALOGUE.sheet(sheet).kind not in AT_OPENINGS
    assert is_on(CONTACT, window("window", "north", 2.65))
    assert not is_on(CONTACT, window("other", "north", 2.65))

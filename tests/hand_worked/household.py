"""Small houses in which somebody comes home, or leaves, and all is worked out by hand.

The figures are the likely ones of the catalogue: an ordinary person goes 1.3 m/s and a slow one 0.8 m/s, with
shopping 0.8 of that: 1.04 and 0.64 m/s; on stairs half. The entry time starts as the leaf opens. In the doorway of
a wall of 0.3 m one goes 0.3 + 2 x 0.27 = 0.84 m; then the door is shut (4 s), the way walked (1 s a shut
inside door), the shopping put down (3 s), the code entered (7 s).
Leaving: the way, 4 s to unlock, 0.84 m, 4 s to shut.
"""

from __future__ import annotations

import math
from typing import Literal, NamedTuple

from common.straight_houses import contact_on, curtain_at, keypad_at, straight_house, unit_at
from wardwright.model.device import Device, FreeMount
from wardwright.model.household import Person
from wardwright.model.programme import Programme
from wardwright.model.site import Site

NEVER = math.inf
EXACT_S = 1e-6
"""Straight legs and contacts: only rounding is left. [s]"""
BAND_S = 0.25
"""What a movement detector may possibly see is told by cells of 0.1 m, and the band's edge by its own cells: two of
them and a step of 0.05 m, at 1.04 m/s. [s]"""
ORDINARY = Person(id="adult", name="adult", pace="usual")
SLOW = Person(id="elder", name="elder", pace="slow")


class Arrival(NamedTuple):
    """One arrival worked out by hand."""

    name: str
    site: Site
    person: Person
    door: str
    lines: tuple[tuple[float, str, str], ...]
    """What happens when, and by which device, until the alarm is unset or rings. [s]"""
    alarm: float
    by: str | None
    message_due: float
    working: str
    knows_code: bool = True
    tolerance: float = EXACT_S


class Leaving(NamedTuple):
    """One leaving worked out by hand."""

    name: str
    site: Site
    person: Person
    outcome: Literal["set", "kept from setting", "door open too long"]
    at: float
    by: str | None
    working: str
    tolerance: float = EXACT_S


FRONT, DOOR = (contact_on("front-door"), "entry-exit"), contact_on("door-1")
KEYPAD = (keypad_at(4.63), "")
UNIT = (unit_at(20.0), "")
FOB = Device(id="fob", name="fob", sheet="keyfob-radio", mount=FreeMount(storey="ground", at_m=(2.0, 5.0)))


def times(entry: float = 30.0, leaving: float = 30.0, abort: float = 0.0) -> Programme:
    """A programme with these times. [s]"""
    return Programme(entry_time_s=entry, exit_time_s=leaving, abort_delay_s=abort)


WALK = "0.84 + 4.36 m (0.27 to 4.63) = 5.2 m / 1.04 = 5"

ARRIVALS: tuple[Arrival, ...] = (
    Arrival(
        "ordinary arrival", straight_house(kit=(KEYPAD, UNIT, FRONT)), ORDINARY, "front-door",
        ((0.0, "entry time starts", "front-door-contact"), (19.0, "unset", "")), NEVER, None, NEVER,
        f"{WALK}; 5 + 4 + 3 + 7 = 19",
    ),
    Arrival(
        "too slow for the entry time", straight_house(kit=(KEYPAD, UNIT, FRONT), programme=times(20.0, abort=15.0)),
        SLOW, "front-door",
        ((0.0, "entry time starts", "front-door-contact"), (20.0, "entry time ends", "front-door-contact")),
        20.0, "front-door-contact", 35.0,
        "5.2 m / 0.64 = 8.125; 8.125 + 14 = 22.125, after 20; the abort delay leaves until 35",
    ),
    Arrival(
        "the same in a longer one", straight_house(kit=(KEYPAD, UNIT, FRONT), programme=times(25.0)),
        SLOW, "front-door",
        ((0.0, "entry time starts", "front-door-contact"), (22.125, "unset", "")), NEVER, None, NEVER,
        "22.125 < 25",
    ),
    Arrival(
        "code forgotten", straight_house(kit=(KEYPAD, UNIT, FRONT), programme=times(abort=10.0)),
        ORDINARY, "front-door",
        ((0.0, "entry time starts", "front-door-contact"), (30.0, "entry time ends", "front-door-contact")),
        30.0, "front-door-contact", 40.0,
        "nobody unsets it: 0 + 30; 30 + 10", knows_code=False,
    ),
    Arrival(
        "inside door on the entry route",
        straight_house(kit=(KEYPAD, UNIT, FRONT, (DOOR, "entry-route")), doors={2.55: "shut"}),
        ORDINARY, "front-door",
        (
            (0.0, "entry time starts", "front-door-contact"), (7.0, "allowed", "door-1-contact"),
            (20.0, "unset", ""),
        ),
        NEVER, None, NEVER,
        "0.84 + 2.28 m = 3.12 m / 1.04 = 3, + 4 = 7 at the door; 1 for its leaf: 19 + 1 = 20",
    ),
    Arrival(
        "inside door that is instant",
        straight_house(kit=(KEYPAD, UNIT, FRONT, (DOOR, "instant")), doors={2.55: "shut"}), ORDINARY, "front-door",
        ((0.0, "entry time starts", "front-door-contact"), (7.0, "alarm", "door-1-contact")),
        7.0, "door-1-contact", 7.0,
        "rings at the door: 3 + 4",
    ),
    Arrival(
        "the same door standing open",
        straight_house(kit=(KEYPAD, UNIT, FRONT, (DOOR, "instant")), doors={2.55: "open"}), ORDINARY, "front-door",
        ((0.0, "entry time starts", "front-door-contact"), (19.0, "unset", "")), NEVER, None, NEVER,
        "nothing is opened, nothing lost: 19",
    ),
    Arrival(
        "entry route with no contact before it",
        straight_house(kit=(KEYPAD, UNIT, (DOOR, "entry-route")), doors={2.55: "shut"}), ORDINARY, "front-door",
        ((7.0, "alarm", "door-1-contact"),), 7.0, "door-1-contact", 7.0,
        "no entry time runs: it rings at the door",
    ),
    Arrival(
        "log only on the way",
        straight_house(kit=(KEYPAD, UNIT, FRONT, (DOOR, "log-only")), doors={2.55: "shut"}), ORDINARY, "front-door",
        (
            (0.0, "entry time starts", "front-door-contact"), (7.0, "logged", "door-1-contact"),
            (20.0, "unset", ""),
        ),
        NEVER, None, NEVER,
        "7 at the door, written down only; 20 at the end",
    ),
    Arrival(
        "by the second door, far from the keypad",
        straight_house(
            kit=(KEYPAD, UNIT, FRONT, (contact_on("back-door"), "entry-exit")), back="door",
            openings={"back-door": {"is_entry_door": True}},
        ),
        ORDINARY, "back-door",
        ((0.0, "entry time starts", "back-door-contact"), (30.0, "entry time ends", "back-door-contact")),
        30.0, "back-door-contact", 30.0,
        "0.84 + 23.73 - 4.63 = 19.94 m / 1.04 = 19.17; 19.17 + 14 = 33.17, after 30",
    ),
    Arrival(
        "by the first of two doors",
        straight_house(
            kit=(KEYPAD, UNIT, FRONT, (contact_on("back-door"), "entry-exit")), back="door",
            openings={"back-door": {"is_entry_door": True}},
        ),
        ORDINARY, "front-door",
        ((0.0, "entry time starts", "front-door-contact"), (19.0, "unset", "")), NEVER, None, NEVER,
        "the other door stays shut: 19",
    ),
    Arrival(
        "keyfob", straight_house(kit=((FOB, ""), UNIT, FRONT)), ORDINARY, "front-door",
        ((0.0, "entry time starts", "front-door-contact"), (0.84 / 1.04 + 4.0, "unset", "")), NEVER, None, NEVER,
        "0.84 m / 1.04 = 0.81; 4 to press: 4.81",
    ),
    Arrival(
        "instant movement detector across the way in",
        straight_house(kit=(KEYPAD, UNIT, FRONT, (curtain_at(3.0), "instant"))), ORDINARY, "front-door",
        ((0.0, "entry time starts", "front-door-contact"), (6.84, "alarm", "curtain")), 6.84, "curtain", 6.84,
        "it may see 3.5 + 5 = 8.5 deg to each side; somebody who strays 0.6 m east is 2.6 m off, and 0.22 m wide: "
        "y = 3 - 2.6 tan 8.5 deg - 0.22 = 2.39; 0.84 + 2.12 m = 2.96 m / 1.04 = 2.85, + 4 = 6.85",
        tolerance=BAND_S,
    ),
)  # fmt: skip

LEAVINGS: tuple[Leaving, ...] = (
    Leaving(
        "ordinary leaving", straight_house(kit=(KEYPAD, UNIT, FRONT)), ORDINARY, "set", 30.0, None,
        "4.36 + 0.84 m = 5, unlock 4, shut 4: out at 13, set at 30",
    ),
    Leaving(
        "exit time too short", straight_house(kit=(KEYPAD, UNIT, FRONT), programme=times(leaving=12.0)), ORDINARY,
        "door open too long", 12.0, "front-door-contact",
        "out at 13, after 12",
    ),
    Leaving(
        "exit time just long enough", straight_house(kit=(KEYPAD, UNIT, FRONT), programme=times(leaving=13.5)),
        ORDINARY, "set", 13.5, None,
        "out at 13, before 13.5",
    ),
    Leaving(
        "slow, by the same exit time", straight_house(kit=(KEYPAD, UNIT, FRONT), programme=times(leaving=13.5)), SLOW,
        "door open too long", 13.5, "front-door-contact",
        "5.2 m / 0.64 = 8.125; 8.125 + 8 = 16.125, after 13.5",
    ),
    Leaving(
        "detector off the way out, behind a shut door",
        straight_house(kit=(KEYPAD, UNIT, FRONT, (curtain_at(9.0), "instant")), doors={7.0: "shut"}), ORDINARY,
        "set", 30.0, None,
        "nobody goes near y = 9 on the way from 4.63 to the front door",
    ),
    Leaving(
        "instant movement detector across the way out",
        straight_house(kit=(KEYPAD, UNIT, FRONT, (curtain_at(3.0), "instant"))), ORDINARY,
        "kept from setting", 0.98, "curtain",
        "as in coming in, from the other side: y = 3 + 0.39 + 0.22 = 3.61; 4.63 - 3.61 = 1.02 m / 1.04 = 0.98",
        tolerance=BAND_S,
    ),
    Leaving(
        "the same on the entry route",
        straight_house(kit=(KEYPAD, UNIT, FRONT, (curtain_at(3.0), "entry-route"))), ORDINARY, "set", 30.0, None,
        "left alone while the exit time runs",
    ),
    Leaving(
        "instant contact on a shut door of the way out",
        straight_house(kit=(KEYPAD, UNIT, FRONT, (DOOR, "instant")), doors={2.55: "shut"}), ORDINARY,
        "kept from setting", 2.0, "door-1-contact",
        "4.63 - 2.55 = 2.08 m / 1.04 = 2: the leaf is opened while the exit time runs",
    ),
    Leaving(
        "the same on the entry route",
        straight_house(kit=(KEYPAD, UNIT, FRONT, (DOOR, "entry-route")), doors={2.55: "shut"}), ORDINARY,
        "set", 30.0, None,
        "one second more for its leaf: out at 14",
    ),
)  # fmt: skip

TURN = straight_house(kit=(KEYPAD, UNIT, FRONT, (DOOR, "instant")), doors={7.75: "shut"})
"""A wrong turn, into the second room: its door is at 0.84 + 7.48 m = 8.32 m / 1.04 = 8, + 4 = 12 s."""


class Night(NamedTuple):
    """One trip from bed to the toilet with the night part set, worked out by hand."""

    name: str
    site: Site
    second: float
    by: str | None
    working: str
    tolerance: float = EXACT_S


SLEEPER = Person(id="adult", name="adult", pace="usual", bed="room-3")
BOTH = ("full", "night")


def _night(*zoned: tuple[Device, str], parts: tuple[str, ...] = BOTH, second_door: str = "shut") -> Site:
    """Bathroom, hall and bedroom in a row, doors at y = 6 and y = 14; the middle of the bedroom is at y = 19.025."""
    told = {"habit_night": second_door}
    return straight_house(
        kit=(UNIT, *zoned), doors={6.0: "shut", 14.0: "shut"}, uses=("bathroom", "hall", "bedroom"),
        people=(SLEEPER,), parts={device.id: parts for device, _ in zoned},
        openings={"door-1": {"habit_night": "shut"}, "door-2": told},
    )  # fmt: skip


NIGHTS: tuple[Night, ...] = (
    Night("nothing set on the way", _night(), NEVER, None, "nothing is there to ring"),
    Night(
        "contact on the bathroom's door, set at night", _night((DOOR, "instant")), 13.025 / 1.3 + 1.0,
        "door-1-contact",
        "19.025 - 6 = 13.025 m / 1.3 = 10.02, and 1 s for the bedroom's leaf: 11.02",
    ),
    Night(
        "the same with the bedroom's door open", _night((DOOR, "instant"), second_door="open"), 13.025 / 1.3,
        "door-1-contact",
        "no leaf to open before: 10.02",
    ),
    Night(
        "the same contact in the full set only", _night((DOOR, "instant"), parts=("full",)), NEVER, None,
        "it is not set at night",
    ),
    Night(
        "entry route at night: no entry time runs", _night((DOOR, "entry-route")), 13.025 / 1.3 + 1.0,
        "door-1-contact",
        "it rings at once",
    ),
    Night(
        "entry/exit at night: its entry time runs out", _night((DOOR, "entry-exit")), 13.025 / 1.3 + 31.0,
        "door-1-contact",
        "11.02 + 30: nobody unsets it on the way to the toilet",
    ),
    Night(
        "log only at night", _night((DOOR, "log-only")), NEVER, None,
        "it is written down",
    ),
    Night(
        "movement detector across the hall", _night((curtain_at(10.0), "instant")), 8.41 / 1.3 + 1.0, "curtain",
        "as coming in: it may see to y = 10 + 2.6 tan 8.5 deg + 0.22 = 10.61; 19.025 - 10.61 = 8.41 m / 1.3 = 6.47 "
        "and 1 s for the leaf",
        tolerance=BAND_S,
    ),
    Night(
        "movement detector in the bedroom, off the way", _night((curtain_at(22.5), "always-on"), parts=("full",)),
        0.0, "curtain",
        "somebody who sleeps may be anywhere in the bedroom, and always-on rests in no part: at 0",
    ),
)  # fmt: skip

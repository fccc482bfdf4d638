"""Small houses in which an intruder's race is worked out by hand.

The figures are the likely ones of the catalogue: 2.5 m/s on the flat and half of that on stairs, 1 s a shut inside
door, 5 s to climb in, 10 s to break the control unit, 1 s for the radio, a sounder that starts at once, 10 s for the
message. So with a notice at t: the sounder at t + 1 (after the entry time, if that runs), the message 10 s after.
A flight is 5 m by 3, 4, 5: 4 s. From the front door one starts at y = 0.27, from the north end at y = 23.73.
"""

from __future__ import annotations

import math
from typing import Any, NamedTuple

from common.straight_houses import contact_on, curtain_at, sounder_at, straight_house, unit_at
from wardwright.model.device import Device, OpeningMount, WallMount
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing

NEVER = math.inf
EXACT_S = 1e-6
"""Straight legs and contacts: only rounding is left. [s]"""
STEP_S = 0.021
"""A movement detector is looked at every 0.05 m of the walk: 0.05 m / 2.5 m/s. [s]"""
RIM_S = 0.041
"""A flight's upper end is stepped off by 0.1 m, toward earlier: 0.1 m / 2.5 m/s. [s]"""
CLIMB_S = 0.12
"""The trials draw a flight to where its upper end is stepped off to, 4.1 m for 4 m in the same 4 s: 0.1 s, and a step
of 0.05 m. [s]"""
AT_NOTHING = (NEVER, NEVER, NEVER)


class Intruder(NamedTuple):
    """One race worked out by hand."""

    name: str
    site: Site
    way: tuple[str, str]
    """The opening, and how it is come through."""
    first: str | None
    """The device that notices first."""
    notice: float
    sounder: float
    message: float
    reached: float
    """At the control unit. [s]"""
    broken: float
    working: str
    """The arithmetic."""
    tolerance: float = EXACT_S
    part: str = "full"
    """What is set."""


FRONT = contact_on("front-door")
DOOR = contact_on("door-1")
WINDOW = contact_on("back-window")
EAR = Device(
    id="ear", name="ear", sheet="glass-break-6m",
    mount=WallMount(wall="ground-west", side="left", offset_m=4.15, height_m=2.2),
)  # fmt: skip
SHOCK = Device(
    id="shock", name="shock", sheet="shock-radio", mount=OpeningMount(opening="front-door", gap_m=0.006)
)
SHED = Ground(
    things=(
        GroundThing(
            id="shed",
            name="shed",
            kind="shed",
            outline_m=((1.0, 24.4), (3.0, 24.4), (3.0, 26.0), (1.0, 26.0)),
            height_m=2.2,
            can_be_climbed=True,
        ),
    )
)
SOUNDER = sounder_at()
OPENED, GLASS = "opened", "through the glass"


def house(unit: Device, *zoned: tuple[Device, str], sounds: bool = True, **facts: Any) -> Site:
    """A straight house with its control unit, a sounder unless there is none, and what is zoned."""
    kit = [(unit, ""), *([(SOUNDER, "")] if sounds else []), *zoned]
    return straight_house(kit=kit, **facts)


def times(entry: float = 30.0, abort: float = 0.0) -> Programme:
    """A programme with these two times. [s]"""
    return Programme(entry_time_s=entry, exit_time_s=30.0, abort_delay_s=abort)


NEAR, FAR = unit_at(10.27), unit_at(13.73)
FRONT_WAY, WINDOW_WAY, GLASS_WAY = ("front-door", OPENED), ("back-window", OPENED), ("back-window", GLASS)

INTRUDERS: tuple[Intruder, ...] = (
    Intruder(
        "front door with an entry/exit contact", house(NEAR, (FRONT, "entry-exit")), FRONT_WAY,
        "front-door-contact", 0.0, 31.0, 41.0, 4.0, 14.0,
        "10 m / 2.5 = 4; 4 + 10 = 14. Contact at 0, at the unit at 1, entry time to 31, message 31 + 10: too late",
    ),
    Intruder(
        "front door with an instant contact", house(NEAR, (FRONT, "instant")), FRONT_WAY,
        "front-door-contact", 0.0, 1.0, 11.0, 4.0, 14.0,
        "as before, but 0 + 1 = 1 and 1 + 10 = 11: both in time",
    ),
    Intruder(
        "front door with a shock detector", house(NEAR, (SHOCK, "instant")), FRONT_WAY,
        "shock", 0.0, 1.0, 11.0, 4.0, 14.0,
        "its leaf is 0.9 m by 2.0 m: the farthest corner is hypot(0.9, 1.0) = 1.35 m off, within 1.6 m: felt at 0",
    ),
    Intruder(
        "window with an instant contact", house(FAR, (WINDOW, "instant")), WINDOW_WAY,
        "back-window-contact", 0.0, 1.0, 11.0, 9.0, 19.0,
        "5 to climb in, 23.73 - 13.73 = 10 m / 2.5 = 4: at the unit at 9, broken at 19; told at 1, sent at 11",
    ),
    Intruder(
        "glass of a window with a contact only", house(FAR, (WINDOW, "instant")), GLASS_WAY,
        None, *AT_NOTHING, 9.0, 19.0,
        "the leaf stays shut: nothing tells",
    ),
    Intruder(
        "glass that a detector hears", house(FAR, (EAR, "instant")), GLASS_WAY,
        "ear", 0.0, 1.0, 11.0, 9.0, 19.0,
        "ear at (0, 20, 2.2), farthest corner of the pane (2.6, 24.15, 0.9): hypot(2.6, 4.15, 1.3) = 5.07 m < 6 m",
    ),
    Intruder(
        "window that is opened is no breaking glass", house(FAR, (EAR, "instant")), WINDOW_WAY,
        None, *AT_NOTHING, 9.0, 19.0,
        "the ear hears panes, not leaves",
    ),
    Intruder(
        "glass, then an instant contact on an inside door",
        house(FAR, (DOOR, "instant"), doors={18.73: "shut"}), GLASS_WAY,
        "door-1-contact", 7.0, 8.0, 18.0, 10.0, 20.0,
        "5 to climb, 5 m / 2.5 = 2: at the door at 7, told at 8, sent at 18; leaf 1, 5 m 2: at the unit at 10",
    ),
    Intruder(
        "inside door that stands open: no second lost, and nothing told",
        house(NEAR, (DOOR, "instant"), (contact_on("door-2"), "instant"), doors={3.27: "open", 7.77: "shut"}),
        FRONT_WAY,
        "door-2-contact", 3.0, 4.0, 14.0, 5.0, 15.0,
        "7.5 m / 2.5 = 3 at the shut one; 2.5 m more and 1 for its leaf: 3 + 1 + 1 = 5",
    ),
    Intruder(
        "inside door ajar: it is pushed, and nothing told",
        house(NEAR, (DOOR, "instant"), doors={5.27: "ajar"}), FRONT_WAY,
        None, *AT_NOTHING, 5.0, 15.0,
        "10 m 4 and the leaf 1; a contact on a leaf that is not shut is open already",
    ),
    Intruder(
        "entry route after the entry door: held",
        house(NEAR, (FRONT, "entry-exit"), (DOOR, "entry-route"), doors={5.27: "shut"}), FRONT_WAY,
        "front-door-contact", 0.0, 31.0, 41.0, 5.0, 15.0,
        "the door's contact at 2 is allowed; 1 + 30 = 31",
    ),
    Intruder(
        "instant after the entry door: rings at once",
        house(NEAR, (FRONT, "entry-exit"), (DOOR, "instant"), doors={5.27: "shut"}), FRONT_WAY,
        "front-door-contact", 0.0, 3.0, 13.0, 5.0, 15.0,
        "5 m 2 s to the door, told at 3, sent at 13: in time, though the first notice starts an entry time",
    ),
    Intruder(
        "entry route without an entry: rings at once",
        house(FAR, (DOOR, "entry-route"), doors={18.73: "shut"}), WINDOW_WAY,
        "door-1-contact", 7.0, 8.0, 18.0, 10.0, 20.0,
        "5 + 2 = 7 at the door; no entry time runs, so 8 and 18",
    ),
    Intruder(
        "always-on, in a part that it is not set in",
        house(NEAR, (FRONT, "instant"), (DOOR, "always-on"), doors={5.27: "shut"}), FRONT_WAY,
        "door-1-contact", 2.0, 3.0, 13.0, 5.0, 15.0,
        "set is the night part: the front door is in the full set only; the always-on door is heard at 2",
        part="night",
    ),
    Intruder(
        "part set: what is in both parts is heard",
        house(
            NEAR, (FRONT, "instant"), (DOOR, "instant"), doors={5.27: "shut"},
            parts={"front-door-contact": ("full", "night")},
        ),
        FRONT_WAY,
        "front-door-contact", 0.0, 1.0, 11.0, 5.0, 15.0,
        "front door at 0; the inside door is in the full set only", part="night",
    ),
    Intruder(
        "part set: what is in the full set only is not heard",
        house(NEAR, (FRONT, "instant")), FRONT_WAY,
        None, *AT_NOTHING, 4.0, 14.0,
        "nothing is set there", part="night",
    ),
    Intruder(
        "log only", house(NEAR, (FRONT, "log-only")), FRONT_WAY,
        None, *AT_NOTHING, 4.0, 14.0,
        "it is written down, and nobody told",
    ),
    Intruder(
        "entry time, then the abort delay",
        house(NEAR, (FRONT, "entry-exit"), programme=times(45.0, 30.0)), FRONT_WAY,
        "front-door-contact", 0.0, 46.0, 86.0, 4.0, 14.0,
        "1 + 45 = 46; 46 + 30 + 10 = 86",
    ),
    Intruder(
        "an instant zone does not wait for the abort delay",
        house(NEAR, (FRONT, "instant"), programme=times(30.0, 30.0)), FRONT_WAY,
        "front-door-contact", 0.0, 1.0, 11.0, 4.0, 14.0,
        "0 + 1 = 1; 1 + 10 = 11",
    ),
    Intruder(
        "an instant zone that waits for the abort delay",
        house(NEAR, (FRONT, "instant-delayed"), programme=times(30.0, 30.0)), FRONT_WAY,
        "front-door-contact", 0.0, 1.0, 41.0, 4.0, 14.0,
        "0 + 1 = 1; 1 + 30 + 10 = 41: never sent, since the unit is dead at 14",
    ),
    Intruder(
        "abort delay running, then an instant zone",
        house(
            NEAR, (FRONT, "entry-exit"), (DOOR, "instant"), doors={5.27: "shut"}, programme=times(30.0, 30.0)
        ),
        FRONT_WAY,
        "front-door-contact", 0.0, 3.0, 13.0, 5.0, 15.0,
        "door at 2, told at 3: the instant zone's message waits for nothing: 13",
    ),
    Intruder(
        "no sounder but the control unit's own", house(NEAR, (FRONT, "instant"), sounds=False), FRONT_WAY,
        "front-door-contact", 0.0, 1.0, 11.0, 4.0, 14.0,
        "the unit sounds by itself, until it is dead at 14",
    ),
    Intruder(
        "a detector that no zone hears",
        house(NEAR, (FRONT, ""), (DOOR, "instant"), doors={5.27: "shut"}), FRONT_WAY,
        "door-1-contact", 2.0, 3.0, 13.0, 5.0, 15.0,
        "the front door's contact is in no zone: the next is the door at 2",
    ),
    Intruder(
        "a door beyond the control unit",
        house(NEAR, (DOOR, "instant"), doors={12.27: "shut"}), FRONT_WAY,
        None, *AT_NOTHING, 4.0, 14.0,
        "nobody comes by it",
    ),
    Intruder(
        "second entry door", house(FAR, (contact_on("back-door"), "entry-exit"), back="door"), ("back-door", OPENED),
        "back-door-contact", 0.0, 31.0, 41.0, 4.0, 14.0,
        "10 m 4 s, nothing to climb; entry time to 31",
    ),
    Intruder(
        "control unit by the door, on the entry route", house(unit_at(2.77), (FRONT, "entry-exit")), FRONT_WAY,
        "front-door-contact", 0.0, 31.0, 41.0, 1.0, 11.0,
        "2.5 m 1 s; dead at 11, twenty seconds before the sounder",
    ),
    Intruder(
        "control unit upstairs behind an instant landing door",
        house(
            unit_at(16.77, storey="upper"), (FRONT, "entry-exit"), (contact_on("upper-door-1"), "instant"),
            flight=5.27, upper={14.27: "shut"},
        ),
        FRONT_WAY,
        "front-door-contact", 0.0, 9.0, 19.0, 10.0, 20.0,
        "5 m 2, flight 4, 5 m 2: at the door at 8, told at 9, sent at 19; leaf 1, 2.5 m 1: at the unit at 10",
        RIM_S,
    ),
    Intruder(
        "upper window from a shed roof",
        house(unit_at(4.73), (contact_on("upper-window"), "instant"), flight=7.23, upper={}, ground=SHED),
        ("upper-window", OPENED),
        "upper-window-contact", 0.0, 1.0, 11.0, 15.0, 25.0,
        "sill 4.05 m up, 1.85 m above the shed roof; 5 to climb in, 23.73 - 11.23 = 12.5 m 5, flight 4, 2.5 m 1",
        RIM_S,
    ),
    Intruder(
        "glass of an upper window, then the landing's door",
        house(
            unit_at(4.73), (contact_on("upper-door-1"), "instant"), flight=7.23, upper={16.23: "shut"}, ground=SHED
        ),
        ("upper-window", GLASS),
        "upper-door-1-contact", 8.0, 9.0, 19.0, 16.0, 26.0,
        "5 to climb, 7.5 m 3: at the landing's door at 8; leaf 1, 5 m 2, flight 4, 2.5 m 1: 8 + 8 = 16",
        RIM_S,
    ),
    Intruder(
        "movement detector across the way",
        house(unit_at(15.27), (curtain_at(10.0), "instant")), FRONT_WAY,
        "curtain", 9.421 / 2.5, 9.421 / 2.5 + 1, 9.421 / 2.5 + 11, 6.0, 16.0,
        "outer zones at 1.75 + 0.8 = 2.55 deg: 2 m off they lie 2 tan 2.55 deg = 0.089 m before y = 10, and a body "
        "of 0.22 m comes to two rows of them at once at y = 10 - 0.309 = 9.691: walked 9.421 m",
        STEP_S,
    ),
    Intruder(
        "movement detector behind a shut door: not through the leaf",
        house(NEAR, (curtain_at(8.0), "instant"), doors={7.77: "shut"}), FRONT_WAY,
        "curtain", 4.0, 5.0, 15.0, 5.0, 15.0,
        "7.5 m 3 s to the leaf; the body reaches to y = 8 - 0.309 = 7.69 before, but the leaf is opened first: 3 + 1",
        STEP_S,
    ),
    Intruder(
        "movement detector behind a door ajar: seen as the body reaches in",
        house(NEAR, (curtain_at(8.0), "instant"), doors={7.77: "ajar"}), FRONT_WAY,
        "curtain", 7.421 / 2.5, 7.421 / 2.5 + 1, 7.421 / 2.5 + 11, 5.0, 15.0,
        "8 - 0.309 - 0.27 = 7.421 m, 0.08 m before the leaf at 7.5 m: no shut leaf hides it",
        STEP_S,
    ),
    Intruder(
        "movement detector upstairs, over a flight that is walked by",
        house(unit_at(15.27), (curtain_at(7.5, storey="upper"), "instant"), flight=5.27, upper={}), FRONT_WAY,
        None, *AT_NOTHING, 6.0, 16.0,
        "its zones end at the upper floor, 3 m up, or pass the well: nobody 1.75 m tall on the ground comes to them",
    ),
    Intruder(
        "movement detector upstairs, over the flight that is climbed",
        house(
            unit_at(14.27, storey="upper"), (curtain_at(9.0, storey="upper"), "instant"), flight=5.27, upper={}
        ),
        FRONT_WAY,
        "curtain", 5.56, 6.56, 16.56, 8.0, 18.0,
        "over the guard of 0.9 m only the rows at 21.8 deg and less come to the middle line, at 3 + 2.2 - 1.96 tan "
        "21.8 deg = 4.42 m. A head of 1.75 m is there with its feet at 2.67 m: 2.67 / 3 of its 4 s, two "
        "zones of the row at once: 2 + 3.56. The flight's top at 6, 5 m more 2: 8",
        CLIMB_S,
    ),
    Intruder(
        "movement detector beside the entry door, on the entry route",
        house(NEAR, (FRONT, "entry-exit"), (curtain_at(5.0), "entry-route")), FRONT_WAY,
        "front-door-contact", 0.0, 31.0, 41.0, 4.0, 14.0,
        "the curtain signals at (5 - 0.309 - 0.27) / 2.5 = 1.77 s, within the entry time: allowed",
    ),
)  # fmt: skip
"""In words that say what is told apart."""

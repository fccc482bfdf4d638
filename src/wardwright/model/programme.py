"""What the control unit is told: zones, parts, behaviours, times."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Id, Marked, Record

Seconds = Annotated[float, Field(ge=0, le=3600)]


SignalKind = Literal["intruder", "tamper", "hold-up", "fire", "water", "fault"]
"""What a signal is about."""
SetState = Literal["unset", "part set", "set"]


class Behaviour(Record):
    """How a zone answers, as data: any mix can be stated, and the names are only names."""

    id: Id
    name: str
    starts_entry: bool = False
    """When nothing is running, its signal starts the entry time instead of an alarm."""
    allowed_after_entry: bool = False
    """While the entry time runs, its signal is taken as part of the way in."""
    alarms: bool = True
    """Otherwise its signal is an alarm at once; False: it is only written to the log."""
    is_always_active: bool = False
    """Also when unset."""
    delays_message: bool = False
    """Its alarm's message waits for the abort delay."""
    signal: SignalKind = "intruder"
    """What its alarm says: the programme's responses tell what follows."""
    may_be_inhibited: bool = True
    """Whether it can be left out for one setting, such as with a window open."""


class Part(Record):
    """A set of zones that are set together."""

    id: Id
    name: str


class Zone(Marked):
    """What the control unit programmes."""

    id: Id
    number: Annotated[int, Field(ge=1, le=9999)]
    name: str
    devices: tuple[Id, ...]
    behaviour: Id
    parts: tuple[Id, ...] = ("full",)
    """The parts in which it is active."""
    behaviour_part_set: Id | None = None
    """How it behaves in every part but the full one, where that differs: such as entry/exit for what is passed on the
    way down to the keypad in the morning. None: as always."""
    group: Id | None = None
    """Zones of different groups confirm each other; None: it is not counted for that."""
    is_on_soak: bool = False
    """It is only written to the log until it has proved itself."""
    limit: Annotated[int, Field(ge=1, le=100)] | None = None
    """How many alarms it may give in one setting; None: no limit."""


class Response(Record):
    """What follows a signal in one state of the alarm."""

    signal: SignalKind
    state: SetState
    sounders: Literal["none", "inside", "all"] = "none"
    message: bool = False
    """Whether a message leaves the house."""
    told: tuple[str, ...] = ()
    """Who gets the message, by role; none named: those whom the programme tells."""


class Programme(Marked):
    """The times the control unit is given."""

    entry_time_s: Seconds = 30.0
    exit_time_s: Seconds = 30.0
    abort_delay_s: Seconds = 0.0
    """A wait between an alarm and its message, for the behaviours that ask for it."""
    sounding_time_s: Seconds = 900.0
    """How long the sounders go on."""
    if_open_when_setting: Literal["refuse", "inhibit"] = "refuse"
    """What setting does with a window open: it is refused, or the zone is left out until the next unsetting."""
    check_in_min: Annotated[float, Field(gt=0, le=10080)] | None = None
    """How long a device may stay silent before it counts as lost; None: not decided. [min]"""
    told: tuple[str, ...] = ("household",)
    """Who gets messages, by role: never a name, a number or an address."""
    left_and_right_from: Literal["inside", "outside"] = "inside"
    """Where one stands, facing the opening, when a name says left or right."""
    responses: tuple[Response, ...] = ()
    """What follows each signal in each state; what is not named follows the usual ones."""


STANDARD_BEHAVIOURS: tuple[Behaviour, ...] = (
    Behaviour(id="instant", name="instant"),
    Behaviour(
        id="entry-exit", name="entry/exit", starts_entry=True, allowed_after_entry=True, delays_message=True
    ),
    Behaviour(id="entry-route", name="entry route", allowed_after_entry=True),
    Behaviour(id="always-on", name="always-on", is_always_active=True),
    Behaviour(id="log-only", name="log only", alarms=False),
    Behaviour(id="tamper", name="tamper", is_always_active=True, signal="tamper", may_be_inhibited=False),
    Behaviour(id="hold-up", name="hold-up", is_always_active=True, signal="hold-up", may_be_inhibited=False),
    Behaviour(id="fire", name="fire", is_always_active=True, signal="fire", may_be_inhibited=False),
    Behaviour(id="water", name="water", is_always_active=True, signal="water", may_be_inhibited=False),
)
"""The trade's usual five for intruders, and the four that never rest; a site may add its own."""

STANDARD_RESPONSES: tuple[Response, ...] = tuple(
    Response(signal=signal, state=state, sounders=sounders, message=message)
    for signal, answers in (
        ("intruder", (("none", False), ("inside", True), ("all", True))),
        ("tamper", (("inside", False), ("inside", True), ("all", True))),
        # A hold-up makes no noise: whoever presses is watched.
        ("hold-up", (("none", True), ("none", True), ("none", True))),
        ("fire", (("all", True), ("all", True), ("all", True))),
        ("water", (("inside", True), ("inside", True), ("none", True))),
        ("fault", (("none", False), ("none", False), ("none", True))),
    )
    for state, (sounders, message) in zip(("unset", "part set", "set"), answers, strict=True)
)
"""What follows each signal where nothing else is told. (common practice)"""

STANDARD_PARTS: tuple[Part, ...] = (Part(id="full", name="full set"), Part(id="night", name="night part set"))

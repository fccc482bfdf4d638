"""What the control unit is told: zones, parts, behaviours, times."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from wardwright.model.record import Id, Marked, Record

Seconds = Annotated[float, Field(ge=0, le=3600)]


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


class Programme(Marked):
    """The times the control unit is given."""

    entry_time_s: Seconds = 30.0
    exit_time_s: Seconds = 30.0
    abort_delay_s: Seconds = 0.0
    """A wait between an alarm and its message, for the behaviours that ask for it."""


STANDARD_BEHAVIOURS: tuple[Behaviour, ...] = (
    Behaviour(id="instant", name="instant"),
    Behaviour(
        id="entry-exit", name="entry/exit", starts_entry=True, allowed_after_entry=True, delays_message=True
    ),
    Behaviour(id="entry-route", name="entry route", allowed_after_entry=True),
    Behaviour(id="always-on", name="always-on", is_always_active=True),
    Behaviour(id="log-only", name="log only", alarms=False),
)
"""The trade's usual five; a site may add its own."""

STANDARD_PARTS: tuple[Part, ...] = (Part(id="full", name="full set"), Part(id="night", name="night part set"))

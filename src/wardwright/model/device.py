"""Devices and how they are mounted."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Id, Marked, Point2, Record

DeviceKind = Literal["control-unit", "keypad", "keyfob", "movement-detector", "opening-contact", "sounder"]


class WallMount(Record):
    """Fixed to the face of a wall."""

    on: Literal["wall"] = "wall"
    wall: Id
    side: Literal["left", "right"]
    """The face on the left or right of the wall's line, looking along it."""
    offset_m: float
    """From the first end of the wall's line. [m]"""
    height_m: float
    """Its middle above the storey's floor. [m]"""


class CeilingMount(Record):
    """Fixed to a ceiling."""

    on: Literal["ceiling"] = "ceiling"
    storey: Id
    at_m: Point2


class OpeningMount(Record):
    """Fixed to a door or window."""

    on: Literal["opening"] = "opening"
    opening: Id
    electronics_on: Literal["frame", "leaf"] = "frame"
    """Where the part with the electronics is; the magnet is on the other."""
    gap_m: Annotated[float, Field(ge=0, le=0.5)] | None = None
    """Between the two parts when shut; None: not known. [m]"""


class FreeMount(Record):
    """Standing, or on a piece of furniture."""

    on: Literal["free"] = "free"
    storey: Id
    at_m: Point2
    height_m: float = 1.0


Mount = Annotated[WallMount | CeilingMount | OpeningMount | FreeMount, Field(discriminator="on")]


class Device(Marked):
    """A device in its place."""

    id: Id
    name: str
    """As it is programmed, printed and spoken: floor, room, what."""
    sheet: Id
    """The row of the catalogue that says what it is."""
    mount: Mount
    heading_deg: float | None = None
    """Where it looks: degrees anticlockwise from the plan's x axis; None: straight off its wall."""
    tilt_deg: Annotated[float, Field(ge=-90, le=90)] = 0.0
    """Down is positive, beyond what the sheet has built in. [deg]"""
    is_existing: bool = False
    """Already there and stays."""

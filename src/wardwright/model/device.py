"""Devices and how they are mounted."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from types import MappingProxyType
from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Id, Marked, Point2, Record

DeviceKind = Literal[
    "control-unit", "keypad", "keyfob", "hold-up-button", "movement-detector", "opening-contact", "shock-detector",
    "glass-break-detector", "water-detector", "smoke-alarm", "heat-alarm", "co-alarm", "sounder", "camera",
    "repeater", "transmitter", "router",
]  # fmt: skip


def kind_words(kind: DeviceKind) -> str:
    """A kind of device as one says it.

    Examples
    --------
    >>> kind_words("co-alarm"), kind_words("hold-up-button")
    ('CO alarm', 'hold-up button')
    """
    return {
        "co-alarm": "CO alarm",
        "hold-up-button": "hold-up button",
        "glass-break-detector": "glass-break detector",
    }.get(kind, kind.replace("-", " "))


MountWord = Literal["wall", "ceiling", "opening", "free"]

USUAL_MOUNTS: Mapping[DeviceKind, tuple[MountWord, ...]] = MappingProxyType(
    {
        "control-unit": ("wall", "free"),
        "keypad": ("wall",),
        "keyfob": ("free", "wall"),
        "hold-up-button": ("wall", "free"),
        "movement-detector": ("wall", "ceiling", "free"),
        "opening-contact": ("opening",),
        "shock-detector": ("opening", "wall"),
        "glass-break-detector": ("wall", "ceiling"),
        "water-detector": ("free", "wall"),
        "smoke-alarm": ("ceiling", "wall"),
        "heat-alarm": ("ceiling", "wall"),
        "co-alarm": ("wall", "ceiling", "free"),
        "sounder": ("wall", "ceiling", "free"),
        "camera": ("wall", "ceiling", "free"),
        "repeater": ("wall", "free"),
        "transmitter": ("wall", "free"),
        "router": ("free", "wall"),
    }
)
"""What each kind can be fixed to, unless its own sheet says otherwise."""

Surface = Literal[
    "plaster", "wallpaper", "textured", "tile", "upvc", "timber", "steel", "aluminium", "masonry", "glass", "unknown"
]  # fmt: skip
"""What a device is fixed on."""


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


class Fixing(Marked):
    """How a device is held, and what it is held to."""

    by: Literal["screws", "adhesive"]
    surface: Surface = "unknown"
    surface_c: Annotated[float, Field(ge=-30, le=70)] | None = None
    """How warm the surface is on the day of fitting; None: not measured. [deg C]"""
    paint_days: Annotated[float, Field(ge=0, le=36500)] | None = None
    """Since it was painted; None: not known. [d]"""
    is_heated_before: bool = False
    """Whether a cold frame is warmed first."""


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
    sensitivity: Literal["low", "usual", "high"] = "usual"
    """How a detector is set, where it can be set."""
    fixing: Fixing | None = None
    """None: not decided."""
    made_on: date | None = None
    """As its label says: its life counts from here. None: not known."""
    cell: Id | None = None
    """Which of the cells that its sheet takes it is fitted with; None: those it comes with."""
    cells_since: date | None = None
    """When its cells were last changed; None: not known, or to be fitted."""
    check_in_min: Annotated[float, Field(gt=0, le=10080)] | None = None
    """How often it is set to tell that it is there; None: as its sheet says. [min]"""
    is_covered_when_home: bool | None = None
    """For a camera inside: whether it is covered or off while people are in; None: not decided."""
    is_existing: bool = False
    """Already there and stays."""

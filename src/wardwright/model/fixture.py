"""Furniture and fixtures as boxes, and the points where power and network are."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Id, Marked, Point2

FixtureKind = Literal[
    "radiator", "stove", "boiler", "fire", "heater", "vent", "bed", "sofa", "table", "chair", "cupboard", "shelf",
    "worktop", "appliance", "sanitary", "curtain", "screen", "mirror", "other",
]  # fmt: skip


class Fixture(Marked):
    """A box that stands in a space or hangs on its wall."""

    id: Id
    name: str
    storey: Id
    kind: FixtureKind = "other"
    centre_m: Point2
    size_m: tuple[Annotated[float, Field(gt=0, le=20)], Annotated[float, Field(gt=0, le=20)]]
    """Width and depth before it is turned. [m]"""
    turn_deg: float = 0.0
    """Anticlockwise. [deg]"""
    base_m: float = 0.0
    """Its underside above the floor. [m]"""
    height_m: Annotated[float, Field(gt=0, le=6)] = 0.8
    """From its underside to its top. [m]"""
    heat: Literal["none", "warm", "hot"] = "none"
    """Whether it gets warm or hot, or blows warm air."""


class Outlet(Marked):
    """A power or network point."""

    id: Id
    name: str
    kind: Literal["power", "fused-spur", "network", "router"]
    storey: Id
    at_m: Point2
    height_m: float = 0.3

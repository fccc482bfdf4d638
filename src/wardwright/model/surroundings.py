"""The ground about the house."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Id, Marked, Point2, Ring


class GroundThing(Marked):
    """A thing outside that hides, shades or can be climbed."""

    id: Id
    name: str
    kind: Literal[
        "wall",
        "fence",
        "tree",
        "shed",
        "flat-roof",
        "bin",
        "car",
        "pipe",
        "building",
        "gate",
        "overhang",
        "other",
    ]
    """`overhang`: eaves, a canopy, a balcony's slab: it hangs, and shades what is below."""
    outline_m: Annotated[Ring, Field(min_length=2)]
    height_m: Annotated[float, Field(gt=0, le=60)]
    """Its top above the ground. [m]"""
    base_m: Annotated[float, Field(ge=0, le=60)] = 0.0
    """Its underside above the ground: for what hangs. [m]"""
    can_be_climbed: bool = False


class Ground(Marked):
    """The ground about the house."""

    level_m: float = -0.15
    """Above the house's zero. [m]"""
    boundary_m: Ring | None = None
    """The line of what is ours. [m]"""
    road_m: tuple[Point2, ...] | None = None
    things: tuple[GroundThing, ...] = ()

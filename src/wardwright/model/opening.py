"""Doors, windows and gaps in walls."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Id, Marked

LeafState = Literal["shut", "ajar", "open"]
OpeningKind = Literal["door", "window", "gap", "rooflight", "hatch", "garage-door"]
Hinge = Literal["start", "end", "top", "bottom", "sliding", "fixed", "none"]
LockClass = Literal["none", "latch", "deadlock", "multi-point", "rc2", "rc3", "unknown"]
Manner = Literal["opened", "through the glass"]
"""How somebody comes through an opening."""


class Opening(Marked):
    """A door, a window, or a gap in a wall."""

    id: Id
    name: str
    kind: OpeningKind
    wall: Id
    offset_m: Annotated[float, Field(ge=0)]
    """From the first end of the wall's line to the middle of the opening. [m]"""
    width_m: Annotated[float, Field(gt=0.05, le=12)]
    sill_m: float = 0.0
    """Lower edge above the storey's floor. [m]"""
    head_m: float = 2.0
    """Upper edge above the storey's floor. [m]"""
    sill_outside_m: float | None = None
    """Lower edge above the ground outside; None: from the ground's level. [m]"""
    leaves: Annotated[int, Field(ge=0, le=12)] = 1
    hinge: Hinge = "start"
    """Where the leaf turns: the end of the opening toward the wall's first or second end, top, bottom; or it
    slides, or is fixed glass. With two leaves, the one that opens first."""
    swing: Literal["left", "right", "none"] = "left"
    """The side of the wall's line (looking along it) that the leaf opens to."""
    glazing: Id | None = None
    """A row of the catalogue's glazings; None: no glass a person could come through."""
    lock: LockClass = "unknown"
    habit: LeafState = "shut"
    """How the leaf usually stands when the house is set."""
    habit_night: LeafState = "shut"
    """How it usually stands at night."""
    is_locked: bool = True
    """Whether it is usually locked when the house is set; only for leaves to the outside."""
    covering: Literal["none", "curtain", "blind", "shutter"] = "none"
    is_entry_door: bool = False
    """Whether the household comes in by it."""
    joins: tuple[Id | None, Id | None] | None = None
    """The spaces on the left and right of the wall's line, None being outside; left out: found from the plan."""

"""An upright opening in a wall's thickness, as plain numbers."""

from __future__ import annotations

from typing import NamedTuple


class Pane(NamedTuple):
    """An upright opening that light comes in by, in its wall's thickness."""

    middle: tuple[float, float]
    """Of its line on the plan, in the middle of the wall. [m]"""
    normal: tuple[float, float]
    """Unit vector outward, on the plan. [-]"""
    width: float
    """[m]"""
    sill: float
    """Above the house's zero. [m]"""
    head: float
    """Above the house's zero. [m]"""
    depth: float
    """Thickness of the wall: what the reveal shades. [m]"""

"""What the sun shines on, by which pane, and when: plain numbers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from wardwright.geometry.raster import BoolArray, FloatArray, Grid, IntArray
from wardwright.physics.sunlight.year import Year

Norths = tuple[float, ...]
"""Where true north may lie, anticlockwise from the plan's y axis. [rad]"""


def norths_in(north: float | Norths) -> Norths:
    """One north or several, as several.

    Parameters
    ----------
    north : float or tuple of float
        Where true north may lie, anticlockwise from the plan's y axis. [rad]

    Returns
    -------
    tuple of float
        The same. [rad]
    """
    return north if isinstance(north, tuple) else (north,)


class Sun(NamedTuple):
    """The year at a house."""

    year: Year
    clock: FloatArray
    """What is added to local mean time on each day, shape (365,). [min]"""
    zone: str | None
    """The time zone; None: hours are of local mean time."""
    north: float | None
    """Where true north lies, anticlockwise from the plan's y axis; None: not known. [rad]"""


class Lens(NamedTuple):
    """A place that the sun may shine on."""

    storey: str
    x: float
    y: float
    z: float
    """Above the house's zero. [m]"""


class Beam(NamedTuple):
    """The sun through one pane, on a lens or on floor in view."""

    opening: str
    is_covered: bool
    steps: IntArray
    """Steps of the year, ascending."""
    bearings: FloatArray
    """Of the sun on the plan at each, anticlockwise from x; empty for a lit floor. [rad]"""


@dataclass(frozen=True, eq=False)
class View:
    """Cells of a storey's floor that a detector looks at; looked up by the view itself, not by its content."""

    storey: str
    grid: Grid
    mask: BoolArray
    """Shape (ny, nx)."""

"""Door leaves and panes as panels that stop sight."""

from __future__ import annotations

import math
from typing import Literal

from wardwright.geometry.panels import NOTHING, Blockers, sheets
from wardwright.model.fabric import Wall
from wardwright.model.opening import LeafState, Opening
from wardwright.model.placement import along, direction, opening_line
from wardwright.model.record import Point2

Medium = Literal["heat", "light"]
"""What sight is by: body heat (8-14 um), which glass stops, or light, which it lets through."""
Leaves = Literal["told", "shut", "away"]
"""How leaves are taken to stand."""

AJAR_RAD = math.radians(10.0)
"""How far a leaf that is ajar is turned: about 0.15 m of gap at a usual door. [rad] (assumption)"""
PANES = ("window", "rooflight")


def state_of(opening: Opening, leaves: Leaves) -> LeafState:
    """How a leaf is taken to stand: its habit where that is told or measured, otherwise shut."""
    is_told = opening.basis_of("habit") in ("told", "measured")
    return opening.habit if leaves == "told" and is_told else "shut"


def state_at_night(opening: Opening) -> LeafState:
    """How a leaf is taken to stand at night: its habit where that is told or measured, otherwise shut."""
    is_told = opening.basis_of("habit_night") in ("told", "measured")
    return opening.habit_night if is_told else "shut"


def leaf_panels(
    wall: Wall, opening: Opening, *, floor: float, whole: tuple[float, float], medium: Medium, leaves: Leaves
) -> Blockers:
    """The leaves or panes of one opening.

    Parameters
    ----------
    wall : Wall
        The wall it is in.
    opening : Opening
        The opening.
    floor : float
        The storey's floor above the house's zero. [m]
    whole : tuple of float
        Foot and top of the wall: what is shut is drawn that high, since the wall below and above is shut too. [m]
    medium : {"heat", "light"}
        What sight is by.
    leaves : {"told", "shut", "away"}
        How they stand. Away: doors are gone; a window stays shut unless it is ever said to stand open.

    Returns
    -------
    Blockers
        Its panels. [m]
    """
    if opening.kind == "gap" or _is_clear(opening, medium, leaves):
        return NOTHING
    levels = (floor + opening.sill_m, floor + opening.head_m)
    start, end = opening_line(wall, opening)
    if leaves == "away":
        return sheets([(*start, *end, *whole)]) if _stays_shut(opening) else NOTHING
    state = state_of(opening, leaves)
    if state == "shut" or opening.hinge in ("fixed", "none"):
        return sheets([(*start, *end, *whole)])
    if opening.hinge not in ("start", "end"):
        # Slid or tipped away; ajar it hides as much as shut, but for its gap.
        return NOTHING if state == "open" else sheets([(*start, *_toward(start, end, 0.85), *levels)])
    return _turned(wall, opening, state=state, levels=levels)


def _is_clear(opening: Opening, medium: Medium, leaves: Leaves) -> bool:
    """Whether light goes through it as if it were not there."""
    if medium == "heat" or (opening.kind not in PANES and opening.glazing is None):
        return False
    return opening.covering == "none" or leaves == "away"


def _stays_shut(opening: Opening) -> bool:
    """Whether a pane or leaf is never taken to stand open by itself."""
    if opening.kind not in PANES:
        return False
    return opening.hinge in ("fixed", "none") or (opening.habit == "shut" and opening.habit_night == "shut")


def _toward(start: Point2, end: Point2, share: float) -> Point2:
    return (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))


def _turned(wall: Wall, opening: Opening, *, state: LeafState, levels: tuple[float, float]) -> Blockers:
    """A leaf turned on its hinge to the side it swings to; a second leaf stays shut."""
    line = opening_line(wall, opening)
    (ux, uy), (nx, ny), length = direction(line)
    side = 1.0 if opening.swing == "left" else -1.0
    width = length / max(1, opening.leaves)
    at_start = opening.hinge == "start"
    # Ajar it turns about the middle of the wall, where it stands shut; open it lies at the face it swings to.
    away = side * wall.thickness_m / 2 if state == "open" else 0.0
    hinge = along(line, 0.0 if at_start else length, left_m=away)
    angle = math.pi / 2 if state == "open" else AJAR_RAD
    sign = 1.0 if at_start else -1.0
    tip = (
        hinge[0] + width * (sign * math.cos(angle) * ux + side * math.sin(angle) * nx),
        hinge[1] + width * (sign * math.cos(angle) * uy + side * math.sin(angle) * ny),
    )
    rows: list[tuple[float, ...]] = [(*hinge, *tip, *levels)]
    if opening.leaves > 1:
        near, far = (width, length) if at_start else (0.0, length - width)
        rows.append((*along(line, near), *along(line, far), *levels))
    return sheets(rows)

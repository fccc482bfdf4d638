"""Doors, windows and passages: what a gap's swings, lines and size say of it."""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

from wardwright.intake.dxf.gaps import Gap
from wardwright.model.opening import Hinge

DOOR_HEAD_M = 2.03
"""The head of a door or window whose own is not written. [m] (assumption: 6 ft 8 in, as doors mostly are)"""
WINDOW_M = (0.9, 2.1)
"""Sill and head of a window without a size. [m] (assumption)"""
NARROW_M = 0.6
"""A window narrower than this, with a size but no letters, is fixed glass. [m] (assumption)"""
PAIR_FROM_M = 1.2
"""From this width on a door that slides has two leaves. [m] (assumption)"""
WHOLE = 0.9
"""A line between the faces along this share of a gap is a pane, a shorter one a leaf that slides. [-] (assumption)"""


class Leaf(NamedTuple):
    """What an opening is, as fields of the site, and which of them are guessed."""

    fields: dict[str, Any]
    guessed: tuple[str, ...]


def leaf_of(gap: Gap, *, storey_m: float) -> Leaf:
    """What a gap is.

    Parameters
    ----------
    gap : Gap
        The gap, with what is drawn and written there.
    storey_m : float
        Floor to ceiling: where a passage ends. [m]

    Returns
    -------
    Leaf
        Kind, leaves, hinge, swing, sill and head, glazing.
    """
    if not gap.is_opening:
        return Leaf(_passage(storey_m), ("kind", "sill_m", "head_m", "leaves", "hinge", "swing"))
    return _hung_door(gap) if gap.swings else _without_a_swing(gap)


def _without_a_swing(gap: Gap) -> Leaf:
    """By the letters of its size first, then by the lines between its faces."""
    kind = gap.size.kind if gap.size is not None else ""
    if kind == "garage-door":
        return _door(gap, kind="garage-door", hinge="top", leaves=1, guessed=("hinge", "leaves"))
    if kind == "sliding-door":
        return _door(gap, kind="door", hinge="sliding", leaves=2, guessed=("leaves",))
    spanned = any(min(b, gap.end) - max(a, gap.start) > WHOLE * gap.width for a, b in gap.lines)
    if kind.endswith("window") or (kind == "" and spanned):
        return _window(gap, kind)
    if gap.lines:
        leaves = 1 if gap.width < PAIR_FROM_M else 2
        return _door(gap, kind="door", hinge="sliding", leaves=leaves, guessed=("hinge", "leaves"))
    opened = _passage(gap.size.height_m if gap.size is not None else DOOR_HEAD_M)
    return Leaf(opened, ("kind", "leaves", "hinge", "swing", *(() if gap.size is not None else ("head_m",))))


def _passage(head: float) -> dict[str, Any]:
    return {
        "kind": "gap",
        "sill_m": 0.0,
        "head_m": round(head, 3),
        "leaves": 0,
        "hinge": "none",
        "swing": "none",
    }


def _door(gap: Gap, *, kind: str, hinge: Hinge, leaves: int, guessed: tuple[str, ...]) -> Leaf:
    head = gap.size.height_m if gap.size is not None else DOOR_HEAD_M
    fields = {
        "kind": kind, "sill_m": 0.0, "head_m": round(head, 3), "leaves": leaves, "hinge": hinge, "swing": "none",
        "lock": "unknown",
    }  # fmt: skip
    return Leaf(fields, ("sill_m", *(() if gap.size is not None else ("head_m",)), *guessed, "lock"))


def _hung_door(gap: Gap) -> Leaf:
    """A door on hinges, from the arc of its leaf: its middle is the hinge, its far end the leaf's tip when open."""
    swing = max(gap.swings, key=lambda s: s.radius)
    way = np.array((gap.run.way.x, gap.run.way.y))
    left = np.array((-way[1], way[0]))
    at = float(np.array(swing.centre) @ way)
    hinge: Hinge = "start" if abs(at - gap.start) <= abs(at - gap.end) else "end"
    off = [float(np.array(end) @ left) - gap.run.middle for end in swing.ends]
    farthest = max(off, key=abs)
    leaves = 2 if swing.radius < 0.75 * gap.width else 1
    leaf = _door(gap, kind="door", hinge=hinge, leaves=leaves, guessed=() if leaves == 1 else ("hinge",))
    return Leaf(leaf.fields | {"swing": "left" if farthest > 0 else "right"}, leaf.guessed)


def _window(gap: Gap, kind: str) -> Leaf:
    guessed: tuple[str, ...] = ("sill_m", "head_m", "glazing", "lock")
    hinge: Hinge = "sliding"
    if kind == "fixed-window" or (kind == "window" and gap.width < NARROW_M):
        hinge = "fixed"
    elif kind in ("window", ""):
        hinge = "start"
    if kind in ("window", ""):
        guessed = (*guessed, "hinge", "swing", "leaves")
    sill, head = WINDOW_M
    if gap.size is not None:
        head = max(DOOR_HEAD_M, gap.size.height_m)
        sill = head - gap.size.height_m
    fields = {
        "kind": "window", "sill_m": round(sill, 3), "head_m": round(head, 3), "leaves": 0 if hinge == "fixed" else 1,
        "hinge": hinge, "swing": "left" if hinge == "start" else "none", "glazing": "double-plain",
        "lock": "unknown",
    }  # fmt: skip
    return Leaf(fields, guessed)

"""How the leaf of a door or window opens: read from its type and its own axes, or guessed as such."""

from __future__ import annotations

import re
from typing import NamedTuple

from wardwright.intake.ifc.file import Entity, IfcHouse, type_of
from wardwright.model.fabric import Wall
from wardwright.model.opening import Hinge, OpeningKind
from wardwright.model.placement import direction

# What an operation type says: leaves, and the side of the hinge seen along the door's own y axis, the way it opens.
_OPERATIONS: dict[str, tuple[int, str]] = {
    "SINGLE_SWING_LEFT": (1, "low"),
    "SINGLE_SWING_RIGHT": (1, "high"),
    "DOUBLE_SWING_LEFT": (1, "low"),
    "DOUBLE_SWING_RIGHT": (1, "high"),
    "SWING_FIXED_LEFT": (1, "low"),
    "SWING_FIXED_RIGHT": (1, "high"),
    "DOUBLE_DOOR_SINGLE_SWING": (2, "low"),
    "DOUBLE_DOOR_SINGLE_SWING_OPPOSITE_LEFT": (2, "low"),
    "DOUBLE_DOOR_SINGLE_SWING_OPPOSITE_RIGHT": (2, "high"),
    "DOUBLE_DOOR_DOUBLE_SWING": (2, "low"),
    "SLIDING_TO_LEFT": (1, "sliding"),
    "SLIDING_TO_RIGHT": (1, "sliding"),
    "DOUBLE_DOOR_SLIDING": (2, "sliding"),
    "FOLDING_TO_LEFT": (2, "sliding"),
    "FOLDING_TO_RIGHT": (2, "sliding"),
    "DOUBLE_DOOR_FOLDING": (4, "sliding"),
    "ROLLINGUP": (1, "top"),
}
_PANELS: dict[str, Hinge] = {
    "TOPHUNG": "top",
    "BOTTOMHUNG": "bottom",
    "PIVOTHORIZONTAL": "top",
    "SLIDINGHORIZONTAL": "sliding",
    "SLIDINGVERTICAL": "sliding",
    "FIXEDCASEMENT": "fixed",
    "FIXEDPANEL": "fixed",
}
_SIDE_PANELS = ("SIDEHUNG", "TILTANDTURN", "PIVOTVERTICAL")


class Leaf(NamedTuple):
    """How an opening's leaf turns, and which of its facts are guessed."""

    leaves: int
    hinge: Hinge
    swing: str
    guessed: tuple[str, ...]


def leaf_of(house: IfcHouse, entity: Entity, wall: Wall, *, kind: OpeningKind) -> Leaf:
    """How the leaf of a door or window opens, in terms of its wall's line.

    A door's own axes say it: x runs along its width, y is the way it opens, and the hinge of a left-hand
    door is on the left as one looks along y, which is the low end of x.
    """
    if kind in ("door", "garage-door", "hatch"):
        return _door(house, entity, wall)
    return _window(house, entity, wall)


def operation_of(entity: Entity) -> str | None:
    """The operation type of a door, from itself or its type."""
    for holder in (entity, type_of(entity)):
        stated = getattr(holder, "OperationType", None) if holder is not None else None
        if stated and stated not in ("NOTDEFINED", "USERDEFINED"):
            return str(stated)
    return None


def _door(house: IfcHouse, entity: Entity, wall: Wall) -> Leaf:
    operation = operation_of(entity)
    leaves, hung = _OPERATIONS.get(operation or "", (1, "low"))
    guessed: tuple[str, ...] = () if operation in _OPERATIONS else ("leaves", "hinge", "swing")
    if hung in ("sliding", "top"):
        return Leaf(leaves, "sliding" if hung == "sliding" else "top", "none", guessed)
    hinge, swing = _turned(house, entity, wall, is_low=hung == "low")
    if leaves == 2:
        guessed = (*guessed, "hinge")
    return Leaf(leaves, hinge, swing, guessed)


def _turned(house: IfcHouse, entity: Entity, wall: Wall, *, is_low: bool) -> tuple[Hinge, str]:
    x_axis, y_axis = house.axes(entity)
    way, left, _ = direction(wall.line_m)
    toward_end = x_axis[0] * way[0] + x_axis[1] * way[1]
    hinge: Hinge = "start" if (toward_end >= 0) == is_low else "end"
    swing = "left" if y_axis[0] * left[0] + y_axis[1] * left[1] >= 0 else "right"
    return hinge, swing


def _window(house: IfcHouse, entity: Entity, wall: Wall) -> Leaf:
    panels = _panel_operations(entity)
    hung: set[Hinge] = {hinge for words, hinge in _PANELS.items() for p in panels if p.startswith(words)}
    sides = [p for p in panels if p.startswith(_SIDE_PANELS)]
    if sides:
        # "Right" is as seen from outside, and a window's own y axis points outward or inward by the maker's
        # habit: so the side is a guess, the count of leaves is not.
        hinge, swing = _turned(house, entity, wall, is_low=sides[0].endswith("LEFTHAND"))
        return Leaf(len(sides), hinge, swing, ("hinge", "swing"))
    if len(hung) == 1:
        only = hung.pop()
        return Leaf(0 if only == "fixed" else max(1, len(panels)), only, "none", ())
    words = f"{entity.Name or ''} {getattr(type_of(entity), 'Name', None) or ''}"
    if re.search(r"\bfixed|\bfest", words.replace("_", " "), re.IGNORECASE):
        return Leaf(0, "fixed", "none", ("leaves", "hinge", "swing"))
    hinge, swing = _turned(house, entity, wall, is_low=True)
    return Leaf(max(1, _lights(entity)), hinge, swing, ("leaves", "hinge", "swing"))


def _panel_operations(entity: Entity) -> list[str]:
    """What each panel of a window does, from the property sets of itself and its type."""
    kind = type_of(entity)
    sets = list(getattr(kind, "HasPropertySets", None) or ())
    for relation in getattr(entity, "IsDefinedBy", None) or ():
        definition = getattr(relation, "RelatingPropertyDefinition", None)
        if definition is not None:
            sets.append(definition)
    panels = [s for s in sets if s.is_a("IfcWindowPanelProperties")]
    return [
        str(p.OperationType) for p in panels if p.OperationType not in (None, "NOTDEFINED", "OTHEROPERATION")
    ]


def _lights(entity: Entity) -> int:
    """How many lights the partitioning of a window says it has."""
    for holder in (entity, type_of(entity)):
        stated = next(
            (
                str(value)
                for name in ("PartitioningType", "OperationType")
                if (value := getattr(holder, name, None)) is not None
            ),
            "",
        )
        for words, count in (("SINGLE", 1), ("DOUBLE", 2), ("TRIPLE", 3)):
            if stated.startswith(words):
                return count
    return 1

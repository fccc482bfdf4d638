"""Which spaces of a building file are ours: the premises."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Literal

from wardwright.errors import IntakeError
from wardwright.intake.ifc.file import Entity, IfcHouse
from wardwright.intake.report import listed

Belongs = Literal["ours", "neighbour", "shared"]

_SHARED = re.compile(
    r"\b(stairs?|lobby|corridor|lift|common|plant|bin|treppenhaus|treppe|flur|roof)\b", re.IGNORECASE
)
_FLAT_CODE = re.compile(r"^[A-Za-z]+\.?[-_ ]?\d")


def belonging(house: IfcHouse, spaces: Sequence[Entity], premises: str | None) -> dict[int, Belongs]:
    """Say whose each space is.

    Parameters
    ----------
    house : IfcHouse
        The open file.
    spaces : sequence of entities
        Its spaces.
    premises : str or None
        What is ours: names of spaces or zones, or how the names of our spaces begin, parted by commas.
        None: everything.

    Returns
    -------
    dict of int to str
        By the entity's number in the file: `ours`, `neighbour` or `shared`.

    Raises
    ------
    IntakeError
        If a part of `premises` picks no space.
    """
    if premises is None:
        return {space.id(): "ours" for space in spaces}
    ours: set[int] = set()
    for wanted in filter(None, (part.strip() for part in premises.split(","))):
        found = _in_zone(house, wanted) | {s.id() for s in spaces if _is_named(s, wanted)}
        found = found or {s.id() for s in spaces if _begins(s, wanted)}
        if not found & {space.id() for space in spaces}:
            names = listed(_code(s) for s in spaces) or "none"
            raise IntakeError(
                f'no space is called "{wanted}" or begins with it',
                where=f"{house.where}, premises",
                cure=f"Name spaces of the file, or how their names begin; the file has: {names}",
            )
        ours |= found
    return {space.id(): "ours" if space.id() in ours else _other(space) for space in spaces}


def _code(space: Entity) -> str:
    return str(space.Name or space.LongName or f"#{space.id()}").strip()


def _is_named(space: Entity, wanted: str) -> bool:
    names = (space.Name or "", space.LongName or "")
    return any(name.strip().casefold() == wanted.casefold() for name in names)


def _begins(space: Entity, wanted: str) -> bool:
    return _code(space).casefold().startswith(wanted.casefold())


def _in_zone(house: IfcHouse, wanted: str) -> set[int]:
    return {
        member.id()
        for zone in house.of("IfcZone")
        if (zone.Name or "").strip().casefold() == wanted.casefold()
        for relation in zone.IsGroupedBy or ()
        for member in relation.RelatedObjects
        if member.is_a("IfcSpace")
    }


def _other(space: Entity) -> Belongs:
    """A space with a flat's code, such as B105, is a neighbour's; an uncoded stair or lobby is shared."""
    if _FLAT_CODE.match(_code(space)):
        return "neighbour"
    return "shared" if _SHARED.search(f"{space.Name or ''} {space.LongName or ''}") else "neighbour"

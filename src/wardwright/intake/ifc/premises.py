"""Which spaces of a building file are ours: the premises."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from typing import Literal

from wardwright.errors import IntakeError
from wardwright.intake.ifc.file import Entity, IfcHouse
from wardwright.intake.report import PremisesChoice, listed

Belongs = Literal["ours", "neighbour", "shared"]

_SHARED = re.compile(
    r"\b(stairs?|lobby|corridor|lift|common|plant|bin|treppenhaus|treppe|flur|roof)\b", re.IGNORECASE
)
_FLAT_CODE = re.compile(r"^([A-Za-z]+)\.?[-_ ]?\d")
CHOICES_AT_MOST = 24
"""With more groups than this, names begin with something else than a flat's letters. [-] (assumption)"""


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


def choices(house: IfcHouse, spaces: Sequence[Entity]) -> tuple[PremisesChoice, ...]:
    """The premises that a building seems to hold: its zones, or the letters before the numbers of its spaces.

    Parameters
    ----------
    house : IfcHouse
        The open file.
    spaces : sequence of entities
        Its spaces.

    Returns
    -------
    tuple of PremisesChoice
        The largest first; empty where nothing tells one from another.
    """
    zones = {str(zone.Name or "").strip() for zone in house.of("IfcZone")} - {""}
    members = {name: _in_zone(house, name) & {space.id() for space in spaces} for name in zones}
    apart = sum(map(len, members.values())) == len(set().union(*members.values()))
    sizes = Counter({name: len(found) for name, found in members.items() if found}) if apart else Counter()
    if not _tell_apart(sizes, spaces):
        found = filter(None, (_FLAT_CODE.match(_code(space)) for space in spaces))
        sizes = Counter(match[1] for match in found)
    if not _tell_apart(sizes, spaces):
        return ()
    return tuple(
        PremisesChoice(name=name, spaces=count)
        for name, count in sorted(sizes.items(), key=lambda one: (-one[1], one[0]))
    )


def _tell_apart(sizes: Counter[str], spaces: Sequence[Entity]) -> bool:
    """Whether groups look like premises: several, most spaces in one of them, not each space in its own."""
    is_some = 1 < len(sizes) <= CHOICES_AT_MOST and max(sizes.values()) > 1
    return is_some and 2 * sizes.total() >= len(spaces)


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

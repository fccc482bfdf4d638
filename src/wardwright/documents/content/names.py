"""What people call the things of a site: names for ids, places in words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from wardwright.documents.content.quantities import quantity
from wardwright.model.catalogue import Catalogue
from wardwright.model.fabric import Wall
from wardwright.model.placement import PROBE_M, along, direction, space_at
from wardwright.model.site import Site


@dataclass(frozen=True, slots=True)
class Names:
    """Names by id; an id that is not there stands for itself."""

    by_id: Mapping[str, str] = field(default_factory=dict)
    site: Site | None = None

    def of(self, thing_id: str) -> str:
        """What people call a thing."""
        return self.by_id.get(thing_id, thing_id)

    def wall_place(self, wall_id: str, *, side: str, offset_m: float, is_plain: bool = False) -> str:
        """A place on the face of a wall, as one says it with the plan in hand."""
        far = quantity(offset_m, "m", 0.1, is_plain=is_plain)
        walls = () if self.site is None else self.site.walls
        wall = next((one for one in walls if one.id == wall_id), None)
        if self.site is None or wall is None:
            return f"on the {side} of wall {wall_id}, {far} along it"
        mine, other = (_space_beside(self.site, wall, turn=turn, offset_m=offset_m) for turn in _sides(side))
        where = f"in {mine}, on its wall to {other}" if mine and other else ""
        if not where:
            where = f"in {mine}, on its outer wall" if mine else f"outside, on the wall of {other or wall_id}"
        return f"{where}, {far} from the wall\u2019s {_first_end(wall)} end on the plan"


def names_of(site: Site, catalogue: Catalogue | None = None) -> Names:
    """What people call each thing of a site.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue, optional
        For the names of device sheets.

    Returns
    -------
    Names
        By id.
    """
    rows = catalogue.sheets if catalogue is not None else ()
    names = {row.id: _bracketed(row.name) for row in rows}
    names |= {wall.id: f"wall {wall.id.removesuffix('-wall')}" for wall in site.walls}
    for group in (
        site.storeys, site.stairs, site.fixtures, site.outlets, site.behaviours, site.parts, site.people,
        site.pets, site.targets, site.ground.things, site.spaces, site.openings, site.devices,
    ):  # fmt: skip
        names |= {thing.id: thing.name for thing in group}
    names |= {zone.id: f"zone {zone.number} ({zone.name})" for zone in site.zones}
    return Names(names | {"programme": "the programme"}, site)


TOWARD = (
    "right", "to the upper right", "up", "to the upper left",
    "left", "to the lower left", "down", "to the lower right",
)  # fmt: skip
"""An eighth of a turn each, anticlockwise from the plan's right."""


def toward(heading_deg: float) -> str:
    """Where a heading points on the plan as it is drawn, to the nearest eighth of a turn.

    Examples
    --------
    >>> toward(0.0), toward(140.0), toward(-90.0)
    ('right', 'to the upper left', 'down')
    """
    return TOWARD[round(heading_deg / 45.0) % 8]


def _bracketed(name: str) -> str:
    """A sheet's name with what follows its kind in brackets, so that it can stand in a sentence."""
    head, comma, rest = name.partition(", ")
    return f"{head} ({rest})" if comma else name


def _sides(side: str) -> tuple[float, float]:
    return (1.0, -1.0) if side == "left" else (-1.0, 1.0)


def _space_beside(site: Site, wall: Wall, *, turn: float, offset_m: float) -> str | None:
    place = along(wall.line_m, offset_m, left_m=turn * (wall.thickness_m / 2 + PROBE_M))
    space = space_at(site, wall.storey, place)
    return None if space is None else space.name


def _first_end(wall: Wall) -> str:
    """Where a wall's first end lies on the plan as it is drawn."""
    (ux, uy), _, _ = direction(wall.line_m)
    if abs(ux) >= abs(uy):
        return "left" if ux > 0 else "right"
    return "lower" if uy > 0 else "upper"

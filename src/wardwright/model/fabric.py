"""What the house is made of: storeys, spaces, walls, open edges, stairs."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Id, Line2, Marked, Point2, Point3, Record, Ring

SpaceUse = Literal[
    "hall", "landing", "stairwell", "living", "dining", "kitchen", "bedroom", "study", "bathroom", "toilet",
    "utility", "store", "garage", "loft", "conservatory", "balcony", "terrace", "plant", "other",
]  # fmt: skip

OUTDOOR_USES: tuple[SpaceUse, ...] = ("balcony", "terrace")
"""Uses of drawn spaces where it rains: ours or not, they are outside of what is to be protected."""


class Slope(Record):
    """One plane of a sloped ceiling, by its corners."""

    corners_m: Annotated[tuple[Point3, ...], Field(min_length=3)]
    """Corners of the underside: plan x, plan y, height above the storey's floor. They lie in one plane. [m]"""


class Storey(Marked):
    """One level of the house."""

    id: Id
    name: str
    elevation_m: float
    """Height of the finished floor above the house's zero. [m]"""
    height_m: Annotated[float, Field(gt=1.0, le=12)] = 2.4
    """Floor to ceiling, where no slope is lower. [m]"""
    slopes: tuple[Slope, ...] = ()
    """Sloped ceilings; the lowest plane over a place counts."""


class Space(Marked):
    """A room, or a named part of one."""

    id: Id
    name: str
    storey: Id
    outline_m: Annotated[Ring, Field(min_length=3)]
    """Inner faces of its walls. [m]"""
    use: SpaceUse = "other"
    belongs: Literal["ours", "neighbour", "shared"] = "ours"
    """Whose it is: the premises are the spaces that are ours."""
    height_m: Annotated[float, Field(gt=0.5, le=12)] | None = None
    """Floor to ceiling where it differs from the storey's. [m]"""
    has_glossy_floor: bool = False
    """Whether its floor is so smooth that it throws the sun on: polished stone, lacquer."""

    @property
    def is_outdoors(self) -> bool:
        """Whether it lies in the open air: a balcony, a terrace."""
        return self.use in OUTDOOR_USES

    @property
    def is_protected(self) -> bool:
        """Whether it is ours and indoors."""
        return self.belongs == "ours" and not self.is_outdoors


class Wall(Marked):
    """A straight wall."""

    id: Id
    storey: Id
    line_m: Line2
    """Its centre line; openings and devices are measured from the first end. [m]"""
    thickness_m: Annotated[float, Field(gt=0, le=3)] = 0.1
    base_m: float = 0.0
    """Its foot above the storey's floor. [m]"""
    height_m: Annotated[float, Field(gt=0, le=20)] | None = None
    """Its own height; None: up to the ceiling. [m]"""
    footprint_m: Ring | None = None
    """Its outline on the plan where that is not the plain rectangle about its line. [m]"""
    construction: Id = "unknown"
    """A row of the catalogue's constructions."""
    is_exterior: bool | None = None
    """Whether it parts inside from outside; None: from the spaces on its two sides."""


class OpenEdge(Marked):
    """A line between two spaces where nothing is built."""

    id: Id
    spaces: tuple[Id, Id]
    line_m: Line2


class Stair(Marked):
    """A flight between two storeys."""

    id: Id
    name: str = "stairs"
    lower: Id
    """The storey it starts from."""
    upper: Id
    """The storey it leads to."""
    line_m: Annotated[tuple[Point2, ...], Field(min_length=2)]
    """Its walking line on the plan from the lowest riser to the highest. [m]"""
    width_m: Annotated[float, Field(gt=0.3, le=4)] = 0.9
    well_m: Ring | None = None
    """The hole it leaves in the upper floor; None: the walking line at its width. [m]"""
    balusters: Literal["open", "solid", "none"] = "open"
    """What guards the well above: open balusters can be looked through, in part."""
    is_enclosed: bool = False
    """Whether the space below the flight is boxed in."""

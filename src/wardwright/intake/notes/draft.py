"""The site as it grows while notes are read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Protocol

from wardwright.intake.notes.walls import Make, Stretch
from wardwright.intake.notes.words import Line
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fabric import OpenEdge, Space, Stair, Storey, Wall
from wardwright.model.fixture import Fixture, Outlet
from wardwright.model.household import Person, Pet, Target
from wardwright.model.needs import Needs
from wardwright.model.opening import Opening
from wardwright.model.place import Place
from wardwright.model.programme import STANDARD_BEHAVIOURS, STANDARD_PARTS, Behaviour, Part, Programme, Zone
from wardwright.model.reading import Reading
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground

GUESSED_INSIDE = Make(0.1, "unknown", is_party=False, is_guessed=True)
GUESSED_OUTSIDE = Make(0.3, "unknown", is_party=False, is_guessed=True)
GUESSED_PARTY = Make(0.215, "unknown", is_party=True, is_guessed=True)
"""Walls of which the notes say nothing. [m] (assumption)"""


@dataclass
class Layout:
    """How the rooms of a house in notes stand, before its walls are made."""

    storey: str | None = None
    """The one that lines are about now."""
    inside: Make = GUESSED_INSIDE
    outside: Make = GUESSED_OUTSIDE
    party: Make = GUESSED_PARTY
    open_pairs: set[frozenset[str]] = field(default_factory=set)
    """Rooms that are joined with nothing built between."""
    lines: dict[str, Line] = field(default_factory=dict)
    """The line that each room stands on."""
    parties: dict[tuple[str, str], Line] = field(default_factory=dict)
    """Rooms and sides that a neighbour's house stands against."""
    between: dict[frozenset[str], Make] = field(default_factory=dict)
    about: dict[tuple[str, str], Make] = field(default_factory=dict)
    """What single walls are made of: between two rooms, and on a side of one."""


class Named(Protocol):
    """Whatever has an id."""

    @property
    def id(self) -> str:
        """Its id."""
        ...


@dataclass
class Draft:
    """The parts of a site while notes are read."""

    catalogue: Catalogue
    base: Site | None
    name: str
    place: Place = field(default_factory=Place)
    ground: Ground = field(default_factory=Ground)
    storeys: list[Storey] = field(default_factory=list)
    spaces: list[Space] = field(default_factory=list)
    walls: list[Wall] = field(default_factory=list)
    openings: list[Opening] = field(default_factory=list)
    open_edges: list[OpenEdge] = field(default_factory=list)
    stairs: list[Stair] = field(default_factory=list)
    fixtures: list[Fixture] = field(default_factory=list)
    outlets: list[Outlet] = field(default_factory=list)
    people: list[Person] = field(default_factory=list)
    pets: list[Pet] = field(default_factory=list)
    targets: list[Target] = field(default_factory=list)
    devices: list[Device] = field(default_factory=list)
    zones: list[Zone] = field(default_factory=list)
    parts: list[Part] = field(default_factory=lambda: list(STANDARD_PARTS))
    behaviours: list[Behaviour] = field(default_factory=lambda: list(STANDARD_BEHAVIOURS))
    programme: Programme = field(default_factory=Programme)
    needs: Needs = field(default_factory=Needs)
    readings: list[Reading] = field(default_factory=list)
    layout: Layout = field(default_factory=Layout)
    stretches: list[Stretch] = field(default_factory=list)
    told_behaviours: dict[str, str] = field(default_factory=dict)
    """Behaviours that stand on a device's own line, by the device's id."""
    told_parts: dict[str, tuple[str, ...]] = field(default_factory=dict)
    """Parts that stand on a device's own line, by the device's id."""

    def everything(self) -> list[Named]:
        """All things that have an id: no two of a site have the same."""
        lists: list[Sequence[Named]] = [getattr(self, key) for key in LISTS]
        return [thing for things in (*lists, self.ground.things) for thing in things]


LISTS = (
    "storeys", "spaces", "walls", "openings", "open_edges", "stairs", "fixtures", "outlets", "people", "pets",
    "targets", "devices", "zones", "parts", "behaviours", "readings",
)  # fmt: skip


def begin(catalogue: Catalogue, base: Site | None) -> Draft:
    """An empty draft, or one that starts from a site."""
    if base is None:
        return Draft(catalogue, None, "house")
    draft = Draft(
        catalogue, base, base.name, base.place, base.ground, programme=base.programme, needs=base.needs
    )
    for key in LISTS:
        setattr(draft, key, list(getattr(base, key)))
    return draft


def finish(draft: Draft) -> Site:
    """The site that a draft has become; what the notes did not touch is left out, or left as it was."""
    blank = begin(draft.catalogue, draft.base)
    changed: dict[str, object] = {
        key: tuple(getattr(draft, key)) for key in LISTS if getattr(draft, key) != getattr(blank, key)
    }
    for key in ("name", "place", "ground", "programme", "needs"):
        if getattr(draft, key) != getattr(blank, key):
            changed[key] = getattr(draft, key)
    if draft.base is not None:
        return draft.base.model_copy(update=changed)
    return Site.model_validate(
        {"schema_version": 1, "name": draft.name, "storeys": tuple(draft.storeys), **changed}
    )

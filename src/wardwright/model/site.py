"""One site: the house, the people, the devices, the programme."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property, lru_cache
from typing import Any, Literal, Protocol, Self, TypeVar

from wardwright.model.device import Device
from wardwright.model.fabric import OpenEdge, Space, Stair, Storey, Wall
from wardwright.model.fixture import Fixture, Outlet
from wardwright.model.household import Person, Pet, Target
from wardwright.model.needs import Needs
from wardwright.model.opening import Opening
from wardwright.model.place import Place
from wardwright.model.programme import (
    STANDARD_BEHAVIOURS,
    STANDARD_PARTS,
    Behaviour,
    Part,
    Programme,
    Zone,
)
from wardwright.model.reading import Reading
from wardwright.model.record import Record
from wardwright.model.surroundings import Ground

SCHEMA_VERSION = 1


class _HasId(Protocol):
    @property
    def id(self) -> str: ...


Named = TypeVar("Named", bound=_HasId)


class Site(Record):
    """One site. Immutable: an edit makes a new one that shares what did not change."""

    schema_version: Literal[1] = 1
    name: str
    place: Place = Place()
    ground: Ground = Ground()
    storeys: tuple[Storey, ...]
    spaces: tuple[Space, ...] = ()
    walls: tuple[Wall, ...] = ()
    openings: tuple[Opening, ...] = ()
    open_edges: tuple[OpenEdge, ...] = ()
    stairs: tuple[Stair, ...] = ()
    fixtures: tuple[Fixture, ...] = ()
    outlets: tuple[Outlet, ...] = ()
    people: tuple[Person, ...] = ()
    pets: tuple[Pet, ...] = ()
    targets: tuple[Target, ...] = ()
    devices: tuple[Device, ...] = ()
    zones: tuple[Zone, ...] = ()
    parts: tuple[Part, ...] = STANDARD_PARTS
    behaviours: tuple[Behaviour, ...] = STANDARD_BEHAVIOURS
    programme: Programme = Programme()
    needs: Needs = Needs()
    readings: tuple[Reading, ...] = ()

    @cached_property
    def bare(self) -> Site:
        """The house alone, with nothing in it that can be set up in an hour; equal houses give the same object.

        What depends on the house only is remembered by it, so that moving a device works none of it out again.
        """
        return _one_of_its_kind(
            self.model_copy(
                update={
                    "name": "bare house",
                    "outlets": (),
                    "people": (),
                    "pets": (),
                    "targets": (),
                    "devices": (),
                    "zones": (),
                    "parts": STANDARD_PARTS,
                    "behaviours": STANDARD_BEHAVIOURS,
                    "programme": Programme(),
                    "needs": Needs(),
                    "readings": (),
                }
            )
        )

    def model_copy(self, *, update: Mapping[str, Any] | None = None, deep: bool = False) -> Self:
        """A copy with some fields replaced; it keeps the bare house if nothing of that is replaced."""
        twin = super().model_copy(update=update, deep=deep)
        kept = self.__dict__.get("bare")
        if kept is not None and not deep and not _OF_THE_HOUSE & (update or {}).keys():
            twin.__dict__["bare"] = kept
        return twin

    def storey(self, storey_id: str) -> Storey:
        """Look up a storey by its id; KeyError if there is none."""
        return _by_id(self.storeys, storey_id)

    def space(self, space_id: str) -> Space:
        """Look up a space by its id; KeyError if there is none."""
        return _by_id(self.spaces, space_id)

    def wall(self, wall_id: str) -> Wall:
        """Look up a wall by its id; KeyError if there is none."""
        return _by_id(self.walls, wall_id)

    def opening(self, opening_id: str) -> Opening:
        """Look up an opening by its id; KeyError if there is none."""
        return _by_id(self.openings, opening_id)

    def device(self, device_id: str) -> Device:
        """Look up a device by its id; KeyError if there is none."""
        return _by_id(self.devices, device_id)

    def behaviour(self, behaviour_id: str) -> Behaviour:
        """Look up a behaviour by its id; KeyError if there is none."""
        return _by_id(self.behaviours, behaviour_id)


_OF_THE_HOUSE = {
    "schema_version", "place", "ground", "storeys", "spaces", "walls", "openings", "open_edges", "stairs", "fixtures",
}  # fmt: skip


@lru_cache(maxsize=256)
def _one_of_its_kind(site: Site) -> Site:
    return site


def _by_id(records: tuple[Named, ...], wanted: str) -> Named:
    for record in records:
        if record.id == wanted:
            return record
    raise KeyError(wanted)

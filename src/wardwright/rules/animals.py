"""The animals of a site: how big, how high they get, and where they may be."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.errors import CatalogueError, NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Animal, Catalogue
from wardwright.model.fabric import Space
from wardwright.model.household import Pet
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.rules.ahead import Ahead


class Roaming(NamedTuple):
    """An animal, and what it can get up to."""

    pet: Pet
    height_m: float
    mass_kg: float
    row: Animal
    """What is usual for its kind."""
    height_basis: Basis
    mass_basis: Basis
    spaces: tuple[Space, ...]
    """Where it may be while the house is set."""

    @property
    def rooms(self) -> frozenset[str]:
        """Ids of the spaces where it may be while the house is set."""
        return frozenset(space.id for space in self.spaces)

    def floor_in(self, ahead: Ahead) -> FloatArray:
        """Free floor on a detector's storey where it may walk, shape (N, 2). [m]"""
        cells = ahead.cells
        points, owner = cells.points(), cells.spaces[cells.free]
        indexes = [i for i, space in enumerate(ahead.level.parts.spaces) if space.id in self.rooms]
        floor: FloatArray = points[np.isin(owner, indexes)]
        return floor


def animals(site: Site, catalogue: Catalogue) -> tuple[Roaming, ...]:
    """All animals, by id: what is told of each, and what is usual for its kind where nothing is.

    Parameters
    ----------
    site : Site
        The site with its pets.
    catalogue : Catalogue
        What animals of each kind can get up to.

    Returns
    -------
    tuple of Roaming
        At least one.

    Raises
    ------
    NotComputable
        If no animal is told of.
    CatalogueError
        If the catalogue has no row for a kind.
    """
    if not site.pets:
        raise NotComputable("no animal is told of", cure="Say which animals live there, if any do")
    return tuple(_roaming(site, catalogue, pet) for pet in sorted(site.pets, key=lambda one: one.id))


def _roaming(site: Site, catalogue: Catalogue, pet: Pet) -> Roaming:
    row = next((one for one in catalogue.animals if one.id == pet.kind), None)
    if row is None:
        raise CatalogueError(
            f"there is no animal '{pet.kind}'", where="catalogue", cure="Add its row to pets.toml"
        )
    named = set(pet.spaces) or {space.id for space in site.spaces if space.is_protected}
    height, mass = pet.basis_of("height_m"), pet.basis_of("mass_kg")
    return Roaming(
        pet,
        row.height_m if height == "default" else pet.height_m,
        row.mass_kg if mass == "default" else pet.mass_kg,
        row,
        height,
        mass,
        tuple(space for space in sorted(site.spaces, key=lambda one: one.id) if space.id in named),
    )

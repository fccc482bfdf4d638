"""An intruder's paces, and the household's."""

from __future__ import annotations

from typing import Literal

from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.physics.walking.from_site import Paces


def paces_of(catalogue: Catalogue) -> Paces:
    """A hurried intruder's likely paces: for choosing the fastest way, and for the design case."""
    return Paces(
        catalogue.figure("pace-hurried").value,
        catalogue.figure("stairs-share").value,
        catalogue.figure("pass-door").value,
    )


def walking_pace(catalogue: Catalogue, pace: Literal["slow", "usual", "quick"]) -> Figure:
    """How fast somebody of the household walks on the flat.

    Parameters
    ----------
    catalogue : Catalogue
        Its walkers and figures.
    pace : str
        As a person's record says it.

    Returns
    -------
    Figure
        Likely, low and high. [m/s]

    Raises
    ------
    CatalogueError
        If the catalogue has no walker of that pace.
    """
    for walker in catalogue.walkers:
        if walker.id == pace:
            return catalogue.figure(walker.pace_figure)
    raise CatalogueError(f"there is no walker '{pace}'", where="catalogue", cure="Add its row to people.toml")

"""What the catalogue's rows are: device sheets, constructions, glazings, locks, people, pets, figures.

The rows themselves are files under ``wardwright/catalogue``; `store` reads them and hands them on.
"""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from wardwright.errors import CatalogueError
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.record import Id, Record
from wardwright.model.rows import Row, Source


class Figure(Row):
    """One uncertain number of the world, with its range."""

    value: float
    low: float
    high: float
    unit: str


class Construction(Row):
    """What a wall or floor is made of."""

    layers: tuple[tuple[str, float], ...] = ()
    """Material and thickness, outside first. [m]"""


class Glazing(Row):
    """A pane a person might come through."""

    can_be_broken: bool = True
    """Whether a hand tool takes it out in seconds."""
    break_figure: Id = "break-glass"
    """The figure that says how long it holds."""
    is_coated: bool = False
    """Whether a metal film on it keeps heat, and radio, in."""
    thickness_mm: Annotated[float, Field(gt=0, le=100)] = 4.0
    """Of all its glass together. [mm]"""


class Lock(Row):
    """How long a shut and locked leaf holds."""

    force_figure: Id
    """The figure that says how long it holds."""


class Walker(Row):
    """How somebody of one pace gets about: a row for each word that a person's `pace` may be."""

    pace_figure: Id
    """The figure that says how fast they walk on the flat."""
    reach_low_m: Annotated[float, Field(gt=0, le=2.5)]
    reach_high_m: Annotated[float, Field(gt=0, le=2.5)]
    """Between which heights they reach a button without stretching or stooping. [m]"""


class Animal(Row):
    """What an animal of one kind can get up to: a row for each word that a pet's `kind` may be."""

    height_m: Annotated[float, Field(gt=0, le=1.5)]
    """Standing. [m]"""
    mass_kg: Annotated[float, Field(gt=0, le=120)]
    jump_m: Annotated[float, Field(ge=0, le=3)]
    """The height it gets onto in one jump. [m]"""
    climbs: bool = False
    """Whether it gets onto shelves and curtains by stages."""


class Catalogue(Record):
    """All rows together."""

    sheets: tuple[DeviceSheet, ...] = ()
    constructions: tuple[Construction, ...] = ()
    glazings: tuple[Glazing, ...] = ()
    locks: tuple[Lock, ...] = ()
    figures: tuple[Figure, ...] = ()
    walkers: tuple[Walker, ...] = ()
    animals: tuple[Animal, ...] = ()
    sources: tuple[Source, ...] = ()

    def sheet(self, sheet_id: str) -> DeviceSheet:
        """Look up one device sheet.

        Parameters
        ----------
        sheet_id : str
            Its id.

        Returns
        -------
        DeviceSheet
            The row.

        Raises
        ------
        CatalogueError
            If there is none of that id.
        """
        for row in self.sheets:
            if row.id == sheet_id:
                return row
        raise CatalogueError(
            f"there is no device sheet '{sheet_id}'",
            where="catalogue",
            cure="Add it as a sheet file, or use one of " + ", ".join(row.id for row in self.sheets),
        )

    def figure(self, figure_id: str) -> Figure:
        """Look up one figure.

        Parameters
        ----------
        figure_id : str
            Its id.

        Returns
        -------
        Figure
            The row.

        Raises
        ------
        CatalogueError
            If there is none of that id.
        """
        for row in self.figures:
            if row.id == figure_id:
                return row
        raise CatalogueError(
            f"there is no figure '{figure_id}'", where="catalogue", cure="Add its row to figures.toml"
        )

"""What the catalogue's rows are: device sheets, constructions, glazings, locks, people, pets, figures, limits, radio.

The rows themselves are files under ``wardwright/catalogue``; `store` reads them and hands them on.
"""

from __future__ import annotations

from functools import cached_property
from typing import Annotated

from pydantic import Field

from wardwright.errors import CatalogueError
from wardwright.model.camera_rows import CameraEdition, Task
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.entry_shares import EntryShare
from wardwright.model.limits import Limit
from wardwright.model.power_sheets import Cell
from wardwright.model.radio_rows import RadioLaw, RadioMaterial, WallLoss
from wardwright.model.record import Id, Record
from wardwright.model.rows import Row, Source
from wardwright.model.sound_rows import Absorption, Spectrum, Transmission
from wardwright.model.tax_rates import TaxRate


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
    jump_low_m: Annotated[float, Field(ge=0, le=3)]
    jump_high_m: Annotated[float, Field(ge=0, le=3)]
    """What nearly all of its kind get onto, and what few do. [m]"""
    leap_m: Annotated[float, Field(gt=0, le=10)]
    """The gap it crosses in one jump; it shrinks and grows with the height. [m]"""
    pace_m_s: Annotated[float, Field(gt=0, le=5)]
    """Walking. [m/s]"""
    half_width_m: Annotated[float, Field(gt=0, le=0.5)]
    """Half its width, seen from where it is seen most. [m]"""
    climbs: bool = False
    """Whether it gets onto shelves by stages, whatever their height."""


class Catalogue(Record):
    """All rows together."""

    sheets: tuple[DeviceSheet, ...] = ()
    constructions: tuple[Construction, ...] = ()
    glazings: tuple[Glazing, ...] = ()
    locks: tuple[Lock, ...] = ()
    figures: tuple[Figure, ...] = ()
    walkers: tuple[Walker, ...] = ()
    animals: tuple[Animal, ...] = ()
    cells: tuple[Cell, ...] = ()
    tasks: tuple[Task, ...] = ()
    limits: tuple[Limit, ...] = ()
    entry_shares: tuple[EntryShare, ...] = ()
    radio_materials: tuple[RadioMaterial, ...] = ()
    radio_laws: tuple[RadioLaw, ...] = ()
    wall_losses: tuple[WallLoss, ...] = ()
    transmissions: tuple[Transmission, ...] = ()
    absorptions: tuple[Absorption, ...] = ()
    spectrums: tuple[Spectrum, ...] = ()
    tax_rates: tuple[TaxRate, ...] = ()
    sources: tuple[Source, ...] = ()

    @cached_property
    def _sheet_by_id(self) -> dict[str, DeviceSheet]:
        # Of rows with one id the first counts.
        return {row.id: row for row in reversed(self.sheets)}

    @cached_property
    def _figure_by_id(self) -> dict[str, Figure]:
        return {row.id: row for row in reversed(self.figures)}

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
        row = self._sheet_by_id.get(sheet_id)
        if row is not None:
            return row
        raise CatalogueError(
            f"there is no device sheet '{sheet_id}'",
            where="catalogue",
            cure="Add it as a sheet file, or use one of " + ", ".join(row.id for row in self.sheets),
        )

    def tasks_of(self, edition: CameraEdition) -> tuple[Task, ...]:
        """The task words of one edition, the least dense first."""
        chosen = (row for row in self.tasks if row.edition == edition)
        return tuple(sorted(chosen, key=lambda row: row.density_px_m))

    def cell(self, cell_id: str) -> Cell:
        """Look up one kind of cell by its id; CatalogueError if there is none."""
        for row in self.cells:
            if row.id == cell_id:
                return row
        raise CatalogueError(
            f"there is no cell '{cell_id}'", where="catalogue", cure="Add its row as [[cell]]"
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
        row = self._figure_by_id.get(figure_id)
        if row is not None:
            return row
        raise CatalogueError(
            f"there is no figure '{figure_id}'", where="catalogue", cure="Add its row to figures.toml"
        )

    def tax_rate(self, country: str | None) -> TaxRate | None:
        """The tax of a country; None where the country, or its row, is not known."""
        return next((row for row in self.tax_rates if row.country == country), None)

    def limit(self, limit_id: str, pack: str) -> Limit:
        """Look up one limit that holds in a rule pack, whatever the country.

        Parameters
        ----------
        limit_id : str
            Its id.
        pack : str
            The rule pack, as a site's place names it.

        Returns
        -------
        Limit
            The row of that pack, else the row for any.

        Raises
        ------
        CatalogueError
            If neither is there.
        """
        found = [row for row in self.limits_in(limit_id, pack) if row.country is None]
        if not found:
            raise CatalogueError(
                f"there is no limit '{limit_id}' in the rule pack '{pack}'",
                where="catalogue",
                cure="Add its row to limits.toml",
            )
        return found[0]

    def limits_in(self, limit_id: str, pack: str, country: str | None = None) -> tuple[Limit, ...]:
        """All limits of one id that hold in a place: of its pack, for any pack, and of its country.

        Parameters
        ----------
        limit_id : str
            Their id.
        pack : str
            The rule pack, as a site's place names it.
        country : str, optional
            ISO 3166 code; None: not known, and no country's own limits are given.

        Returns
        -------
        tuple of Limit
            Those of the pack first; empty if it has none. Which of them binds is for the rule to say.
        """
        held = [
            row
            for row in self.limits
            if row.id == limit_id and row.pack in (pack, "any") and row.country in (None, country)
        ]
        return tuple(sorted(held, key=lambda row: (row.pack == "any", row.country is not None)))

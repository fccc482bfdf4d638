"""What the catalogue's rows are: device sheets, constructions, glazings, locks, figures.

The rows themselves are files under ``wardwright/catalogue``; `store` reads them and hands them on.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.errors import CatalogueError
from wardwright.model.device import DeviceKind
from wardwright.model.record import Id, Record

Mark = Literal["standard", "published", "derived", "common practice", "from memory", "assumption"]
"""How a figure is known."""


class Row(Record):
    """A row of data: every one has its source and its mark."""

    id: Id
    name: str
    source: str
    """Where it is from: a key of sources.toml, or `own` for values made for this catalogue."""
    mark: Mark


class Source(Record):
    """A book, standard or paper that rows refer to by its key."""

    id: Id
    title: str
    edition: str = ""
    """Edition or year."""
    seen: str
    """How far it was read for this program."""


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


class Lock(Row):
    """How long a shut and locked leaf holds."""

    force_figure: Id
    """The figure that says how long it holds."""


class BeamRow(Record):
    """One row of heat-sensing zones of a movement detector."""

    name: str
    pairs: Annotated[int, Field(ge=1, le=64)]
    """Zone pairs across the fan, evenly spread over its angle."""
    depression_deg: Annotated[float, Field(ge=0, le=90)]
    """Below level, when mounted upright. [deg]"""


class MovementSheet(Record):
    """What a movement detector's sheet says."""

    reach_m: Annotated[float, Field(gt=0, le=60)]
    angle_deg: Annotated[float, Field(gt=0, le=360)]
    """The whole angle of the fan. [deg]"""
    height_low_m: float
    height_high_m: float
    """Between which heights it is to be mounted. [m]"""
    rows: Annotated[tuple[BeamRow, ...], Field(min_length=1)]
    pair_split_deg: Annotated[float, Field(gt=0, le=10)] = 1.6
    """Between the two halves of a pair. [deg]"""
    edges_needed: Annotated[int, Field(ge=1, le=10)] = 2
    """Zone edges that must be crossed. [-]"""
    window_s: Annotated[float, Field(gt=0, le=60)] = 5.0
    """Within this time. [s]"""
    least_contrast_k: Annotated[float, Field(gt=0, le=10)] = 1.7
    sleep_s: Annotated[float, Field(ge=0, le=900)] = 0.0
    """How long it stays quiet after it has signalled. [s]"""
    passes_animals_up_to_kg: float = 0.0
    hot_clearance_m: Annotated[float, Field(ge=0, le=5)] = 1.0
    """How far it is to be kept from things that get warm. [m]"""


class ContactSheet(Record):
    """What an opening contact's sheet says."""

    gap_m: Annotated[float, Field(gt=0, le=0.2)]
    """The widest gap between its parts. [m]"""
    is_for_outdoors: bool = False
    """Whether the electronics stand rain."""


class SounderSheet(Record):
    """What a sounder's sheet says."""

    level_dba: Annotated[float, Field(gt=40, le=140)]
    """At 1 m. [dB re 20 uPa, A-weighted]"""
    is_self_powered: bool = False
    """Whether it sounds by itself when it loses the control unit."""
    is_outside: bool = False


class ControlSheet(Record):
    """What a control unit's sheet says."""

    display_length: Annotated[int, Field(ge=4, le=64)] = 16
    """Letters that a zone's name may have."""
    zones: Annotated[int, Field(ge=1)] = 32
    users: Annotated[int, Field(ge=1)] = 16
    has_sounder: bool = False
    has_keypad: bool = False


class DeviceSheet(Row):
    """What a device is: the maker's sheet, in one form."""

    kind: DeviceKind
    grade: Annotated[int, Field(ge=1, le=4)] | None = None
    environmental_class: Literal["I", "II", "III", "IV"] | None = None
    link: Literal["radio", "wired"] = "radio"
    frequency_mhz: float | None = None
    price: Annotated[float, Field(ge=0)] = 0.0
    """Before tax, in the catalogue's own currency."""
    fit_min: Annotated[float, Field(ge=0)] = 15.0
    """Time to fit one. [min]"""
    service_clearance_m: float = 0.0
    movement: MovementSheet | None = None
    contact: ContactSheet | None = None
    sounder: SounderSheet | None = None
    control: ControlSheet | None = None


class Catalogue(Record):
    """All rows together."""

    sheets: tuple[DeviceSheet, ...] = ()
    constructions: tuple[Construction, ...] = ()
    glazings: tuple[Glazing, ...] = ()
    locks: tuple[Lock, ...] = ()
    figures: tuple[Figure, ...] = ()
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

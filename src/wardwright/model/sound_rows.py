"""Rows of the catalogue about sound: what lets it through, what swallows it, and how it is made up."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.device import DeviceKind
from wardwright.model.fabric import SpaceUse
from wardwright.model.fixture import FixtureKind
from wardwright.model.record import Id
from wardwright.model.rows import Row

Loss = Annotated[float, Field(ge=0, le=100)]
Coefficient = Annotated[float, Field(ge=0, lt=1)]
Share = Annotated[float, Field(ge=0, le=1)]
LeafKind = Literal["inside-door", "outside-door", "garage-door", "hatch"]
"""Leaves that are told apart by what they are usually made of."""
Surface = Literal["wall", "ceiling", "floor", "pane", "leaf", "furnishing", "covering"]
"""What swallows sound in a room."""


class Transmission(Row):
    """What an element takes off sound that goes through it, measured in a laboratory."""

    loss_db: tuple[Loss, Loss, Loss, Loss, Loss, Loss]
    """At 125, 250, 500, 1000, 2000 and 4000 Hz. [dB]"""
    constructions: tuple[Id, ...] = ()
    """Constructions of walls and floors that it stands for."""
    glazings: tuple[Id, ...] = ()
    """Glazings that it stands for."""
    leaves: tuple[LeafKind, ...] = ()
    """Leaves that it stands for."""


class Absorption(Row):
    """What a surface swallows of the sound that meets it."""

    coefficients: tuple[Coefficient, Coefficient, Coefficient, Coefficient, Coefficient, Coefficient]
    """At 125, 250, 500, 1000, 2000 and 4000 Hz. [-]"""
    of: Surface
    uses: tuple[SpaceUse, ...] = ()
    """Uses of the spaces that have it; none named: all that no other row names."""
    constructions: tuple[Id, ...] = ()
    """For a wall: constructions that have it; none named: all that no other row names."""
    fixtures: tuple[FixtureKind, ...] = ()
    """For furnishing: the kinds of fixtures that swallow so over their top; none named: see `floor_share`."""
    floor_share: Share = 0.0
    """For furnishing of a space in which less is drawn: its area as a share of the floor. [-]"""


class Spectrum(Row):
    """How the A-weighted sound of a device is made up, where its sheet does not state its tone."""

    shares: tuple[Share, Share, Share, Share, Share, Share]
    """Of its A-weighted energy, at 125, 250, 500, 1000, 2000 and 4000 Hz. [-]"""
    kinds: tuple[DeviceKind, ...]
    """Devices that sound so."""

"""Rows of the catalogue that only radio reads: materials, distance laws, and what a wall of a class takes."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.rows import Row


class RadioMaterial(Row):
    """How a building material behaves in a radio field: each property follows a power of the frequency in GHz."""

    permittivity: Annotated[float, Field(ge=1)]
    """Relative, at 1 GHz. [-]"""
    permittivity_power: float = 0.0
    conductivity_s_m: Annotated[float, Field(ge=0)] = 0.0
    """At 1 GHz. [S/m]"""
    conductivity_power: float = 0.0
    from_ghz: Annotated[float, Field(gt=0)] = 1.0
    to_ghz: Annotated[float, Field(gt=0)] = 100.0
    """Between which frequencies the row was stated; outside it is stretched. [GHz]"""
    wall_class: Literal["light", "masonry", "concrete", "timber", "glass", "coated", "metal", "none"] = "none"
    """What a wall counts as by this layer; the heaviest layer of a wall decides."""


class RadioLaw(Row):
    """A law of how a level falls with distance, by its published figures."""

    law: Literal["cost-231", "p1238-legacy", "p1238-site-general"]
    slope_db: float = 20.0
    """For each tenfold distance. [dB]"""
    at_one_db: float = 0.0
    """At 1 m and 1 GHz, or the law's constant. [dB]"""
    by_frequency_db: float = 20.0
    """For each tenfold frequency. [dB]"""
    floors_db: tuple[float, ...] = ()
    """Loss of the first floor, or through one, two, three floors. [dB]"""
    bend: float = 0.46
    """How much less each further floor takes. [-]"""
    from_mhz: Annotated[float, Field(gt=0)]
    to_mhz: Annotated[float, Field(gt=0)]
    """The band that it was stated for. [MHz]"""
    spread_db: float | None = None
    """Of the shadowing about its median; None: not stated. [dB]"""


class WallLoss(Row):
    """What one wall, leaf, pane, floor, thing or body of a class takes, by judgement, at 868 MHz."""

    value_db: Annotated[float, Field(ge=0)]
    low_db: Annotated[float, Field(ge=0)]
    high_db: Annotated[float, Field(ge=0)]
    """5th and 95th percentile of what is plausible. [dB]"""
    layers: tuple[tuple[str, float], ...] = ()
    """The build that this was judged for: other builds of the class differ by what the slab formula says. [m]"""

"""Rows that say by which ways intruders come in, by country and type of house."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.rows import Row

HouseType = Literal["house", "flat"]
EntryKind = Literal["door", "window", "garage-door"]
Face = Literal["front", "back"]
Height = Literal["ground", "upper", "below"]


class EntryShare(Row):
    """The share of one class of openings; a field that is None says nothing."""

    share: Annotated[float, Field(gt=0, le=1)]
    """Of all intruders. [-]"""
    country: Annotated[str, Field(pattern=r"^[A-Z]{2}$")] | None = None
    """ISO 3166 code; None: any country that has no rows of its own."""
    house: HouseType | None = None
    kind: EntryKind | None = None
    face: Face | None = None
    """`front`: where the entry door is; `back`: every other side."""
    level: Height | None = None
    """How high it lies above the ground outside."""
    note: str = ""
    """What the source does not say."""

"""What a picture is dense enough for: the tasks of the standard on video surveillance, each edition by name."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.rows import Row

CameraEdition = Literal["2014", "2025"]
"""Editions of IEC 62676-4."""


class Task(Row):
    """One task word with the density it asks for; its name is the word."""

    edition: CameraEdition
    density_px_m: Annotated[float, Field(gt=0)]
    """Picture elements for a metre, at least. [px/m]"""
    shows_a_face: bool = False
    """Whether somebody who is known is told apart by their face from this density on."""

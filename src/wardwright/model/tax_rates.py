"""Tax on a fitter's work, by country, as rows of data."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from wardwright.model.rows import Row

Currency = Annotated[str, Field(pattern=r"^[A-Z]{3}$")]
"""ISO 4217 code."""


class TaxRate(Row):
    """What a country puts on a fitter's work, and its currency."""

    country: Annotated[str, Field(pattern=r"^[A-Z]{2}$")]
    """ISO 3166 code."""
    currency: Currency
    percent: Annotated[float, Field(ge=0, le=100)] | None = None
    """Of the price before tax; None: there is no one rate. [%]"""
    note: str = ""
    """What else may hold."""

"""Where the house stands and which rules apply there."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Marked


class Place(Marked):
    """Where the house stands and which rules apply there."""

    country: Annotated[str, Field(pattern=r"^[A-Z]{2}$")] | None = None
    """ISO 3166 country code."""
    rule_pack: Literal["uk-eu", "us"] = "uk-eu"
    """Which rules and editions apply."""
    latitude_deg: Annotated[float, Field(ge=-90, le=90)] | None = None
    longitude_deg: Annotated[float, Field(ge=-180, le=180)] | None = None
    north_deg: Annotated[float, Field(ge=-360, le=360)] | None = None
    """Where true north lies on the plan: degrees anticlockwise from the plan's y axis. None: unknown."""
    time_zone: (
        Annotated[str, Field(max_length=64, pattern=r"^[A-Za-z0-9_+-]+(/[A-Za-z0-9_+-]+)*$")] | None
    ) = None
    """Name in the time zone database, such as Europe/London; None: the country's, where it has only one."""
    warm_room_c: Annotated[float, Field(ge=-10, le=50)] = 28.0
    """The warmest that the rooms are expected to be while set. [deg C]"""
    usual_room_c: Annotated[float, Field(ge=-10, le=50)] = 20.0
    """The usual room temperature while set. [deg C]"""

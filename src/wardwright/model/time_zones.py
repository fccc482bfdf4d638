"""Which time zone a place keeps, by the time zone database that every system carries."""

from __future__ import annotations

from functools import lru_cache
from types import MappingProxyType
from zoneinfo import ZoneInfo

from wardwright.model.place import Place

ONE_ZONE = MappingProxyType(
    {
        "AT": "Europe/Vienna", "BE": "Europe/Brussels", "BG": "Europe/Sofia", "CH": "Europe/Zurich",
        "CY": "Asia/Nicosia", "CZ": "Europe/Prague", "DE": "Europe/Berlin", "DK": "Europe/Copenhagen",
        "EE": "Europe/Tallinn", "FI": "Europe/Helsinki", "FR": "Europe/Paris", "GB": "Europe/London",
        "GR": "Europe/Athens", "HR": "Europe/Zagreb", "HU": "Europe/Budapest", "IE": "Europe/Dublin",
        "IS": "Atlantic/Reykjavik", "IT": "Europe/Rome", "LI": "Europe/Vaduz", "LT": "Europe/Vilnius",
        "LU": "Europe/Luxembourg", "LV": "Europe/Riga", "MT": "Europe/Malta", "NL": "Europe/Amsterdam",
        "NO": "Europe/Oslo", "PL": "Europe/Warsaw", "RO": "Europe/Bucharest", "SE": "Europe/Stockholm",
        "SI": "Europe/Ljubljana", "SK": "Europe/Bratislava",
    }
)  # fmt: skip
"""Countries that keep one time, islands far off left out, with their zone in the time zone database."""


@lru_cache(maxsize=64)
def is_time_zone(name: str) -> bool:
    """Whether the time zone database knows a name."""
    try:
        ZoneInfo(name)
    except (KeyError, ValueError, OSError):
        return False
    return True


def time_zone_of(place: Place) -> str | None:
    """The zone that a place keeps: as told, or its country's only one; None where neither is known.

    Examples
    --------
    >>> time_zone_of(Place(country="GB")), time_zone_of(Place(country="US"))
    ('Europe/London', None)
    """
    if place.time_zone is not None:
        return place.time_zone
    return None if place.country is None else ONE_ZONE.get(place.country)

"""Mends of what is set in a part, turned into edits."""

from __future__ import annotations

from typing import Any

from wardwright.model.edits import Operation, Tell
from wardwright.model.programme import Zone
from wardwright.model.site import Site

Operations = tuple[Operation, ...]


def out_of_part(site: Site, subject: str, values: dict[str, Any]) -> Operations | None:
    """Take a zone out of a part.

    Parameters
    ----------
    site : Site
        The site that the mend was worked out for.
    subject : str
        Id of the zone.
    values : dict
        `without`: id of the part.

    Returns
    -------
    tuple of Operation or None
        None where the zone is gone, or out of that part already.
    """
    zone = _zone(site, subject)
    if zone is None or values.get("without") not in zone.parts:
        return None
    parts = [part for part in zone.parts if part != values["without"]]
    return (Tell(of="zones", id=zone.id, facts={"parts": parts}),)


def into_part(site: Site, subject: str, values: dict[str, Any]) -> Operations | None:
    """Put a zone into one part more.

    Parameters
    ----------
    site : Site
        The site that the mend was worked out for.
    subject : str
        Id of the zone.
    values : dict
        `part`: id of the part.

    Returns
    -------
    tuple of Operation or None
        None where the zone or the part is gone, or it is in that part already.
    """
    zone = _zone(site, subject)
    part = values.get("part")
    if zone is None or part in zone.parts or not any(one.id == part for one in site.parts):
        return None
    return (Tell(of="zones", id=zone.id, facts={"parts": [*zone.parts, part]}),)


def otherwise_part_set(site: Site, subject: str, values: dict[str, Any]) -> Operations | None:
    """Give a zone another behaviour in every part but the full one.

    Parameters
    ----------
    site : Site
        The site that the mend was worked out for.
    subject : str
        Id of the zone.
    values : dict
        `behaviour`: id of how it is to behave.

    Returns
    -------
    tuple of Operation or None
        None where the zone, or the behaviour, is gone.
    """
    is_known = any(one.id == values.get("behaviour") for one in site.behaviours)
    if not is_known or _zone(site, subject) is None:
        return None
    return (Tell(of="zones", id=subject, facts={"behaviour_part_set": values["behaviour"]}),)


def _zone(site: Site, ident: str) -> Zone | None:
    return next((one for one in site.zones if one.id == ident), None)

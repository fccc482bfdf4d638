"""The sun that something smooth throws on a detector."""

from __future__ import annotations

from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.daylight import GlossyFloor, Mirror
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.physics.sunlight.from_site import beams_thrown
from wardwright.physics.sunlight.shine import Beam
from wardwright.rules.sun_on_detectors import at_of, nameless, sun_on, views_of, within

THROWN_LIMIT_MIN = 60.0
"""More minutes a year of sun thrown on a lens are named. [min] (assumption, likewise)"""


def thrown_on(
    site: Site, catalogue: Catalogue, device: Device
) -> tuple[tuple[GlossyFloor | Mirror, Beam], ...]:
    """The sun that glossy floors and mirrors in its view throw on a movement detector, through bare panes.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        For its sheet.
    device : Device
        The detector.

    Returns
    -------
    tuple of (GlossyFloor or Mirror, Beam)
        What throws it, and when; at the north as told, or the one that is worst for direct sun.

    Raises
    ------
    NotComputable
        If the latitude is not known.
    """
    return _thrown_on(site.bare, catalogue, nameless(device))


@lru_cache(maxsize=256)
def _thrown_on(
    house: Site, catalogue: Catalogue, device: Device
) -> tuple[tuple[GlossyFloor | Mirror, Beam], ...]:
    sun, views = sun_on(house, catalogue, device), views_of(house, catalogue, device)
    if not views:
        return ()
    at = at_of(house, catalogue, device)
    found = []
    for thing, beam in beams_thrown(house, at.lens, views[1], north=sun.north):
        kept = within(beam, at, half=at.half)
        if len(kept.steps) and not beam.is_covered:
            found.append((thing, kept))
    return tuple(found)

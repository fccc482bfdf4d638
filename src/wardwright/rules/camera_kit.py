"""The cameras that rules ask about, with their sheets, in the order of ids."""

from __future__ import annotations

from wardwright.errors import CatalogueError, NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import CameraSheet
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.rules.footings import is_in_the_open
from wardwright.rules.kit import some_of

PRIVATE_USES = ("bedroom", "bathroom", "toilet")
"""Rooms where nobody expects to be looked at. (common practice)"""


def cameras(site: Site, catalogue: Catalogue) -> tuple[tuple[Device, CameraSheet], ...]:
    """All cameras with what their sheets say; NoneOfAKind if there is none."""
    pairs = []
    for device, sheet in some_of(site, catalogue, "camera", cure="Add the cameras that are planned"):
        if sheet.camera is None:
            raise CatalogueError(
                "a camera without a table 'camera'",
                where=f"catalogue, sheet '{sheet.id}'",
                cure="Add [sheet.camera] to it",
            )
        pairs.append((device, sheet.camera))
    return tuple(pairs)


def outside_cameras(site: Site, catalogue: Catalogue) -> tuple[tuple[Device, CameraSheet], ...]:
    """The cameras that hang in the open air; NotComputable if there is none."""
    found = tuple(pair for pair in cameras(site, catalogue) if is_in_the_open(site, standing(site, pair[0])))
    if not found:
        raise NotComputable("no camera outside", cure="Add the outside cameras that are planned")
    return found


def inside_cameras(site: Site, catalogue: Catalogue) -> tuple[tuple[Device, CameraSheet], ...]:
    """The cameras that hang indoors; NotComputable if there is none."""
    found = tuple(
        pair for pair in cameras(site, catalogue) if not is_in_the_open(site, standing(site, pair[0]))
    )
    if not found:
        raise NotComputable("no camera inside", cure="Add the inside cameras that are planned")
    return found

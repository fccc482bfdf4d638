"""What a device notices of somebody who comes through an opening: by the leaf, by blows, by the sound of glass."""

from __future__ import annotations

from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, OpeningMount
from wardwright.model.opening import Manner, Opening
from wardwright.model.placement import is_way_in
from wardwright.model.site import Site
from wardwright.rules.felt_blows import feels
from wardwright.rules.heard_panes import is_heard

AT_OPENINGS: tuple[DeviceKind, ...] = ("opening-contact", "shock-detector", "glass-break-detector")
"""Kinds of detector that notice how an opening is come through, and nothing of who walks about inside."""


@lru_cache(maxsize=8192)
def notices_at_the_opening(
    house: Site, catalogue: Catalogue, device: Device, *, opening: Opening, manner: Manner
) -> bool:
    """Whether a device notices, by the time it is open, that somebody comes through an opening.

    An opening contact notices that a shut leaf is opened. A shock detector notices blows that it feels at every
    corner: that the glass of a shut leaf is broken, or a shut and locked one forced; not that one is only opened.
    A glass-break detector notices a pane that it hears and whose kind and size its sheet names.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets.
    device : Device
        Of any kind: others than these notice nothing here.
    opening : Opening
        What is come through.
    manner : str
        How.

    Returns
    -------
    bool
        False where what it hangs on is not known: a pane of unknown glass is not taken for heard.
    """
    row = catalogue.sheet(device.sheet)
    is_shut = opening.habit == "shut" and opening.kind != "gap"
    if row.kind == "opening-contact":
        return manner == "opened" and is_shut and is_on(device, opening)
    if row.kind == "shock-detector":
        is_struck = manner == "through the glass" or _is_forced(house, opening)
        return is_shut and is_struck and feels(device, row, opening)
    if row.kind == "glass-break-detector":
        return manner == "through the glass" and is_heard(house, device, row, pane=opening)
    return False


def is_on(device: Device, opening: Opening) -> bool:
    """Whether a device is fixed to an opening."""
    mount = device.mount
    return isinstance(mount, OpeningMount) and mount.opening == opening.id


def _is_forced(house: Site, opening: Opening) -> bool:
    """Whether a shut leaf gives way to force only; inside the house nobody is taken to lock any."""
    return opening.is_locked and opening.lock != "none" and is_way_in(house, opening)

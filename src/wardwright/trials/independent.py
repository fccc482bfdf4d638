"""Which devices are one notice, and which count where a second, independent one is to confirm the first."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.limits import Limit
from wardwright.model.placement import space_at, standing
from wardwright.model.programme import Zone
from wardwright.model.site import Site

CONFIRMATION = "confirmation-window"
"""The limit within which a second detection confirms the first, by rule pack."""


def confirmation_window(site: Site, catalogue: Catalogue) -> Limit | None:
    """Within which a second detection confirms the first; None: the site's rule pack tells none."""
    place = site.place
    return next(iter(catalogue.limits_in(CONFIRMATION, place.rule_pack, place.country)), None)


def notices_of(site: Site, devices: tuple[Device, ...]) -> Mapping[str, str | None]:
    """Which notice each device is part of.

    Parameters
    ----------
    site : Site
        Its zones, groups of zones, and rule pack.
    devices : tuple of Device
        The devices that count.

    Returns
    -------
    mapping of str to str or None
        Device -> what its notice is called. Devices of one zone, or of one group of zones, are one notice: they do
        not confirm each other. None: it confirms nothing, since it is outside the premises and the rule pack is
        that of the UK and the EU (BS 8243:2021, 5.1.1).
    """
    return _notices_of(site.bare, site.zones, devices, ours_only=site.place.rule_pack == "uk-eu")


@lru_cache(maxsize=256)
def _notices_of(
    house: Site, zones: tuple[Zone, ...], devices: tuple[Device, ...], *, ours_only: bool
) -> dict[str, str | None]:
    zone_of: dict[str, Zone] = {}
    for zone in sorted(zones, key=lambda one: one.number):
        for name in zone.devices:
            zone_of.setdefault(name, zone)
    found: dict[str, str | None] = {}
    for device in devices:
        told = zone_of.get(device.id)
        if ours_only and is_outside(house, device):
            found[device.id] = None
        elif told is None:
            found[device.id] = device.id
        else:
            found[device.id] = f"group {told.group}" if told.group else f"zone {told.id}"
    return found


def is_outside(house: Site, device: Device) -> bool:
    """Whether a device that is on no door or window stands outside, on the ground or in a space out of doors."""
    if device.mount.on == "opening":
        return False
    at = standing(house, device)
    space = space_at(house, at.storey, (at.x_m, at.y_m))
    return space is None or space.is_outdoors

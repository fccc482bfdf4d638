"""Margins of the radio links, for the lives of cells and for what hangs on a repeater."""

from __future__ import annotations

from collections.abc import Mapping

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.rules.radio_belief import read_devices
from wardwright.rules.radio_hops import Heard, heard_by, linked_devices
from wardwright.rules.radio_links import links_with
from wardwright.trials.cell_lives import Margin


def link_margins(site: Site, catalogue: Catalogue) -> Mapping[str, Margin]:
    """How far each device's link is above what it needs.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets, materials and losses.

    Returns
    -------
    mapping of str to Margin
        By the devices' ids, the worst place of a keyfob; a device that is not there has no margin that is known, and
        a default of sendings counts.
    """
    return _margins(site, catalogue, heard_by(site, catalogue))


def hang_on(
    site: Site, catalogue: Catalogue, repeater: Device
) -> tuple[tuple[Device, ...], tuple[Device, ...]]:
    """Which devices are likely heard with a repeater and not without it, and for which that is not known.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets, materials and losses.
    repeater : Device
        What is lost.

    Returns
    -------
    lost, unknown : tuple of Device
        In the order of ids.
    """
    heard = heard_by(site, catalogue)
    others = tuple(one for one in heard.repeaters if one.id != repeater.id)
    now, then = _margins(site, catalogue, heard), _margins(site, catalogue, heard._replace(repeaters=others))
    devices = [device for device, _ in linked_devices(site, catalogue) if device.id != repeater.id]
    lost = tuple(
        one
        for one in devices
        if one.id in now and now[one.id].value >= 0.0 and (one.id not in then or then[one.id].value < 0.0)
    )
    return lost, tuple(one for one in devices if one.id not in now)


def _margins(site: Site, catalogue: Catalogue, heard: Heard) -> dict[str, Margin]:
    found: dict[str, Margin] = {}
    readings = read_devices(site)
    for device, _ in linked_devices(site, catalogue):
        try:
            worst = links_with(site.bare, catalogue, device, heard=heard, readings=readings)[0].margin
        except NotComputable:
            continue  # question 6 says why
        found[device.id] = Margin(worst.value, worst.low, worst.high, worst.basis)
    return found

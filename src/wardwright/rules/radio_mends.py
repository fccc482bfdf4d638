"""What would mend a radio link that is too weak: another place, a repeater, a stronger radio."""

from __future__ import annotations

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.site import Site
from wardwright.rules.finding import Mend
from wardwright.rules.radio_belief import read_devices
from wardwright.rules.radio_hops import heard_by
from wardwright.rules.radio_links import Link
from wardwright.rules.radio_spots import other_place_mend, repeater_mend
from wardwright.rules.replacement import replaced


def link_mends(
    site: Site, catalogue: Catalogue, device: Device, *, link: Link, short_db: float
) -> tuple[Mend, ...]:
    """Cures for a link, those that cost least first.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets and losses.
    device : Device
        What is heard too weakly.
    link : Link
        Its best way as it is.
    short_db : float
        How far it is under what it should have. [dB]

    Returns
    -------
    tuple of Mend
        Another place of its room, a repeater, another sheet of its kind that sends so much more.
    """
    hop, heard, readings = link.weakest.hop, heard_by(site, catalogue), read_devices(site)
    now = catalogue.sheet(device.sheet)

    def sends_more(sheet: DeviceSheet) -> bool:
        mine, theirs = now.radio, sheet.radio
        if mine is None or theirs is None or mine.power_dbm is None or theirs.power_dbm is None:
            return False
        is_alike = sheet.frequency_mhz == now.frequency_mhz and sheet.link == "radio"
        return is_alike and theirs.power_dbm - mine.power_dbm >= short_db

    return (
        *other_place_mend(site, catalogue, device, hop=hop, heard=heard, readings=readings),
        *repeater_mend(site, catalogue, device, hop=hop, heard=heard, readings=readings),
        *replaced(catalogue, device, fits=sends_more),
    )

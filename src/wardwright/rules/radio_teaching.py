"""Which radio reading on site would teach most."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.physics.radio.calibration import teaching
from wardwright.physics.radio.from_site import radio_paths
from wardwright.rules.radio_belief import ReadDevice, radio_after, read_devices, row_of, shadowing_of
from wardwright.rules.radio_hops import Heard, Hop, heard_by, linked_devices, ways_of, work_out_together


class NextReading(NamedTuple):
    """The device whose reading would narrow all links of a house most."""

    device: Device
    narrower: float
    """The share by which the spread of all links together would shrink. [-]"""

    @property
    def words(self) -> str:
        """What it would bring, as a note."""
        return (
            "a reading of this one would teach most: the ranges of all links together would shrink by "
            f"{100 * self.narrower:.0f} %"
        )


def next_reading(site: Site, catalogue: Catalogue) -> NextReading | None:
    """The reading that teaches most of those that can be taken.

    Parameters
    ----------
    site : Site
        With its devices and the readings that there are.
    catalogue : Catalogue
        Sheets, materials and losses.

    Returns
    -------
    NextReading or None
        None where fewer than two links can be worked out, or all were read.
    """
    devices = tuple(device for device, sheet in linked_devices(site, catalogue) if sheet.kind != "keyfob")
    heard, readings = heard_by(site, catalogue), read_devices(site)
    return _next_reading(site.bare, catalogue, devices, heard=heard, readings=readings)


@lru_cache(maxsize=256)
def _next_reading(
    house: Site,
    catalogue: Catalogue,
    devices: tuple[Device, ...],
    *,
    heard: Heard,
    readings: tuple[ReadDevice, ...],
) -> NextReading | None:
    radio = radio_after(house, catalogue, readings)
    figure = catalogue.figure("radio-reading").value
    hops = [
        (device, hop)
        for device in devices
        if (hop := _straight(house, catalogue, device, heard=heard)) is not None
    ]
    work_out_together(house, catalogue, [hop for _, hop in hops])
    found = [(device, _link(house, catalogue, hop, readings=readings)) for device, hop in hops]
    named = [device for device, _ in found]
    rows = [link[0] for _, link in found]
    spreads = [link[1] for _, link in found]
    is_read = [link[2] for _, link in found]
    if len(named) < 2 or all(is_read):
        return None
    made, spread = np.array(rows), np.array(spreads)
    gains = teaching(radio.belief, made, shadowing=spread, reading=figure)
    gains[np.array(is_read)] = -1.0
    best = int(np.argmax(gains))
    whole = float((np.einsum("ij,jk,ik->i", made, radio.belief.spread, made) + spread**2).sum())
    return NextReading(named[best], 1.0 - float(np.sqrt(1.0 - gains[best] / whole)))


def _straight(house: Site, catalogue: Catalogue, device: Device, *, heard: Heard) -> Hop | None:
    """The first hop of a device's first way; None where nothing hears it."""
    try:
        return ways_of(house, catalogue, device, heard=heard)[0][0].hops[0]
    except NotComputable:
        return None


@lru_cache(maxsize=4096)
def _link(
    house: Site, catalogue: Catalogue, hop: Hop, *, readings: tuple[ReadDevice, ...]
) -> tuple[FloatArray, float, bool]:
    """The row of a straight link, the spread of its shadow [dB], and whether it was read."""
    radio = radio_after(house, catalogue, readings)
    ends = (hop.sender.place, hop.receiver.place)
    path = radio_paths(house, catalogue, [ends], frequency=hop.frequency_mhz * 1e6)[0]
    read = radio.shadow_place(hop.key)
    row = np.zeros(len(radio.belief.mean))
    row[: len(radio.names)] = row_of(catalogue, path, band_mhz=hop.frequency_mhz, has_body=hop.has_body)
    if read is not None:
        row[read] = -1.0
    return row, shadowing_of(catalogue, path) if read is None else 0.0, read is not None

"""What is believed of a house's radio: one offset for each band and one correction for each class of wall.

Without readings it is what the catalogue says, with its range; a few readings on site pull it to the house.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.device import Device
from wardwright.model.reading import Reading
from wardwright.model.site import Site
from wardwright.physics.radio.budget import drawn_unknowns
from wardwright.physics.radio.calibration import Belief, learned
from wardwright.physics.radio.from_site import RadioPath, radio_paths, radio_place
from wardwright.rules.radio_hops import PRESSED_BY_HAND

Z_90 = 1.6448536269514722
"""From the middle to the 95th percentile of a normal distribution. [standard deviations]"""
ABOVE_1_GHZ_MHZ = 1000.0
UNKNOWN_CLASSES = ("unknown", "unknown-glass")
"""Classes of which nothing is known: a path with one of them scatters more."""
SOME = 0.2
"""A path that goes through less than this share of a thing is not counted as one through it. [-] (assumption)"""


class HouseRadio(NamedTuple):
    """The unknowns of a house's radio, the shadows of the links that were read, and what is believed of them all."""

    names: tuple[str, ...]
    """Of the unknowns, in trade words: the offsets below and above 1 GHz, then the classes of wall losses."""
    belief: Belief
    """Of the unknowns and then of the shadow of each reading, together: they hang on each other. [dB]"""
    keys: tuple[str, ...]
    """Of each reading, the key of its link; empty for a device that was carried elsewhere."""

    @property
    def read(self) -> int:
        """How many readings it has learned from. [-]"""
        return len(self.keys)

    def shadow_place(self, key: str) -> int | None:
        """Where the shadow of a link stands among what is believed; None: it was not read where it stands."""
        return len(self.names) + self.keys.index(key) if key in self.keys else None


class ReadDevice(NamedTuple):
    """A reading with the two devices that it is of."""

    reading: Reading
    device: Device
    receiver: Device


def read_devices(site: Site) -> tuple[ReadDevice, ...]:
    """The readings of a site, with their devices."""
    by_id = {device.id: device for device in site.devices}
    return tuple(
        ReadDevice(one, by_id[one.device], by_id[one.receiver])
        for one in sorted(site.readings, key=lambda one: one.id)
        if one.device in by_id and one.receiver in by_id
    )


def house_radio(site: Site, catalogue: Catalogue) -> HouseRadio:
    """What is believed of a site's radio after its readings."""
    return radio_after(site.bare, catalogue, read_devices(site))


@lru_cache(maxsize=256)
def radio_after(house: Site, catalogue: Catalogue, readings: tuple[ReadDevice, ...]) -> HouseRadio:
    """What is believed of a bare house's radio after some readings."""
    before = _before(catalogue)
    rows, misses, spreads, keys = [], [], [], []
    for one in readings:
        found = _miss(house, catalogue, one)
        if found is None:
            continue
        path, miss, band, has_body = found
        rows.append(row_of(catalogue, path, band_mhz=band, has_body=has_body))
        misses.append(miss)
        spreads.append(shadowing_of(catalogue, path))
        is_in_place = one.reading.held_at_m is None
        keys.append("|".join(sorted((one.device.id, one.receiver.id))) if is_in_place else "")
    names = ("offset below 1 GHz", "offset above 1 GHz", *(row.name for row in catalogue.wall_losses))
    if not rows:
        return HouseRadio(names, before, ())
    after = learned(
        before,
        np.array(rows),
        np.array(misses),
        shadowing=np.array(spreads),
        reading=catalogue.figure("radio-reading").value,
    )
    mean = np.concatenate([after.belief.mean, after.shadows])
    return HouseRadio(names, Belief(mean, after.joint), tuple(keys))


def _miss(house: Site, catalogue: Catalogue, one: ReadDevice) -> tuple[RadioPath, float, float, bool] | None:
    """The path of a reading, and how far it is from what is expected without the unknowns; None: not to be used."""
    sheet = catalogue.sheet(one.device.sheet)
    if sheet.radio is None or sheet.radio.power_dbm is None or sheet.frequency_mhz is None:
        return None
    start = one.reading.held_at_m or radio_place(house, one.device)
    way = (start, radio_place(house, one.receiver))
    path = radio_paths(house, catalogue, [way], frequency=sheet.frequency_mhz * 1e6)[0]
    has_body = sheet.kind in PRESSED_BY_HAND
    expected = (
        sheet.radio.power_dbm - path.free_space_db - path.walls_db - body_db(catalogue, has_body=has_body)
    )
    return path, one.reading.level_dbm - expected, sheet.frequency_mhz, has_body


@lru_cache(maxsize=16)
def _before(catalogue: Catalogue) -> Belief:
    offset = catalogue.figure("radio-offset")
    mean = [offset.value, offset.value, *(0.0 for _ in catalogue.wall_losses)]
    spread = [_deviation(offset), _deviation(offset)]
    spread += [(row.high_db - row.low_db) / 2.0 / Z_90 for row in catalogue.wall_losses]
    return Belief(np.array(mean), np.diag(np.array(spread) ** 2))


def _deviation(figure: Figure) -> float:
    return (figure.high - figure.low) / 2.0 / Z_90


def row_of(catalogue: Catalogue, path: RadioPath, *, band_mhz: float, has_body: bool) -> tuple[float, ...]:
    """How many times each unknown is in the loss of a path, leaves shut. [-]"""
    above = float(band_mhz > ABOVE_1_GHZ_MHZ)
    counts = [
        count + (1.0 if has_body and row.id == "body" else 0.0)
        for row, count in zip(catalogue.wall_losses, path.counts, strict=True)
    ]
    return (1.0 - above, above, *counts)


def shadowing_of(catalogue: Catalogue, path: RadioPath) -> float:
    """Standard deviation of one device's level about what its path says: its path's, and that of its spot. [dB]"""
    return math.hypot(path_shadowing(catalogue, path), catalogue.figure("radio-spot").value)


def path_shadowing(catalogue: Catalogue, path: RadioPath) -> float:
    """Standard deviation of a path about what its walls say: more where a wall's make is not known. [dB]"""
    figure = catalogue.figure("radio-shadowing")
    counted = zip(catalogue.wall_losses, path.counts, strict=True)
    is_unknown = any(count > SOME for row, count in counted if row.id in UNKNOWN_CLASSES)
    return figure.high if is_unknown else figure.value


def body_db(catalogue: Catalogue, *, has_body: bool) -> float:
    """What the body of whoever presses takes. [dB]"""
    if not has_body:
        return 0.0
    return next((row.value_db for row in catalogue.wall_losses if row.id == "body"), 0.0)


@lru_cache(maxsize=64)
def believed_of(house: Site, catalogue: Catalogue, readings: tuple[ReadDevice, ...]) -> FloatArray:
    """The unknowns of a house and the shadows that were read, for all hops alike.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Losses and figures.
    readings : tuple of ReadDevice
        What was read.

    Returns
    -------
    ndarray, shape (1 + draws, K)
        The likely case first, then the draws; not to be written to. [dB]
    """
    radio = radio_after(house, catalogue, readings)
    return np.vstack([radio.belief.mean, unknown_draws(radio)])


def unknown_draws(radio: HouseRadio) -> FloatArray:
    """Draws of the unknowns and of the shadows that were read, one row a draw. [dB]"""
    names = (*radio.names, *(f"shadow {i} {key}" for i, key in enumerate(radio.keys)))
    return _unknown_draws(names, tuple(radio.belief.mean.tolist()), _flat(radio.belief.spread))


def _flat(spread: FloatArray) -> tuple[float, ...]:
    return tuple(spread.ravel().tolist())


@lru_cache(maxsize=64)
def _unknown_draws(names: tuple[str, ...], mean: tuple[float, ...], spread: Iterable[float]) -> FloatArray:
    square = np.array(tuple(spread)).reshape(len(mean), len(mean))
    return drawn_unknowns(Belief(np.array(mean), square), tuple(f"radio {name}" for name in names))

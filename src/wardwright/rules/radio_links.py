"""Level and margin of each radio link, leaves shut, over seeded draws of all that is uncertain."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.device import Device
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.physics.radio.budget import Links, levels_over, low_and_high, margins_over, normal_draws
from wardwright.physics.radio.from_site import RadioPath, radio_paths
from wardwright.rules.radio_belief import (
    ABOVE_1_GHZ_MHZ,
    Z_90,
    ReadDevice,
    believed_of,
    body_db,
    radio_after,
    read_devices,
    row_of,
    shadowing_of,
)
from wardwright.rules.radio_drivers import OFFSETS, drivers_of, padded
from wardwright.rules.radio_hops import Heard, Hop, Way, heard_by, ways_of, work_out_together

MARGIN_LIMIT = "radio-margin-least"
"""The row of limits that a margin is held against."""


class HopLevel(NamedTuple):
    """One hop as it is expected to be."""

    hop: Hop
    path: RadioPath
    level: Estimate
    margin: Estimate
    noise: Estimate
    draws: FloatArray
    """Margins in each draw, the weaker way. [dB]"""
    likely_open_db: float
    """The likely margin with leaves as they usually stand. [dB]"""


class Link(NamedTuple):
    """The best way of one device's signal from one place."""

    way: Way
    hops: tuple[HopLevel, ...]
    margin: Estimate
    draws: FloatArray
    others: int
    """How many other ways there are. [-]"""

    @property
    def weakest(self) -> HopLevel:
        """The hop that decides."""
        return min(self.hops, key=lambda one: one.margin.value)

    def chance_under(self, limit: float) -> float:
        """The share of the draws in which the margin is under a limit. [-]"""
        return float(np.count_nonzero(self.draws < limit)) / max(1, len(self.draws))


def links_of(site: Site, catalogue: Catalogue, device: Device) -> tuple[Link, ...]:
    """The best way of a device's signal from each place that it sends from, the worst place first.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets, materials, losses and figures.
    device : Device
        A radio device.

    Returns
    -------
    tuple of Link
        One, but for a keyfob.

    Raises
    ------
    NotComputable
        If nothing hears it, or a sheet that is needed is silent.
    """
    return links_with(
        site.bare, catalogue, device, heard=heard_by(site, catalogue), readings=read_devices(site)
    )


def links_with(
    house: Site, catalogue: Catalogue, device: Device, *, heard: Heard, readings: tuple[ReadDevice, ...]
) -> tuple[Link, ...]:
    """As `links_of`, with what hears it and what was read told apart, so that a change can be tried."""
    found = _links(house, catalogue, device, heard=heard, readings=readings)
    if isinstance(found, str):
        reason, _, cure = found.partition("\n")
        raise NotComputable(reason, cure=cure)
    return found


@lru_cache(maxsize=4096)
def _links(
    house: Site, catalogue: Catalogue, device: Device, *, heard: Heard, readings: tuple[ReadDevice, ...]
) -> tuple[Link, ...] | str:
    try:
        places = ways_of(house, catalogue, device, heard=heard)
    except NotComputable as reason:
        return f"{reason}\n{reason.cure}"
    work_out_together(house, catalogue, [hop for ways in places for way in ways for hop in way.hops])
    found = []
    for ways in places:
        likely = [
            min(_likely_margin(house, catalogue, hop, readings=readings) for hop in way.hops) for way in ways
        ]
        best = ways[max(range(len(ways)), key=lambda i: (likely[i], -len(ways[i].hops)))]
        levels = tuple(_hop_level(house, catalogue, hop, readings=readings) for hop in best.hops)
        found.append(_joined(best, levels, others=len(ways) - 1))
    return tuple(sorted(found, key=lambda link: (link.margin.value, link.way.place_words)))


@lru_cache(maxsize=8192)
def _likely_margin(house: Site, catalogue: Catalogue, hop: Hop, *, readings: tuple[ReadDevice, ...]) -> float:
    """The likely margin of a hop, without draws: enough to choose a way by. [dB]"""
    radio = radio_after(house, catalogue, readings)
    ends = (hop.sender.place, hop.receiver.place)
    path = radio_paths(house, catalogue, [ends], frequency=hop.frequency_mhz * 1e6)[0]
    mean = radio.belief.mean.tolist()
    read = radio.shadow_place(hop.key)
    row = row_of(catalogue, path, band_mhz=hop.frequency_mhz, has_body=hop.has_body)
    learned = sum(times * unknown for times, unknown in zip(row, mean[: len(row)], strict=True) if times)
    walls = path.walls_db + body_db(catalogue, has_body=hop.has_body)
    lost = path.free_space_db + walls + learned - (0.0 if read is None else mean[read])
    noise = noise_figure(catalogue, hop.frequency_mhz).value
    return min(float(power - lost - max(need, noise)) for power, need in both_ways(hop))


def _joined(way: Way, hops: tuple[HopLevel, ...], *, others: int) -> Link:
    """A way is as good as its worst hop, draw by draw."""
    if len(hops) == 1:
        return Link(way, hops, hops[0].margin, hops[0].draws, others)
    draws = np.min(np.stack([one.draws for one in hops]), axis=0)
    worst = min(hops, key=lambda one: one.margin.value)
    low, high = low_and_high(draws)
    value = worst.margin.value
    update = {"low": min(low, value), "high": max(high, value)}
    return Link(way, hops, worst.margin.model_copy(update=update), draws, others)


@lru_cache(maxsize=8192)
def _hop_level(house: Site, catalogue: Catalogue, hop: Hop, *, readings: tuple[ReadDevice, ...]) -> HopLevel:
    radio = radio_after(house, catalogue, readings)
    ends = (hop.sender.place, hop.receiver.place)
    path = radio_paths(house, catalogue, [ends], frequency=hop.frequency_mhz * 1e6)[0]
    noise = noise_figure(catalogue, hop.frequency_mhz)
    row = np.array([row_of(catalogue, path, band_mhz=hop.frequency_mhz, has_body=hop.has_body)])
    read = radio.shadow_place(hop.key)
    spread = shadowing_of(catalogue, path)
    walls = path.walls_db + body_db(catalogue, has_body=hop.has_body)
    ways = both_ways(hop)
    links = Links(
        np.array([power - path.free_space_db - walls for power, _ in ways]),
        np.repeat(row, len(ways), axis=0),
        np.full(len(ways), walls),
        np.zeros(len(ways)),
        np.full(len(ways), spread if read is None else 1.0),
        np.array([need for _, need in ways]),
    )
    # One shadow for both ways, noise of its own at each end.
    believed = believed_of(house, catalogue, readings)
    drawn = np.concatenate([[0.0], normal_draws(f"radio shadow {hop.key}")])
    # The shadow of a link that was read hangs on all else that the readings taught: it is drawn with that.
    shadows = np.repeat((drawn if read is None else believed[:, read])[:, None], len(ways), axis=1)
    unknowns = believed[:, : len(radio.names)]
    levels = levels_over(links, unknowns, shadows=shadows, offsets=OFFSETS)
    ends_of_ways = (hop.receiver.ident, hop.sender.ident)[: len(ways)]
    noises = np.stack([_noise_draws(noise, ident) for ident in ends_of_ways], axis=1)
    both = margins_over(levels, links.need, noise=noises)
    weaker = int(np.argmin(both[0]))
    margins = both.min(axis=1)
    row_read = padded(radio, row[0], read=read)
    drivers, basis = drivers_of(
        catalogue,
        radio,
        row_read,
        spread=0.0 if read is not None else spread,
        noise=noise,
        need=links.need[weaker],
    )
    opened = path.walls_db - path.walls_told_db
    return HopLevel(
        hop,
        path,
        _estimate(levels[:, 0], "dBm", drivers=drivers[:2], basis=basis),
        _estimate(margins, "dB", drivers=drivers, basis=basis),
        Estimate(value=noise.value, low=noise.low, high=noise.high, unit="dBm", basis="default"),
        margins[1:],
        float(margins[0]) + opened,
    )


def both_ways(hop: Hop) -> list[tuple[float, float]]:
    """Power sent and signal needed: there, and back where both are able to and say it. [dB re 1 mW]"""
    there, back = hop.sender, hop.receiver
    if there.power_dbm is None or back.sensitivity_dbm is None:
        raise NotComputable(f"the sheets of {there.name} and {back.name} do not say what their radios do")
    ways = [(there.power_dbm, back.sensitivity_dbm)]
    if (
        there.is_two_way
        and back.is_two_way
        and back.power_dbm is not None
        and there.sensitivity_dbm is not None
    ):
        ways.append((back.power_dbm, there.sensitivity_dbm))
    return ways


def noise_figure(catalogue: Catalogue, band_mhz: float) -> Figure:
    """The noise to expect in a band. [dB re 1 mW]"""
    return catalogue.figure(f"radio-noise-{'above' if band_mhz > ABOVE_1_GHZ_MHZ else 'below'}-1-ghz")


@lru_cache(maxsize=1024)
def _noise_draws(noise: Figure, ident: str) -> FloatArray:
    drawn = normal_draws(f"radio noise {ident}") / Z_90
    spread = np.where(drawn > 0.0, noise.high - noise.value, noise.value - noise.low)
    return np.concatenate([[noise.value], noise.value + drawn * spread])


def _estimate(values: FloatArray, unit: str, *, drivers: tuple[Driver, ...], basis: Basis) -> Estimate:
    likely = float(values[0])
    low, high = low_and_high(values[1:])
    return Estimate(
        value=likely, low=min(low, likely), high=max(high, likely), unit=unit, drivers=drivers, basis=basis
    )

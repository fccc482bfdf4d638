"""The likely margin of hops, those that are there and those that are tried elsewhere: many at once, no draws."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import Point3
from wardwright.model.site import Site
from wardwright.physics.radio.from_site import path_losses
from wardwright.rules.radio_belief import ABOVE_1_GHZ_MHZ, ReadDevice, body_db, radio_after
from wardwright.rules.radio_drivers import OFFSETS
from wardwright.rules.radio_hops import Hop
from wardwright.rules.radio_links import both_ways, noise_figure


def likely_margins(
    house: Site,
    catalogue: Catalogue,
    hop: Hop,
    *,
    ways: Sequence[tuple[Point3, Point3]],
    readings: tuple[ReadDevice, ...],
) -> list[float]:
    """The likely margin of one hop, tried between many places: all at once, no draws.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Materials, losses and figures.
    hop : Hop
        Who talks to whom.
    ways : sequence of (Point3, Point3)
        Where both would be. [m]
    readings : tuple of ReadDevice
        What was read on site.

    Returns
    -------
    list of float
        Margins, the weaker way. [dB]
    """
    losses, counts = path_losses(house, catalogue, ways, frequency=hop.frequency_mhz * 1e6)
    return _left(house, catalogue, hop, losses=losses, counts=counts, readings=readings)


def margins_of(
    house: Site, catalogue: Catalogue, hops: Sequence[Hop], *, readings: tuple[ReadDevice, ...]
) -> list[float]:
    """The likely margins of many hops as they are, the weaker way: all paths of a band at once, no draws. [dB]"""
    found = dict.fromkeys(hops, 0.0)
    for frequency in sorted({hop.frequency_mhz for hop in hops}):
        same = [hop for hop in found if hop.frequency_mhz == frequency]
        ways = [(hop.sender.place, hop.receiver.place) for hop in same]
        losses, counts = path_losses(house, catalogue, ways, frequency=frequency * 1e6)
        for i, hop in enumerate(same):
            alone = slice(i, i + 1)
            (found[hop],) = _left(
                house, catalogue, hop, losses=losses[alone], counts=counts[alone], readings=readings
            )
    return [found[hop] for hop in hops]


def _left(
    house: Site,
    catalogue: Catalogue,
    hop: Hop,
    *,
    losses: FloatArray,
    counts: FloatArray,
    readings: tuple[ReadDevice, ...],
) -> list[float]:
    """What is left of a hop over paths that lose so much and meet so many things of each class. [dB]"""
    radio = radio_after(house, catalogue, readings)
    mean = radio.belief.mean[: len(radio.names)]
    offset = float(mean[1 if hop.frequency_mhz > ABOVE_1_GHZ_MHZ else 0])
    body = next((i for i, row in enumerate(catalogue.wall_losses) if row.id == "body"), None)
    held = float(mean[OFFSETS + body]) if hop.has_body and body is not None else 0.0
    lost = losses + counts @ mean[OFFSETS:] + offset + held + body_db(catalogue, has_body=hop.has_body)
    noise = noise_figure(catalogue, hop.frequency_mhz).value
    best = [power - max(need, noise) for power, need in both_ways(hop)]
    left: list[float] = (min(best) - lost).tolist()
    return left

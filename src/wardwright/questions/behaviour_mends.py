"""What would mend a zone's behaviour: the behaviour itself, a door kept shut, a detector turned."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TypeVar

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.placement import standing
from wardwright.model.programme import STANDARD_BEHAVIOURS, Zone
from wardwright.model.site import Site
from wardwright.rules.finding import Mend
from wardwright.rules.wall_spots import TURN_LIMIT_DEG
from wardwright.trials.arrival_band import seen_of_band
from wardwright.trials.barriers import grids_of
from wardwright.trials.zone_roles import SPECK_M2, Derived, Role, role_of

Angle = TypeVar("Angle", float, FloatArray)
SLIVER_M2 = 0.5
"""Less of the way in than this, seen from a room that it does not pass, is a sliver. [m2] (assumption)"""
TURN_SPARE_DEG = (6.0, 10.0)
"""How far the edge of its fan is turned beyond the last of the way in: tried in turn. [deg] (assumption)"""


def is_sliver(one: Derived) -> bool:
    """Whether a detector sees only a sliver of the way in, from a room that the way does not pass."""
    seen = one.seen
    return seen is not None and SPECK_M2 < seen.high < SLIVER_M2 and seen.is_from_elsewhere


def behaviour_mends(
    site: Site, catalogue: Catalogue, one: Derived, *, zone: Zone | None, controls: tuple[Device, ...]
) -> tuple[Mend, ...]:
    """Cures for one device whose behaviour differs, or hangs on how a door stands.

    Parameters
    ----------
    site : Site
        As it is.
    catalogue : Catalogue
        Sheets.
    one : Derived
        What its behaviour is to be.
    zone : Zone or None
        The zone that hears it.
    controls : tuple of Device
        The keypads.

    Returns
    -------
    tuple of Mend
        Where the way in is seen from another room: its door kept shut, and the detector turned so that it sees none
        of it, which was tried on the model. Then the behaviour.
    """
    found = []
    programmed = None if zone is None else role_of(site.behaviour(zone.behaviour))
    seen = one.seen
    if seen is not None and seen.is_from_elsewhere and seen.high > SPECK_M2:
        if seen.through and seen.low <= SPECK_M2:
            found.append(Mend(action="keep-shut", subject=seen.through[0]))
        turned = turned_away(site, catalogue, one, controls=controls)
        if turned is not None:
            turn = ("heading_deg", turned)
            found.append(Mend(action="turn-device", subject=one.device.id, values=(turn,)))
    if programmed != one.role:
        subject = one.device.id if zone is None or len(zone.devices) > 1 else zone.id
        values = (("behaviour", _behaviour_id(site, one.role)),)
        found.append(Mend(action="change-behaviour", subject=subject, values=values))
    return tuple(found)


def _behaviour_id(site: Site, role: Role) -> str:
    known = (*site.behaviours, *STANDARD_BEHAVIOURS)
    return next((one.id for one in known if role_of(one) == role), role)


def turned_away(
    site: Site, catalogue: Catalogue, one: Derived, *, controls: tuple[Device, ...]
) -> float | None:
    """The heading, turned least, with which a detector sees nothing of the way in; None if turning does not help.

    Parameters
    ----------
    site : Site
        As it is.
    catalogue : Catalogue
        Sheets.
    one : Derived
        A movement detector that sees some of the way in.
    controls : tuple of Device
        The keypads.

    Returns
    -------
    float or None
        Anticlockwise from the plan's x axis; tried on the model. [deg]
    """
    seen = one.seen
    sheet = catalogue.sheet(one.device.sheet).movement
    if seen is None or sheet is None or sheet.angle_deg >= 180.0:
        return None
    points = np.concatenate(
        [grids_of(site.bare)[storey].centres()[cells] for storey, cells in seen.cells.items()]
        or [np.zeros((0, 2))]
    )
    halves = [sheet.angle_deg / 2.0 + spare for spare in TURN_SPARE_DEG]
    for heading in headings_off(site.bare, one.device, points, halves=halves):
        there = one.device.model_copy(update={"heading_deg": heading})
        if seen_of_band(site.bare, catalogue, there, controls=controls).high <= SPECK_M2:
            return heading
    return None


def headings_off(
    house: Site, device: Device, points: FloatArray, *, halves: Sequence[float]
) -> tuple[float, ...]:
    """Headings that turn the fan of a detector off some floor, as far as its bracket lets it be turned.

    Parameters
    ----------
    house : Site
        The bare house.
    device : Device
        The detector.
    points : ndarray, shape (N, 2)
        The floor. [m]
    halves : sequence of float
        Half of the fan, with what is to spare at its edge: each is tried to both sides. [deg]

    Returns
    -------
    tuple of float
        Anticlockwise from the plan's x axis, the least turn first; none where there is no floor. [deg]
    """
    if not len(points):
        return ()
    at = standing(house, device)
    straight = standing(house, device.model_copy(update={"heading_deg": None})).heading_deg
    away = _turn(np.degrees(np.arctan2(points[:, 1] - at.y_m, points[:, 0] - at.x_m)) - at.heading_deg)
    # To its right it loses what is on its left, and the other way round.
    turns = [turn for half in halves for turn in (float(away.min()) - half, float(away.max()) + half)]
    headings = [
        round(_turn(at.heading_deg + math.copysign(math.ceil(abs(turn)), turn)), 6)
        for turn in sorted(turns, key=abs)
    ]
    return tuple(one for one in headings if abs(_turn(one - straight)) <= TURN_LIMIT_DEG)


def _turn(angle_deg: Angle) -> Angle:
    """An angle as the nearest turn, from -180 on. [deg]"""
    return (angle_deg + 180.0) % 360.0 - 180.0

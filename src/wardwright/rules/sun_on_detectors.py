"""How long in a year the sun shines straight on a detector, and on floor in its view: minutes with their range."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate, driver_of
from wardwright.model.placement import standing
from wardwright.model.record import BASES, Basis
from wardwright.model.site import Site
from wardwright.model.surfaces import clear_of_walls, level_of
from wardwright.physics.detection.from_site import watch
from wardwright.physics.sunlight.from_site import beams_into, beams_on, sun_of, year_of
from wardwright.physics.sunlight.shine import Beam, Lens, View

WIDE_RAD = math.radians(80.0)
"""Light may reach the lens from so far off its axis, though its fan be narrower. [rad] (assumption)"""
NORTH_DEG = 5.0
"""A north that was told is right within this. [deg] (assumption)"""
MEASURED_NORTH_DEG = 2.0
"""A north that was measured is right within this. [deg] (assumption)"""
NORTHS = 24
"""How many directions of north are tried where none is known. [-]"""
DRAWS = 21
"""How many equal slices of the range of north are looked at. [-]"""
LENS_LIMIT_MIN = 10.0
"""More minutes a year of sun straight on a lens are named. [min] (assumption: no published limit is known)"""
VIEW_LIMIT_MIN = 90_000.0
"""More minutes a year of sun on floor in view are named: 1500 hours, a third of all daylight. [min] (assumption,
likewise: most detectors stand a lit floor)"""


class SunOn(NamedTuple):
    """The sun of a year on one detector."""

    lens: Estimate
    """Straight on its lens. [min]"""
    view: Estimate | None
    """On floor that it watches; None for what watches no floor. [min]"""
    on_lens: tuple[Beam, ...]
    """By pane, at the north that counts; also by panes that are covered."""
    in_view: tuple[Beam, ...]
    north: float
    """The north that counts: as told, or the worst. [rad]"""
    is_north_known: bool


class At(NamedTuple):
    """A lens, which way it looks, and half of its fan."""

    lens: Lens
    heading: float
    half: float


def sun_on(site: Site, catalogue: Catalogue, device: Device) -> SunOn:
    """The sun of a year on one movement detector or camera.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        For its sheet.
    device : Device
        The detector, as it hangs or as it would.

    Returns
    -------
    SunOn
        Minutes with their range: north within its error, or all of it where it is not known; light from beside the
        fan; curtains and blinds left open.

    Raises
    ------
    NotComputable
        If the latitude is not known.
    """
    return _sun_on(site.bare, catalogue, nameless(device))


@lru_cache(maxsize=512)
def nameless(device: Device) -> Device:
    """The same device whatever it is called: one object, so that it is looked up without being compared."""
    return device.model_copy(update={"name": "-"})


@lru_cache(maxsize=512)
def _sun_on(house: Site, catalogue: Catalogue, device: Device) -> SunOn:
    sun_of(house)
    at = at_of(house, catalogue, device)
    norths, is_known = norths_of(house)
    # Where north may lie anywhere, it outweighs how much of the floor is watched.
    views = views_of(house, catalogue, device)[: 2 if is_known else 1]
    lens = _lens_minutes(house, at, norths)
    view = np.array([
        _by_north(house, beams_into(house, one, north=norths, is_thin=True), norths) for one in views
    ])  # fmt: skip
    middle = len(norths) // 2
    if not is_known:
        middle = int(np.lexsort((view[0, :, 0] if len(views) else lens[:, 0, 1], lens[:, 0, 0]))[-1])
    north = norths[middle]
    on_lens = beams_on(house, at.lens, north=north)
    in_view = beams_into(house, views[0], north=north) if views else ()
    basis = house.place.basis_of("north_deg") if is_known else "default"
    whole = _summed(house, (within(beam, at, half=at.half) for beam in on_lens))
    return SunOn(
        _estimate(lens, whole, middle=middle, basis=basis, second="how far off its axis light reaches it"),
        _estimate(
            view.transpose(1, 0, 2), _summed(house, in_view), middle=middle, basis=basis,
            second="how much of the floor it may watch",
        ) if views else None,
        tuple(one for one in (within(beam, at, half=at.half) for beam in on_lens) if len(one.steps)),
        in_view,
        north,
        is_known,
    )  # fmt: skip


def norths_of(house: Site) -> tuple[tuple[float, ...], bool]:
    """The norths that are tried, anticlockwise from the plan's y axis [rad], and whether one was told."""
    told = house.place.north_deg
    if told is None:
        return tuple(2.0 * math.pi * turn / NORTHS for turn in range(NORTHS)), False
    off = MEASURED_NORTH_DEG if house.place.basis_of("north_deg") == "measured" else NORTH_DEG
    return tuple(math.radians(told + turn * off) for turn in (-1.0, 0.0, 1.0)), True


def lens_minutes(
    site: Site, catalogue: Catalogue, device: Device, *, norths: tuple[float, ...] | None = None
) -> float:
    """About how many minutes a year the sun shines straight on a lens, coverings as told: quick, to try places by.

    Parameters
    ----------
    site : Site
        A house whose latitude is known.
    catalogue : Catalogue
        For its sheet.
    device : Device
        The detector as it would hang.
    norths : tuple of float, optional
        Only these, anticlockwise from the plan's y axis: fewer than all never give more minutes. [rad]

    Returns
    -------
    float
        At the worst of the norths that are tried. [min]
    """
    house = site.bare
    at = at_of(house, catalogue, device)
    norths = norths_of(house)[0] if norths is None else norths
    beams = beams_on(house, at.lens, north=norths, is_thin=True)
    return float(_by_north(house, [within(beam, at, half=at.half) for beam in beams], norths)[:, 0].max())


@lru_cache(maxsize=1024)
def at_of(house: Site, catalogue: Catalogue, device: Device) -> At:
    """Where a device's lens is and looks."""
    place, sheet = standing(house, device), catalogue.sheet(device.sheet)
    fan = sheet.movement or sheet.camera
    angle = 360.0 if fan is None else fan.angle_deg
    level, heading = level_of(house, place.storey), math.radians(place.heading_deg)
    x, y = clear_of_walls(level, (place.x_m, place.y_m), (math.cos(heading), math.sin(heading)))
    lens = Lens(place.storey, x, y, level.floor_m + place.height_m)
    return At(lens, heading, min(math.pi, math.radians(angle) / 2.0))


@lru_cache(maxsize=256)
def views_of(house: Site, catalogue: Catalogue, device: Device) -> tuple[View, ...]:
    """Floor that a movement detector senses on, and floor where it may; nothing for a camera."""
    if catalogue.sheet(device.sheet).movement is None:
        return ()
    shapes = watch(house, catalogue, device)
    return tuple(View(shapes.storey, shapes.grid, mask) for mask in (shapes.seen, shapes.high))


def within(beam: Beam, at: At, *, half: float) -> Beam:
    """What of a beam comes from within a half angle of the axis."""
    off = np.abs((beam.bearings - at.heading + math.pi) % (2.0 * math.pi) - math.pi)
    kept: BoolArray = off <= half + 1e-9
    return beam._replace(steps=beam.steps[kept], bearings=beam.bearings[kept])


def _lens_minutes(house: Site, at: At, norths: tuple[float, ...]) -> FloatArray:
    """About the minutes on a lens: axes north, by fan and by all that may reach it, coverings drawn and open."""
    beams = beams_on(house, at.lens, north=norths, is_thin=True)
    if not beams:
        return np.zeros((len(norths), 2, 2))
    by_half = ([within(one, at, half=half) for one in beams] for half in (at.half, max(at.half, WIDE_RAD)))
    return np.stack([_by_north(house, kept, norths) for kept in by_half], axis=1)


def _by_north(house: Site, beams: Iterable[Beam], norths: tuple[float, ...]) -> FloatArray:
    """About the minutes at which any of some beams shines: rows by north, columns by coverings drawn and open."""
    year = year_of(house, is_thin=True)
    shines = np.zeros((2, len(norths) * len(year.day)), dtype=np.bool_)
    for beam in beams:
        shines[1, beam.steps] = True
        if not beam.is_covered:
            shines[0, beam.steps] = True
    counted: FloatArray = year.step_min * np.count_nonzero(shines.reshape(2, len(norths), -1), axis=2).T
    return counted


def _summed(house: Site, beams: Iterable[Beam]) -> float:
    """Minutes of the whole year at which any of some beams shines, coverings as told."""
    told = [beam.steps for beam in beams if not beam.is_covered]
    count = len(told[0]) if len(told) == 1 else len(np.unique(np.concatenate(told))) if told else 0
    return count * year_of(house).step_min


def _estimate(table: FloatArray, value: float, *, middle: int, basis: Basis, second: str) -> Estimate:
    """An estimate from minutes of the thinned year: axes north, what reaches it, coverings drawn or open.

    A value of the whole year goes before that of the thinned one, and the others are scaled to it.
    """
    if not table.any():
        return Estimate(value=value, low=0.0, high=value, unit="min", basis=basis)
    likely = float(table[middle, 0, 0])
    scaled = table * (value / likely) if likely > 0.0 and value > 0.0 else table
    steps = np.linspace(0.0, len(table) - 1.0, DRAWS)
    below = np.minimum(steps.astype(np.intp), max(len(table) - 2, 0))
    share = (steps - below)[:, None, None]
    between = scaled[below] * (1.0 - share) + scaled[np.minimum(below + 1, len(table) - 1)] * share
    ordered = np.sort(between, axis=None)
    places = np.array([0.05, 0.95]) * (len(ordered) - 1)
    low, high = np.interp(places, np.arange(len(ordered)), ordered).tolist()
    swings = (
        ("where north lies on the plan", np.ptp(scaled[:, 0, 0]), basis),
        (second, abs(scaled[middle, -1, 0] - scaled[middle, 0, 0]), "default"),
        ("whether curtains and blinds are drawn", abs(scaled[middle, 0, 1] - scaled[middle, 0, 0]), "told"),
    )
    drivers = sorted(
        (driver_of(name, float(swing), known) for name, swing, known in swings if swing > 1e-9),
        key=lambda one: -one.swing,
    )
    known = max((BASES.index(one.basis) for one in drivers[:2]), default=BASES.index(basis))
    return Estimate(
        value=value, low=min(low, value), high=max(high, value), unit="min", drivers=tuple(drivers),
        basis=BASES[known],
    )  # fmt: skip

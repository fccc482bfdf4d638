"""Levels that people hear, with their ranges: what questions and rules about sound share.

What hangs on the house alone is remembered by it; of the rest only the devices that sound count, so that moving
another one works nothing out again.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import lru_cache

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate, driver_of
from wardwright.model.opening import LeafState
from wardwright.model.site import Site
from wardwright.physics.sound.from_site import (
    SoundHouse,
    Sounding,
    balance,
    elements_between,
    leaf_states,
    place_of,
    screened,
    sound_house,
    sounding,
    sources,
)
from wardwright.physics.sound.house import OUTSIDE
from wardwright.physics.sound.levels import Ears, energy_at, rooms_energy
from wardwright.rules.pillows import Pillow

INTRUDER_KINDS = ("sounder", "control-unit")
"""What sounds when an intruder is noticed."""
FIRE_KINDS = ("smoke-alarm", "heat-alarm", "co-alarm")
MODEL_FIGURES = ("sound-model-room", "sound-model-one", "sound-model-more")
"""How far a level may be off: in the sounder's room, behind one element, behind more."""
SHEET_WORDS = "how the sheet's level was measured"
LEAST_SWING_DB = 0.05
"""An input that moves a level by less is none of its drivers. [dB] (assumption)"""
SILENT_DBA = 0.0
"""What is quieter than the faintest sound is no level. [dBA]"""


def sounders(site: Site, catalogue: Catalogue, kinds: tuple[str, ...]) -> tuple[Sounding, ...]:
    """The devices of some kinds that state a level, by id."""
    return tuple(one for one in _sounding(site.bare, catalogue, site.devices) if one.sheet.kind in kinds)


@lru_cache(maxsize=256)
def _sounding(site: Site, catalogue: Catalogue, devices: tuple[Device, ...]) -> tuple[Sounding, ...]:
    return sounding(site.model_copy(update={"devices": devices}), catalogue)


@lru_cache(maxsize=512)
def in_rooms(
    site: Site, catalogue: Catalogue, every: tuple[Sounding, ...], *, states: tuple[LeafState, ...]
) -> FloatArray:
    """Diffuse sound in every room from each sounder, shape (C, D, F, N). [-]

    Parameters
    ----------
    site : Site
        The bare house.
    catalogue : Catalogue
        Rows and figures of sound.
    every : tuple of Sounding
        The sounders.
    states : tuple of str
        How the house's leaves stand.

    Returns
    -------
    ndarray, shape (C, D, F, N)
        Square of the pressure over the reference, A-weighted. [-]
    """
    # Each by itself, so that one that moved leaves the others remembered.
    each = [_from_one(site, catalogue, one, states=states) for one in every]
    if each:
        return np.concatenate(each, axis=1)
    house = sound_house(site, catalogue)
    return np.zeros((len(house.cases), 0, *house.house.rooms.swallowing.T.shape))


@lru_cache(maxsize=1024)
def _from_one(
    site: Site, catalogue: Catalogue, one: Sounding, *, states: tuple[LeafState, ...]
) -> FloatArray:
    house = sound_house(site, catalogue)
    source = sources(site, catalogue, (one,))
    around = screened_from(house, place_of(site, one.place)) if one.room == OUTSIDE else None
    return rooms_energy(balance(house, states), source, facade=house.facade, screened=around)


@lru_cache(maxsize=256)
def screened_from(
    house: SoundHouse, place: tuple[float, float, float], ends: tuple[tuple[float, float, float], ...] = ()
) -> FloatArray:
    """The share of sound that gets from a place outside to other places; to the house's own outside if none is given.

    Parameters
    ----------
    house : SoundHouse
        The house.
    place : tuple of float
        Where it sounds. [m]
    ends : tuple of tuples, default ()
        Where it is heard. [m]

    Returns
    -------
    ndarray, shape (1, E, F)
        1 where the house is not in the way. [-]
    """
    there = np.asarray(ends, dtype=np.float64).reshape(-1, 3) if ends else house.facade.place
    return screened(house, np.asarray([place], dtype=np.float64), there)


@lru_cache(maxsize=512)
def at_pillows(
    site: Site,
    catalogue: Catalogue,
    every: tuple[Sounding, ...],
    *,
    heads: tuple[Pillow, ...],
    states: tuple[LeafState, ...],
) -> FloatArray:
    """Sound at each pillow from each sounder, shape (C, D, P). [-]

    Parameters
    ----------
    site : Site
        The bare house.
    catalogue : Catalogue
        Rows and figures of sound.
    every : tuple of Sounding
        The sounders.
    heads : tuple of Pillow
        The pillows.
    states : tuple of str
        How the house's leaves stand.

    Returns
    -------
    ndarray, shape (C, D, P)
        Square of the pressure over the reference, A-weighted. [-]
    """
    each = [_at_pillows(site, catalogue, one, heads=heads, states=states) for one in every]
    if each:
        return np.concatenate(each, axis=1)
    return np.zeros((len(sound_house(site, catalogue).cases), 0, len(heads)))


@lru_cache(maxsize=1024)
def _at_pillows(
    site: Site,
    catalogue: Catalogue,
    one: Sounding,
    *,
    heads: tuple[Pillow, ...],
    states: tuple[LeafState, ...],
) -> FloatArray:
    rooms = _from_one(site, catalogue, one, states=states)
    return energy_at(rooms, sources(site, catalogue, (one,)), _ears(site, catalogue, heads))


@lru_cache(maxsize=256)
def _ears(site: Site, catalogue: Catalogue, heads: tuple[Pillow, ...]) -> Ears:
    house = sound_house(site, catalogue)
    floors = {storey.id: storey.elevation_m for storey in site.storeys}
    places = [(*one.at_m, floors[one.space.storey] + one.height_m) for one in heads]
    return Ears(
        np.asarray([house.room(one.space.id) for one in heads], dtype=np.int64),
        np.asarray(places, dtype=np.float64).reshape(-1, 3),
    )


def shut(site: Site, catalogue: Catalogue) -> tuple[LeafState, ...]:
    """Every leaf shut."""
    return leaf_states(sound_house(site, catalogue), "shut")


def at_night(site: Site, catalogue: Catalogue) -> tuple[LeafState, ...]:
    """Every leaf as it was told to stand at night."""
    return leaf_states(sound_house(site, catalogue), "night")


def steps_between(
    house: SoundHouse, states: tuple[LeafState, ...], *, room: int, every: Iterable[int]
) -> float:
    """The fewest elements from the nearest of some rooms; from outside, one more than from a room with a window."""
    between = elements_between(house, states)
    counts = [
        float(between[room, other]) if other != OUTSIDE else 1.0 + _from_outside(house, between, room)
        for other in every
    ]
    return min(counts, default=math.inf)


def _from_outside(house: SoundHouse, between: FloatArray, room: int) -> float:
    if not len(house.facade.room):
        return math.inf
    return float(between[room, house.facade.room].min())


def level_estimate(
    energy: FloatArray, *, house: SoundHouse, catalogue: Catalogue, steps: float
) -> Estimate | None:
    """A level with its range, from the sound in every case.

    Parameters
    ----------
    energy : ndarray, shape (C,)
        Square of the pressure over the reference in each case of the house, all sounders together. [-]
    house : SoundHouse
        Names the cases.
    catalogue : Catalogue
        Says how far a level may be off.
    steps : float
        Elements between the sounder and the ear. [-]

    Returns
    -------
    Estimate or None
        Never narrower than one input alone moves it; None where nothing is to be heard. [dBA]
    """
    if not (energy > 10.0 ** (SILENT_DBA / 10.0)).all():
        return None
    levels = 10.0 * np.log10(energy)
    value = float(levels[0])
    model = catalogue.figure(MODEL_FIGURES[int(min(max(steps, 0.0), 2.0))])
    baffle = catalogue.figure("sound-baffle")
    swings = [(model.name, model.high - model.low), (SHEET_WORDS, baffle.high - baffle.low)]
    swings += [
        (name, abs(float(levels[2 + 2 * index] - levels[1 + 2 * index])))
        for index, name in enumerate(house.names)
    ]
    ranked = sorted((one for one in swings if one[1] >= LEAST_SWING_DB), key=lambda one: (-one[1], one[0]))
    return Estimate(
        value=value,
        low=min(value + model.low, float(levels.min())),
        high=max(value + model.high, value + baffle.high, float(levels.max())),
        unit="dBA",
        drivers=tuple(driver_of(name, swing, "default") for name, swing in ranked),
        basis="default",
    )

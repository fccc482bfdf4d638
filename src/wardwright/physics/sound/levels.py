"""Levels at ears, from all sounders at once, in every case."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.physics.sound.house import OUTSIDE, Balance, IntArray
from wardwright.physics.sound.outside import facade_share, power_let_in

NEAREST_M = 0.1
"""An ear is never taken to be nearer than this. [m] (assumption)"""
ON_A_WALL = 2.0
"""Directivity of what hangs on a wall or a ceiling. [-]"""


class Sources(NamedTuple):
    """Sounders, D of them."""

    room: IntArray
    """Number of the room each is in; ``OUTSIDE``. Shape (D,). [-]"""
    place: FloatArray
    """Shape (D, 3). [m]"""
    power: FloatArray
    """A-weighted power of each band, over 1 pW, shape (D, F). [-]"""


class Ears(NamedTuple):
    """Places indoors where somebody listens, P of them."""

    room: IntArray
    """Shape (P,). [-]"""
    place: FloatArray
    """Shape (P, 3). [m]"""


class Facade(NamedTuple):
    """Pieces of the house's outside, W of them."""

    room: IntArray
    """Number of the room behind each, shape (W,). [-]"""
    is_leaf: FloatArray
    """1 for a leaf or pane, 0 for a wall, shape (W,). [-]"""
    number: IntArray
    """Its number among leaves or walls, shape (W,). [-]"""
    place: FloatArray
    """Its middle, shape (W, 3). [m]"""
    normal: FloatArray
    """Unit vector out of the house on the plan, shape (W, 2). [-]"""


def facade_through(facade: Facade, balance: Balance) -> FloatArray:
    """What each piece of the outside lets through.

    Parameters
    ----------
    facade : Facade
        The pieces.
    balance : Balance
        The house with its leaves in one state.

    Returns
    -------
    ndarray, shape (C, F, W)
        Area times share let through. [m2]
    """
    walls, leaves = balance.walls_through, balance.leaves_through
    found = np.zeros((*walls.shape[:2], len(facade.room)))
    leaf = facade.is_leaf > 0.5
    found[..., leaf] = leaves[..., facade.number[leaf]]
    found[..., ~leaf] = walls[..., facade.number[~leaf]]
    return found


def rooms_energy(
    balance: Balance, sources: Sources, *, facade: Facade, screened: FloatArray | None = None
) -> FloatArray:
    """Diffuse sound in every room from each sounder.

    Parameters
    ----------
    balance : Balance
        The house with its leaves in one state.
    sources : Sources
        The sounders.
    facade : Facade
        The house's outside, by which a sounder outside comes in.
    screened : ndarray, shape (D, W, F), optional
        The share of each sounder's sound outside that gets round the house to each piece; None: all. [-]

    Returns
    -------
    ndarray, shape (C, D, F, N)
        Square of the pressure over the reference, A-weighted. [-]
    """
    cases, bands, count, _ = balance.heard.shape
    found = np.zeros((cases, len(sources.room), bands, count))
    inside = sources.room != OUTSIDE
    if inside.any():
        rooms = sources.room[inside]
        # What the first meeting with the walls leaves over goes into the diffuse field.
        driven = balance.left_over[:, :, rooms] * sources.power[inside].T[None]
        heard = balance.heard[:, :, :, rooms] * driven[:, :, None, :]
        found[:, inside] = 4.0 * heard.transpose(0, 3, 1, 2)
    if (~inside).any() and len(facade.room):
        let_in = _let_in(balance, sources, facade=facade, screened=screened)[:, ~inside]
        found[:, ~inside] = 4.0 * (balance.heard[:, None] @ let_in[..., None])[..., 0]
    return found


def _let_in(balance: Balance, sources: Sources, *, facade: Facade, screened: FloatArray | None) -> FloatArray:
    """Power that each sounder outside puts into each room, shape (C, D, F, N)."""
    away = facade.place[None] - sources.place[:, None]
    distance = np.maximum(np.linalg.norm(away, axis=-1), NEAREST_M)
    slant = -(away[..., :2] * facade.normal[None]).sum(axis=-1) / distance
    falling = ON_A_WALL / (4.0 * np.pi * distance**2)
    arriving = sources.power[:, None, :] * falling[..., None]
    if screened is not None:
        # What has bent round a corner comes from there, not along the straight line: half of it faces the wall.
        slant = np.where(screened[..., 0] < 1.0, np.maximum(slant, 0.5), slant)
        arriving = arriving * screened
    through = facade_through(facade, balance)
    taken = power_let_in(arriving, slant[..., None])
    in_rooms = np.asarray(facade.room[:, None] == np.arange(balance.heard.shape[2]), dtype=np.float64)
    parts = through[:, None] * taken.transpose(0, 2, 1)[None]
    return np.asarray(parts @ in_rooms, dtype=np.float64)


def energy_at(rooms: FloatArray, sources: Sources, ears: Ears) -> FloatArray:
    """Sound at each ear from each sounder: what the room holds, and straight from the sounder where it is there too.

    Parameters
    ----------
    rooms : ndarray, shape (C, D, F, N)
        As `rooms_energy` gives it. [-]
    sources : Sources
        The sounders.
    ears : Ears
        The places.

    Returns
    -------
    ndarray, shape (C, D, P)
        Square of the pressure over the reference, A-weighted, all bands together. [-]
    """
    held = rooms.sum(axis=2)[:, :, ears.room]
    distance = np.linalg.norm(ears.place[None] - sources.place[:, None], axis=-1)
    falling = ON_A_WALL / (4.0 * np.pi * np.maximum(distance, NEAREST_M) ** 2)
    here = sources.room[:, None] == ears.room[None]
    direct = np.where(here, sources.power.sum(axis=1)[:, None] * falling, 0.0)
    return np.asarray(held + direct[None])


def facade_gain(balance: Balance, facade: Facade, places: FloatArray, *, screened: FloatArray) -> FloatArray:
    """What of the sound in each room reaches each place outside: it hangs on the house alone.

    Parameters
    ----------
    balance : Balance
        The house with its leaves in one state.
    facade : Facade
        The house's outside.
    places : ndarray, shape (Q, 3)
        Where somebody listens. [m]
    screened : ndarray, shape (W, Q, F)
        The share that gets round the house from each piece to each place. [-]

    Returns
    -------
    ndarray, shape (C, F, N, Q)
        Square of the pressure there over that in the room. [-]
    """
    through = facade_through(facade, balance)
    distance = np.linalg.norm(places[None] - facade.place[:, None], axis=-1)
    share = facade_share(through[..., None], distance) * screened.transpose(2, 0, 1)[None]
    in_rooms = np.asarray(facade.room[None] == np.arange(balance.heard.shape[2])[:, None], dtype=np.float64)
    return np.asarray(in_rooms @ share)


def energy_outside(
    rooms: FloatArray, sources: Sources, *, gain: FloatArray, places: FloatArray, screened: FloatArray
) -> FloatArray:
    """Sound at each place outside from each sounder.

    Parameters
    ----------
    rooms : ndarray, shape (C, D, F, N)
        As `rooms_energy` gives it. [-]
    sources : Sources
        The sounders.
    gain : ndarray, shape (C, F, N, Q)
        As `facade_gain` gives it. [-]
    places : ndarray, shape (Q, 3)
        Where somebody listens. [m]
    screened : ndarray, shape (D, Q, F)
        The share of a sounder outside that gets round the house to each place. [-]

    Returns
    -------
    ndarray, shape (C, D, Q)
        Square of the pressure over the reference, A-weighted. [-]
    """
    found = (rooms.transpose(0, 2, 1, 3) @ gain).sum(axis=1)
    outside = sources.room == OUTSIDE
    distance = np.linalg.norm(places[None] - sources.place[:, None], axis=-1)
    falling = ON_A_WALL / (4.0 * np.pi * np.maximum(distance, NEAREST_M) ** 2)
    straight = (sources.power[:, None, :] * screened).sum(axis=-1) * falling
    # A sounder outside is heard straight; what it puts into the rooms and they give back is left out as nothing.
    found[:, outside] = straight[outside][None]
    return np.asarray(found)

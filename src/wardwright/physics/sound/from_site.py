"""A house, its sounders and its ears as arrays for sound: the only file of this engine that knows the model."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, NamedTuple

import numpy as np
from scipy.sparse.csgraph import shortest_path

from wardwright.geometry.detours import ways_round
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.fabric import Space
from wardwright.model.furnishing import swallowing
from wardwright.model.leaves import state_at_night
from wardwright.model.opening import LeafState, Opening
from wardwright.model.placement import Standing, space_at, standing
from wardwright.model.room_shapes import hull_of, indoors
from wardwright.model.site import Site
from wardwright.model.sound_make import spectrum_of, stated_level
from wardwright.model.sound_paths import LeafPath, OuterPiece, WallPath, leaf_paths, outer_pieces, wall_paths
from wardwright.physics.sound.air import air_absorption
from wardwright.physics.sound.bands import BANDS_HZ, band_of, exact_middles
from wardwright.physics.sound.house import (
    OUTSIDE,
    Balance,
    Case,
    Elements,
    House,
    IntArray,
    Leaves,
    Rooms,
    balance_of,
    open_shares,
)
from wardwright.physics.sound.levels import Facade, Sources, facade_gain
from wardwright.physics.sound.outside import screen_loss
from wardwright.physics.sound.power import power_level

DoorStates = Literal["shut", "night"]
"""All leaves shut, or as they stand at night as far as that is told."""
NEPERS = 10.0 / math.log(10.0)
"""Decibels for one part in e of energy. [dB]"""
ON_A_BAFFLE = 2.0
"""A sheet that does not say how its level was measured is taken to mean this. [-] (assumption: the quieter)"""


@dataclass(frozen=True, eq=False)
class SoundHouse:
    """A house ready to be asked; it hangs on the bare house and the catalogue alone."""

    spaces: tuple[Space, ...]
    house: House
    openings: tuple[Opening | None, ...]
    """What each leaf is; None: an open edge or a well."""
    facade: Facade
    block: FloatArray
    """Corners of the house's own outline, taken convex; empty where it has none, shape (V, 2). [m]"""
    names: tuple[str, ...]
    """What each pair of cases after the first is about."""
    cases: tuple[Case, ...]

    def room(self, space_id: str | None) -> int:
        """The number of a space; OUTSIDE where it is none of them."""
        return next((i for i, space in enumerate(self.spaces) if space.id == space_id), OUTSIDE)

    def with_leaf(
        self, states: tuple[LeafState, ...], *, opening_id: str, state: LeafState
    ) -> tuple[LeafState, ...]:
        """The same leaves with one of them otherwise."""
        at = next(i for i, o in enumerate(self.openings) if o is not None and o.id == opening_id)
        return (*states[:at], state, *states[at + 1 :])


def sound_house(site: Site, catalogue: Catalogue) -> SoundHouse:
    """The house as arrays, remembered by the bare house.

    Parameters
    ----------
    site : Site
        Its house alone counts.
    catalogue : Catalogue
        Rows and figures of sound.

    Returns
    -------
    SoundHouse
        The same object for the same house.
    """
    return _sound_house(site.bare, catalogue)


@lru_cache(maxsize=16)
def _sound_house(site: Site, catalogue: Catalogue) -> SoundHouse:
    spaces = indoors(site)
    number: dict[str | None, int] = {space.id: index for index, space in enumerate(spaces)}
    walls, leaves = wall_paths(site, catalogue), leaf_paths(site, catalogue)
    is_unsure = any(path.makes[0] != path.makes[2] for path in walls)
    names, cases = _cases(catalogue, is_unsure=is_unsure)
    return SoundHouse(
        spaces,
        House(_rooms(site, catalogue, spaces), _elements(walls, number), _leaves(leaves, number)),
        tuple(leaf.opening for leaf in leaves),
        _facade(outer_pieces(site, walls, leaves), number),
        np.asarray(hull_of(spaces), dtype=np.float64).reshape(-1, 2),
        names,
        cases,
    )


def _cases(catalogue: Catalogue, *, is_unsure: bool) -> tuple[tuple[str, ...], tuple[Case, ...]]:
    field, gap, furnishing = (
        catalogue.figure(f"sound-{name}") for name in ("field-loss", "door-gap", "furnishing")
    )
    likely = Case(field.value, gap.value, furnishing.value)
    pairs = [
        (field.name, likely._replace(field_loss=field.low), likely._replace(field_loss=field.high)),
        (gap.name, likely._replace(door_gap=gap.low), likely._replace(door_gap=gap.high)),
        (
            furnishing.name,
            likely._replace(furnishing=furnishing.low),
            likely._replace(furnishing=furnishing.high),
        ),
    ]
    if is_unsure:
        name = "what walls and floors are made of"
        pairs.append((name, likely._replace(unknown_walls=0), likely._replace(unknown_walls=2)))
    return tuple(name for name, *_ in pairs), (likely, *(case for _, *both in pairs for case in both))


def _ends(
    paths: tuple[WallPath, ...] | tuple[LeafPath, ...], number: dict[str | None, int]
) -> tuple[IntArray, IntArray, FloatArray]:
    one = np.asarray([number[path.one] for path in paths], dtype=np.int64)
    other = np.asarray([number.get(path.other, OUTSIDE) for path in paths], dtype=np.int64)
    return one, other, np.asarray([path.area_m2 for path in paths], dtype=np.float64)


def _elements(walls: tuple[WallPath, ...], number: dict[str | None, int]) -> Elements:
    losses = np.asarray([path.makes for path in walls], dtype=np.float64).reshape(-1, 3, len(BANDS_HZ))
    return Elements(*_ends(walls, number), losses.transpose(1, 0, 2))


def _leaves(leaves: tuple[LeafPath, ...], number: dict[str | None, int]) -> Leaves:
    loss = np.asarray([path.loss_db for path in leaves], dtype=np.float64).reshape(-1, len(BANDS_HZ))
    gaps = np.asarray([path.gap_width_m for path in leaves], dtype=np.float64)
    return Leaves(*_ends(leaves, number), loss, gaps)


def _rooms(site: Site, catalogue: Catalogue, spaces: tuple[Space, ...]) -> Rooms:
    each = [swallowing(site, catalogue, space) for space in spaces]
    volume = np.asarray([one.volume_m3 for one in each], dtype=np.float64)
    lost = air_absorption(exact_middles(), celsius=site.place.usual_room_c) / NEPERS
    return Rooms(
        volume,
        np.asarray([one.surface_m2 for one in each], dtype=np.float64),
        np.asarray([one.area_m2 for one in each], dtype=np.float64).reshape(-1, len(BANDS_HZ)),
        4.0 * volume[:, None] * lost,
    )


def _facade(pieces: tuple[OuterPiece, ...], number: dict[str | None, int]) -> Facade:
    return Facade(
        np.asarray([number[piece.space] for piece in pieces], dtype=np.int64),
        np.asarray([piece.is_leaf for piece in pieces], dtype=np.float64),
        np.asarray([piece.number for piece in pieces], dtype=np.int64),
        np.asarray([piece.at_m for piece in pieces], dtype=np.float64).reshape(-1, 3),
        np.asarray([piece.normal for piece in pieces], dtype=np.float64).reshape(-1, 2),
    )


@lru_cache(maxsize=64)
def leaf_states(house: SoundHouse, doors: DoorStates) -> tuple[LeafState, ...]:
    """How each leaf stands; what never shuts stands open.

    Parameters
    ----------
    house : SoundHouse
        The house.
    doors : {"shut", "night"}
        All shut, or as told for the night: what nobody told is shut.

    Returns
    -------
    tuple of str
        In the order of the house's leaves.
    """
    states: list[LeafState] = ["open"] * len(house.openings)
    for index, opening in enumerate(house.openings):
        if opening is not None and opening.kind != "gap":
            states[index] = state_at_night(opening) if doors == "night" else "shut"
    return tuple(states)


@lru_cache(maxsize=128)
def balance(house: SoundHouse, states: tuple[LeafState, ...]) -> Balance:
    """The house with its leaves in one state, ready for any sounder.

    Parameters
    ----------
    house : SoundHouse
        The house.
    states : tuple of str
        How its leaves stand.

    Returns
    -------
    Balance
        For all cases.
    """
    return balance_of(house.house, open_shares(states), house.cases)


@lru_cache(maxsize=128)
def elements_between(house: SoundHouse, states: tuple[LeafState, ...]) -> FloatArray:
    """The fewest walls, floors or shut leaves between each two rooms.

    Parameters
    ----------
    house : SoundHouse
        The house.
    states : tuple of str
        How its leaves stand.

    Returns
    -------
    ndarray, shape (N, N)
        inf where nothing joins them. [-]
    """
    count = len(house.spaces)
    steps = np.full((count, count), np.inf)
    free = open_shares(states)
    for one, other in zip(house.house.walls.one, house.house.walls.other, strict=True):
        if other != OUTSIDE:
            steps[one, other] = steps[other, one] = min(steps[one, other], 1.0)
    for index, (one, other) in enumerate(zip(house.house.leaves.one, house.house.leaves.other, strict=True)):
        if other != OUTSIDE:
            through = 1e-6 if free[index] > 0.5 else 1.0
            steps[one, other] = steps[other, one] = min(steps[one, other], through)
    found = shortest_path(np.where(np.isfinite(steps), steps, 0.0), directed=False)
    return np.asarray(np.round(found), dtype=np.float64)


class Sounding(NamedTuple):
    """A device that sounds."""

    device: Device
    sheet: DeviceSheet
    place: Standing
    room: int
    """Number of its room; OUTSIDE. [-]"""


def sounding(site: Site, catalogue: Catalogue) -> tuple[Sounding, ...]:
    """All devices whose sheets state a level.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Their sheets.

    Returns
    -------
    tuple of Sounding
        By id; one outside stands in no room.
    """
    house = sound_house(site, catalogue)
    found = []
    for device in sorted(site.devices, key=lambda d: d.id):
        sheet = catalogue.sheet(device.sheet)
        if stated_level(sheet) is not None:
            place = standing(site, device)
            space = space_at(site, place.storey, (place.x_m, place.y_m))
            found.append(Sounding(device, sheet, place, house.room(None if space is None else space.id)))
    return tuple(found)


def place_of(site: Site, place: Standing) -> tuple[float, float, float]:
    """Where a device is in the house.

    Parameters
    ----------
    site : Site
        For its storeys.
    place : Standing
        Where it stands.

    Returns
    -------
    tuple of float
        Plan x, plan y, height above the house's zero. [m]
    """
    return place.x_m, place.y_m, site.storey(place.storey).elevation_m + place.height_m


def sources(site: Site, catalogue: Catalogue, sounders: tuple[Sounding, ...]) -> Sources:
    """Sounders as arrays.

    Parameters
    ----------
    site : Site
        For its storeys.
    catalogue : Catalogue
        For how they sound.
    sounders : tuple of Sounding
        The devices.

    Returns
    -------
    Sources
        A-weighted band by band, in the same order.
    """
    powers = [_power(catalogue, one.sheet) for one in sounders]
    return Sources(
        np.asarray([one.room for one in sounders], dtype=np.int64),
        np.asarray([place_of(site, one.place) for one in sounders], dtype=np.float64).reshape(-1, 3),
        np.asarray(powers, dtype=np.float64).reshape(-1, len(BANDS_HZ)),
    )


@lru_cache(maxsize=64)
def _power(catalogue: Catalogue, sheet: DeviceSheet) -> tuple[float, ...]:
    stated = stated_level(sheet)
    if stated is None:
        return (0.0,) * len(BANDS_HZ)
    level, distance, tone = stated
    shares = np.asarray(spectrum_of(catalogue, sheet.kind), dtype=np.float64)
    if tone is not None:
        shares = np.zeros(len(BANDS_HZ))
        shares[band_of(tone)] = 1.0
    power = 10.0 ** (power_level(level, distance=distance, directivity=ON_A_BAFFLE) / 10.0)
    return tuple(float(one) for one in shares / shares.sum() * power)


def screened(house: SoundHouse, starts: FloatArray, ends: FloatArray) -> FloatArray:
    """The share of sound that gets round the house between places outside it.

    Parameters
    ----------
    house : SoundHouse
        The house.
    starts : ndarray, shape (S, 3)
        Where it comes from. [m]
    ends : ndarray, shape (E, 3)
        Where it is heard. [m]

    Returns
    -------
    ndarray, shape (S, E, F)
        1 where the house is not in the way. [-]
    """
    if not len(house.block):
        return np.ones((len(starts), len(ends), len(BANDS_HZ)))
    a, b = starts[:, :2], ends[:, :2]
    round_it = ways_round(house.block, a, b)
    detour = round_it - np.linalg.norm(a[:, None] - b[None], axis=-1)
    return np.asarray(10.0 ** (-screen_loss(detour[..., None], exact_middles()) / 10.0))


@lru_cache(maxsize=64)
def gain_outside(
    house: SoundHouse, states: tuple[LeafState, ...], places: tuple[tuple[float, float, float], ...]
) -> FloatArray:
    """What of the sound in each room reaches each place outside.

    Parameters
    ----------
    house : SoundHouse
        The house.
    states : tuple of str
        How its leaves stand.
    places : tuple of tuples
        Where somebody listens. [m]

    Returns
    -------
    ndarray, shape (C, F, N, Q)
        Square of the pressure there over that in the room. [-]
    """
    at = np.asarray(places, dtype=np.float64).reshape(-1, 3)
    # Just clear of the wall, so that a piece does not stand in its own way.
    clear = house.facade.place.copy()
    clear[:, :2] += 0.5 * house.facade.normal
    return facade_gain(balance(house, states), house.facade, at, screened=screened(house, clear, at))

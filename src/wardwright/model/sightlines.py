"""What sight from one storey meets, there and through the stairwells of the storeys above and below.

Memoised by the storeys' parts.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from wardwright.geometry.panels import Blockers, between, joined
from wardwright.geometry.polar import Through
from wardwright.geometry.raster import FloatArray
from wardwright.model.fabric import Stair, Storey
from wardwright.model.flights import flight, height_on, well
from wardwright.model.leaves import Leaves, Medium
from wardwright.model.surfaces import Level, surfaces

Levels = tuple[Level, ...]
LEAVES: tuple[Leaves, Leaves] = ("told", "away")
"""How leaves stand for what is sure, and for what is possible."""


def _flights(level: Level, others: Levels) -> list[tuple[Stair, Level, Level]]:
    """Stairs between a storey and others, each with its lower and its upper storey."""
    by_id = {one.storey.id: one for one in (level, *others)}
    return [
        (stair, by_id[stair.lower], by_id[stair.upper])
        for stair in level.parts.stairs
        if stair.lower in by_id and stair.upper in by_id and stair.lower != stair.upper
    ]


@lru_cache(maxsize=256)
def blockers_about(
    level: Level, others: Levels, *, medium: Medium = "heat", leaves: Leaves = "told"
) -> Blockers:
    """All that stops sight from a storey, there and on others, with the stairs between.

    Parameters
    ----------
    level : Level
        The storey of the eye.
    others : tuple of Level
        Storeys that a stair joins to it.
    medium : {"heat", "light"}
        What sight is by.
    leaves : {"told", "shut", "away"}
        How doors stand, and whether open balusters are looked through.

    Returns
    -------
    Blockers
        Panels with heights above the house's zero. [m]
    """
    parts = [surfaces(one, medium, leaves) for one in (level, *others)]
    for stair, lower, upper in _flights(level, others):
        parts.append(flight(stair, (lower.storey, upper.storey), leaves))
    return joined(parts)


@lru_cache(maxsize=256)
def blockers_on(
    level: Level, others: Levels, *, medium: Medium = "heat", leaves: Leaves = "told"
) -> Blockers:
    """As `blockers_about`, but only what reaches between the floor and the ceiling of the storey itself.

    Parameters
    ----------
    level : Level
        The storey of the eye.
    others : tuple of Level
        Storeys that a stair joins to it.
    medium : {"heat", "light"}
        What sight is by.
    leaves : {"told", "shut", "away"}
        How doors stand, and whether open balusters are looked through.

    Returns
    -------
    Blockers
        Panels with heights above the house's zero. [m]
    """
    own = [surfaces(level, medium, leaves)]
    for stair, lower, upper in _flights(level, others):
        own.append(flight(stair, (lower.storey, upper.storey), leaves))
    return between(joined(own), low=level.floor_m, high=level.ceiling_m)


@lru_cache(maxsize=256)
def leaves_apart(level: Level, others: Levels, *, on_storey: bool) -> FloatArray:
    """The panels that hide body heat as leaves are told but not with them away, or the other way round.

    Parameters
    ----------
    level : Level
        The storey of the eye.
    others : tuple of Level
        Storeys that a stair joins to it.
    on_storey : bool
        Those of `blockers_on`; otherwise of `blockers_about`.

    Returns
    -------
    ndarray, shape (P, 6)
        None is the side of a box: only leaves and balusters change. [m]
    """
    blockers = blockers_on if on_storey else blockers_about
    told, away = (set(map(tuple, blockers(level, others, leaves=way).panels.tolist())) for way in LEAVES)
    return np.array(sorted(told ^ away), dtype=np.float64).reshape(-1, 6)


@lru_cache(maxsize=256)
def passages(level: Level, other: Level) -> tuple[Through, ...]:
    """The ceiling and the floor between two storeys, open at the wells of the stairs that join them.

    Parameters
    ----------
    level : Level
        The storey of the eye.
    other : Level
        The storey that is looked at.

    Returns
    -------
    tuple of Through
        Nearest to the eye first.
    """
    upward = other.floor_m > level.floor_m
    lower, upper = (level, other) if upward else (other, level)
    holes = tuple(
        np.asarray(well(stair), dtype=np.float64)
        for stair, below, above in _flights(level, (other,))
        if (below.storey.id, above.storey.id) == (lower.storey.id, upper.storey.id)
    )
    under, over = Through(min(lower.ceiling_m, upper.floor_m), holes), Through(upper.floor_m, holes)
    return (under, over) if upward else (over, under)


@lru_cache(maxsize=256)
def floors_about(level: Level, others: Levels) -> tuple[Through, ...]:
    """The floor and the ceiling of a storey, and those just beyond, open at the stairwells.

    Parameters
    ----------
    level : Level
        The storey of the eye.
    others : tuple of Level
        Storeys that a stair joins to it.

    Returns
    -------
    tuple of Through
        For rays that may leave the storey.
    """
    found = {"up": [Through(level.ceiling_m, ())], "down": [Through(level.floor_m, ())]}
    for other in others:
        way = "up" if other.floor_m > level.floor_m else "down"
        found[way] = list(passages(level, other))
        # Beyond the next storey nothing is followed.
        beyond = other.ceiling_m if way == "up" else other.floor_m
        found[way].append(Through(beyond, ()))
    return (*found["up"], *found["down"])


def stood_on(level: Level, others: Levels, places: FloatArray, *, stair: str | None = None) -> FloatArray:
    """How high one stands at places of a storey: on its floor, or on a flight.

    Parameters
    ----------
    level : Level
        The storey of the places.
    others : tuple of Level
        Storeys that a stair may join to it.
    places : ndarray, shape (N, 2)
        Places on the plan. [m]
    stair : str, optional
        The flight that the places are on; "": on none. None: not known, so whichever is drawn there, if any.

    Returns
    -------
    ndarray, shape (N,)
        Above the house's zero; nan where the flight leads to none of the other storeys; not to be written to. [m]
    """
    return _stood_on(level, others, np.ascontiguousarray(places, dtype=np.float64).tobytes(), on=stair)


@lru_cache(maxsize=1024)
def _stood_on(level: Level, others: Levels, given: bytes, *, on: str | None) -> FloatArray:
    """As `stood_on`, remembered by the places' bytes: one way is asked about for every detector."""
    places = np.frombuffer(given, dtype=np.float64).reshape(-1, 2)
    known = [one for one in _flights(level, others) if on is None or one[0].id == on]
    heights = np.full(len(places), level.floor_m if known or not on else np.nan)
    for stair, lower, upper in known:
        storeys: tuple[Storey, Storey] = (lower.storey, upper.storey)
        on_flight = height_on(stair, storeys, places)
        heights = np.where(np.isnan(on_flight), heights, on_flight)
    heights.flags.writeable = False
    return heights

"""The least-detected path over the floor of all storeys: where the chance to be noticed is least, whatever it takes.

It is the shortest path by the costs -log(1 - chance). What a movement detector notices is taken by the floor walked
(`chance-noticed-...` of the catalogue), apart from how its zones are crossed: a stand-in for a table that nobody
publishes.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely
from scipy.sparse import csr_array

from wardwright.geometry.least_cost import Link, ways_over, web_of_cells
from wardwright.geometry.raster import FloatArray, IntArray, painted
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.fabric import Stair
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import watch
from wardwright.physics.walking.from_site import Spot
from wardwright.trials.barriers import (
    CELL_M,
    HALF_DIAGONAL_M,
    grids_of,
    stack_of,
    standing_cells,
    standing_floor,
    watched_floor,
)
from wardwright.trials.floors import on_grid
from wardwright.trials.path_lines import Lines, by_storey

SURE_WALK_M = 1.5
"""The walk that the chances to be noticed are stated for. [m] (assumption after the European walk-test method)"""
LENGTH_COST = 1e-6
"""What a metre costs by itself, so that of equal paths the shorter is taken. [-] (derived here: far below any
chance that counts)"""
FLIGHT = "stairs"


class Stretch(NamedTuple):
    """The part of a path that lies in one room or on one flight."""

    name: str
    """Of the room; `FLIGHT` on a flight."""
    detection: float
    """Chance to be noticed on it. [-]"""
    flat_m: float
    """Walked on the flat. [m]"""
    stairs_m: float
    """Walked on stairs. [m]"""
    mostly_by: Device | None
    """The device that is likeliest to notice; None: nothing does."""


def least_detected(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, start: Spot, goal: Spot
) -> tuple[Stretch, ...] | None:
    """Find the path from one place to another on which some devices are least likely to notice.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets and figures.
    devices : tuple of Device
        The detectors that count.
    start, goal : Spot
        The path's ends.

    Returns
    -------
    tuple of Stretch or None
        The path, room by room; None where none leads there.
    """
    found = _path(house, catalogue, devices, start=start, goal=goal)
    return None if found is None else _stretches(house, catalogue, devices, at=found)


def path_lines(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, start: Spot, goal: Spot
) -> Lines:
    """The least-detected path as lines, storey by storey; none where none leads there.

    Parameters
    ----------
    house, catalogue, devices, start, goal : Site, Catalogue, tuple of Device, Spot, Spot
        As for `least_detected`.

    Returns
    -------
    tuple of (str, tuple of point)
        From cell to cell, told by the corners. [m]
    """
    found = _path(house, catalogue, devices, start=start, goal=goal)
    if found is None:
        return ()
    stack, grids = stack_of(house), grids_of(house)
    row, column = np.divmod(found, stack.shape[1])
    storeys = [""] * len(found)
    points = np.zeros((len(found), 2))
    for storey, (rows, _) in stack.parts.items():
        grid, here = grids[storey], (row >= rows.start) & (row < rows.stop)
        points[here, 0] = grid.x0 + (column[here] + 0.5) * grid.cell
        points[here, 1] = grid.y0 + (row[here] - rows.start + 0.5) * grid.cell
        for i in np.flatnonzero(here).tolist():
            storeys[i] = storey
    return by_storey(storeys, points.tolist())


@lru_cache(maxsize=512)
def _path(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, start: Spot, goal: Spot
) -> IntArray | None:
    """The path as cells of the stack; None where none leads there."""
    starts = _cells_at(house, start)
    if not len(starts):
        return None
    return ways_over(_web(house, catalogue, devices), starts).to(_cells_at(house, goal))


@lru_cache(maxsize=512)
def _each_metre(house: Site, catalogue: Catalogue, device: Device) -> FloatArray:
    """-log(1 - chance) of being noticed by one device on a metre of each cell of the stack. [-]"""
    stack, grids = stack_of(house), grids_of(house)
    rate = np.zeros(stack.shape)
    if catalogue.sheet(device.sheet).kind == "movement-detector":
        seen = watch(house, catalogue, device)
        if seen.storey not in grids:
            return rate
        there = rate[stack.parts[seen.storey]]
        for mask, figure in (
            (seen.high, "chance-noticed-possibly"),
            (seen.seen, "chance-noticed-likely"),
            (seen.low, "chance-noticed-surely"),
        ):
            own = on_grid(mask, of=seen.grid, onto=grids[seen.storey])
            there[own] = -np.log1p(-catalogue.figure(figure).value) / SURE_WALK_M
        return rate
    for storey, mask in watched_floor(house, catalogue, device, side="surely").items():
        mount = device.mount
        wide = house.opening(mount.opening).width_m if isinstance(mount, OpeningMount) else CELL_M
        # The doorway's cells, as deep as they are on the average: so much is walked on them straight through.
        deep = float(np.count_nonzero(mask)) * CELL_M**2 / (wide + 2.0 * HALF_DIAGONAL_M)
        if deep <= 0.0:
            continue
        told = -np.log1p(-catalogue.figure("chance-contact-tells").value)
        rate[stack.parts[storey]][mask] = told / deep
    return rate


@lru_cache(maxsize=64)
def _web(house: Site, catalogue: Catalogue, devices: tuple[Device, ...]) -> csr_array:
    """The cells of all storeys, joined at the cost of being noticed by any of some devices."""
    rate = np.full(stack_of(house).shape, LENGTH_COST)
    for device in devices:
        rate = rate + _each_metre(house, catalogue, device)
    is_open = standing_floor(house).cells
    links = []
    for stair in house.stairs:
        ends = _ends(house, stair)
        if ends is not None:
            links.append(Link(*ends, _long(stair) * float(rate.ravel()[list(ends)].mean())))
    return web_of_cells(is_open, rate, cell=CELL_M, links=links)


def _cells_at(house: Site, spot: Spot) -> IntArray:
    """The cells that somebody stands on who is at a spot, in the stack, row by row."""
    stack, found = stack_of(house), standing_cells(house, spot)
    if not len(found):
        return np.zeros(0, dtype=np.int64)
    rows, columns = stack.parts[spot.storey]
    cells: IntArray = (found[:, 0] + rows.start) * stack.shape[1] + found[:, 1] + columns.start
    return cells


@lru_cache(maxsize=64)
def _space_of(house: Site) -> IntArray:
    """Number of the space of each cell of the stack; -1: none."""
    stack = stack_of(house)
    found = np.full(stack.shape, -1, dtype=np.int64)
    for number, space in enumerate(house.spaces):
        if space.storey in stack.parts:
            inside = painted(grids_of(house)[space.storey], shapely.Polygon(space.outline_m))
            found[stack.parts[space.storey]][inside] = number
    return found.ravel()


def _ends(house: Site, stair: Stair) -> tuple[int, int] | None:
    """The cells at the foot and the head of a flight; None where nobody can stand at one of them."""
    spots = (Spot(stair.lower, *stair.line_m[0]), Spot(stair.upper, *stair.line_m[-1]))
    foot, head = (_cells_at(house, spot) for spot in spots)
    return (int(foot[0]), int(head[0])) if len(foot) and len(head) else None


def _stretches(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, at: IntArray
) -> tuple[Stretch, ...]:
    """A path of cells, room by room."""
    if len(at) < 2:
        return ()
    row, column = np.divmod(at, stack_of(house).shape[1])
    metres = CELL_M * np.hypot(np.diff(row), np.diff(column))
    flights = {frozenset(ends): stair for stair in house.stairs if (ends := _ends(house, stair)) is not None}
    is_flight = np.array(
        [frozenset(pair) in flights for pair in zip(at[:-1].tolist(), at[1:].tolist(), strict=True)]
    )
    for i in np.flatnonzero(is_flight).tolist():
        metres[i] = _long(flights[frozenset(at[i : i + 2].tolist())])
    spaces = _space_of(house)[at[1:]]
    # A doorway belongs to the room that is left.
    known = np.maximum.accumulate(np.where(spaces >= 0, np.arange(len(spaces)), 0))
    room = np.where(is_flight, -2, spaces[known])
    each = [_each_metre(house, catalogue, device).ravel()[at] for device in devices]
    costs = [(rate[1:] + rate[:-1]) / 2.0 * metres for rate in each]
    begins = np.flatnonzero(np.diff(room, prepend=-9)).tolist()
    found = []
    for first, last in zip(begins, [*begins[1:], len(room)], strict=True):
        by_device = [float(cost[first:last].sum()) for cost in costs]
        number, walked = int(room[first]), float(metres[first:last].sum())
        most = max(range(len(devices)), key=lambda i: by_device[i], default=None)
        found.append(
            Stretch(
                FLIGHT if number == -2 else house.spaces[number].name if number >= 0 else "between rooms",
                float(-np.expm1(-sum(by_device))),
                0.0 if number == -2 else walked,
                walked if number == -2 else 0.0,
                devices[most] if most is not None and by_device[most] > 0.0 else None,
            )
        )
    return tuple(found)


def _long(stair: Stair) -> float:
    """Length of a flight on the plan: never too long. [m]"""
    return float(shapely.LineString(stair.line_m).length)

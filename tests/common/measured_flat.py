"""Radio levels measured in a furnished flat, and the program's own radio model held against them.

The readings are M. Kolakowski's, doi 10.5281/zenodo.5457591 (CC BY 4.0): a tag 1.3 m above the floor, six receivers.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import numpy as np
import shapely

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.physics.radio.calibration import Belief, learned
from wardwright.physics.radio.free_space import free_space_loss
from wardwright.store.catalogue import load_catalogue

TAG_M = 1.3
BAND_HZ = 2440e6
WALL_PIECE_M = 0.03
CELL_M = 0.5
LEAST_IN_A_CELL = 3
FEW = 3
"""So many cells by each receiver are what a fitter might read."""
SENT_DBM = 0.0
"""The tag's power is not stated: this is a guess, and the offset holds what it is wrong by."""
WALL_CLASS = "masonry"
Z_90 = 1.6448536269514722


@dataclass(frozen=True)
class Flat:
    """Links, one row each: N in all."""

    receiver: IntArray
    free_space_db: FloatArray
    walls: FloatArray
    level_dbm: FloatArray
    cell: IntArray
    """Which receiver's which cell of 0.5 m."""

    def cells(self) -> Flat:
        """Means of the cells with three readings or more, as links."""
        order = np.unique(self.cell, return_inverse=True)[1]
        sums = np.bincount(order)
        kept = sums >= LEAST_IN_A_CELL

        def mean(values: FloatArray) -> FloatArray:
            return (np.bincount(order, weights=values) / sums)[kept]

        first = np.full(len(sums), -1)
        first[order[::-1]] = np.arange(len(order))[::-1]
        return Flat(
            self.receiver[first[kept]],
            mean(self.free_space_db),
            mean(self.walls),
            mean(self.level_dbm),
            self.cell[first[kept]],
        )

    def of(self, chosen: BoolArray | IntArray) -> Flat:
        """Some of the links."""
        return Flat(
            self.receiver[chosen], self.free_space_db[chosen], self.walls[chosen], self.level_dbm[chosen],
            self.cell[chosen],
        )  # fmt: skip


@lru_cache(maxsize=1)
def read_flat(folder: Path) -> Flat:
    """All readings, with the walls that each path crosses: pieces of it outside the ring of free floor."""
    with (folder / "layout.csv").open(encoding="utf-8") as file:
        free = shapely.Polygon([(float(row["x"]), float(row["y"])) for row in csv.DictReader(file)])
    with (folder / "anchors.csv").open(encoding="utf-8") as file:
        anchors = [tuple(float(row[key]) for key in ("x", "y", "z")) for row in csv.DictReader(file)]
    with (folder / "calibration_df.csv").open(encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    places = np.array([(float(row["x"]), float(row["y"])) for row in rows])
    parts: list[tuple[FloatArray, ...]] = []
    for i, (x, y, z) in enumerate(anchors):
        heard = np.flatnonzero([row[f"rssi_{i + 1}"] != "" for row in rows])
        at = places[heard]
        ends = np.stack([at, np.broadcast_to((x, y), at.shape)], axis=1)
        outside = shapely.difference(shapely.linestrings(ends), free)
        pieces, owner = shapely.get_parts(outside, return_index=True)
        is_wall = shapely.length(pieces) > WALL_PIECE_M
        walls = np.bincount(owner[is_wall], minlength=len(at)).astype(np.float64)
        distance = np.sqrt(((at - (x, y)) ** 2).sum(axis=1) + (z - TAG_M) ** 2)
        levels = np.array([float(rows[k][f"rssi_{i + 1}"]) for k in heard])
        column, row = np.floor(at / CELL_M).astype(int).T
        cell = (i * 1000 + column) * 1000 + row
        parts.append(
            (np.full(len(at), i), free_space_loss(np.maximum(distance, 0.13), BAND_HZ), walls, levels, cell)
        )
    receiver, spread, walls, levels, cell = (np.concatenate(each) for each in zip(*parts, strict=True))
    return Flat(receiver.astype(np.int64), spread, walls, levels, cell.astype(np.int64))


def rmse(values: FloatArray) -> float:
    """Root of the mean square."""
    return float(np.sqrt((values**2).mean()))


def fitted(flat: Flat, *, walls: bool) -> FloatArray:
    """Constant, and loss of a wall, by least squares: level = constant - free space - loss * walls."""
    columns = [np.ones(len(flat.level_dbm))] + ([-flat.walls] if walls else [])
    found, *_ = np.linalg.lstsq(np.column_stack(columns), flat.level_dbm + flat.free_space_db, rcond=None)
    return found


def misses(flat: Flat, model: FloatArray) -> FloatArray:
    """Each level less what a fitted model says."""
    said = model[0] - flat.free_space_db - (model[1] * flat.walls if len(model) > 1 else 0.0)
    return flat.level_dbm - said


def receiver_left_out(points: Flat, *, walls: bool, on: Flat | None = None) -> FloatArray:
    """What each receiver's readings miss a model by that was fitted on the other five."""
    held = on or points
    found = [
        misses(held.of(held.receiver == one), fitted(points.of(points.receiver != one), walls=walls))
        for one in range(6)
    ]
    return np.concatenate(found)


@dataclass(frozen=True)
class Forecast:
    """What the program's own belief says of links: an expected level, and its spread."""

    expected: FloatArray
    spread: FloatArray

    def misses(self, flat: Flat) -> FloatArray:
        """Each level less what is expected."""
        return flat.level_dbm - self.expected

    def share_inside(self, flat: Flat) -> float:
        """The share of the readings that lie between the stated 5th and 95th percentile."""
        return float((np.abs(self.misses(flat)) <= Z_90 * self.spread).mean())


def forecast(flat: Flat, *, read: Flat | None, spot: bool = True) -> Forecast:
    """The program's own forecast: as the catalogue has it, and after some readings."""
    catalogue = load_catalogue()
    offset = catalogue.figure("radio-offset")
    wall = next(row for row in catalogue.wall_losses if row.id == WALL_CLASS)
    spreads = [(offset.high - offset.low) / 2 / Z_90, (wall.high_db - wall.low_db) / 2 / Z_90]
    belief = Belief(np.array([offset.value, 0.0]), np.diag(np.array(spreads) ** 2))
    path = catalogue.figure("radio-shadowing").value
    whole = float(np.hypot(path, catalogue.figure("radio-spot").value))
    if read is not None:
        known = SENT_DBM - read.free_space_db - wall.value_db * read.walls
        belief = learned(
            belief,
            np.column_stack([np.ones(len(read.walls)), read.walls]),
            read.level_dbm - known,
            shadowing=np.full(len(read.walls), path),
            reading=catalogue.figure("radio-reading").value,
        ).belief
    rows = np.column_stack([np.ones(len(flat.walls)), flat.walls])
    expected = SENT_DBM - flat.free_space_db - wall.value_db * flat.walls - rows @ belief.mean
    variance = np.einsum("ij,jk,ik->i", rows, belief.spread, rows) + (whole if spot else path) ** 2
    return Forecast(expected, np.sqrt(variance))


def few_of(cells: Flat, *, without: int, seed: int = 20_260_101) -> Flat:
    """Three cells by each of the other five receivers, drawn by a seed: what a fitter might read."""
    rng = np.random.default_rng(seed)
    chosen = [
        rng.choice(np.flatnonzero(cells.receiver == one), FEW, replace=False)
        for one in range(6)
        if one != without
    ]
    return cells.of(np.concatenate(chosen))

"""Walking held against exact cases, an independent visibility graph, and fast marching."""

from __future__ import annotations

import math
import os
from collections.abc import Iterator
from typing import Any

import numpy as np
import shapely
import skfmm

from accuracy.rows import Row
from common.visibility_graph import VisibilityGraph, invented_floor
from wardwright.geometry.clearance import shrunk
from wardwright.geometry.raster import grid_over
from wardwright.physics.walking.network import Costs, reach_from, times_on, way_to, web_of

IS_PROVING = os.environ.get("WARDWRIGHT_PROVE") == "1"
CORNER = shapely.box(0, 0, 4, 4).difference(shapely.box(1, 0, 3, 2))
START = np.array([2.02, 1.53])
COSTS = Costs(1 / 1.3, 1.0, 1.0)


def accuracy_rows() -> list[Row]:
    """The rows for docs/accuracy.md: exact cases first, then the walking map of a furnished floor."""
    return [*_exact_cases(), *_map_of_a_floor(1000 if IS_PROVING else 60), _against_fast_marching()]


def _length(area: Any, a: tuple[float, float], b: tuple[float, float]) -> float:
    web = web_of((area,), (np.empty((0, 2, 2)),), ())
    costs = Costs(1.0, 1.0, 0.0)
    found = way_to(web, reach_from(web, 0, np.array(a), costs=costs), (0, np.array(b)), costs=costs)
    return math.inf if found is None else found[0]


def _exact_cases() -> Iterator[Row]:
    yield Row(
        "shortest walk round a block's corners [m]", "2 sqrt(0.25 + 2.25) + 2, by hand", 5.16227766,
        _length(CORNER, (0.5, 0.5), (3.5, 0.5)), 5e-9, "the way is exact; the figure has nine digits", "derived",
    )  # fmt: skip
    yield Row(
        "shortest walk where nothing is in the way [m]", "3-4-5, by hand", 5.0,
        _length(shapely.box(-1, -1, 9, 9), (0.0, 0.0), (3.0, 4.0)), 1e-12, "the way is exact", "derived",
    )  # fmt: skip
    for sides in (32, 128):
        disk = shapely.Point(0, 0).buffer(1.0, quad_segs=sides // 4)
        # With d = pi / n, half a side's angle: each chord is shorter than its arc by about d^2 / 6 of it, over pi / 3
        # of arc; at each end the tangent leaves at most d from where it leaves the disk, worth d^3 / 3 at most.
        half = math.pi / sides
        shortfall = half**2 / 6 * math.pi / 3 + 2 * half**3 / 3
        computed = _length(shapely.box(-4, -4, 4, 4).difference(disk), (-2.0, 0.0), (2.0, 0.0))
        source = "2 sqrt(3) + pi/3 round the disk itself, by hand"
        yield Row(
            f"shortest walk round a disk drawn with {sides} sides inside it [m]", source, 4.51129917, computed,
            shortfall, "the chords of the arc are shorter by so much at most", "derived",
        )  # fmt: skip
        yield Row(
            f"the same, which may only be shorter than round the disk: {sides} sides [m]", source, 4.51129917,
            computed, 1e-8, "an error may only make arrival earlier; the figure has nine digits", "derived",
            "at most",
        )  # fmt: skip


def _map_of_a_floor(cells: int) -> Iterator[Row]:
    area, lines = invented_floor()
    free = shrunk(area, 0.22)
    grid = grid_over(free.bounds, cell=0.05)
    web = web_of((free,), (lines,), ())
    times = times_on(web, reach_from(web, 0, START, costs=COSTS), 0, grid=grid, costs=COSTS)
    centres = grid.centres()
    inside = shapely.contains_xy(free, centres[..., 0], centres[..., 1])
    far = np.argwhere(inside & (np.linalg.norm(centres - START, axis=-1) > 1.0))
    picked = far[np.random.default_rng(1).choice(len(far), cells, replace=False)]
    exact = VisibilityGraph(free, lines, START, pace=1.3, pass_door=1.0)
    expected = np.array([exact.time_to(centres[row, column]) for row, column in picked])
    computed = times[tuple(picked.T)]
    worst = int(np.argmax(np.abs(computed - expected) / expected))
    source = "visibility graph by networkx and shapely, the same floor and doors"
    yield Row(
        f"walking map, the worst of {cells} cells over 1 m away [s]", source, float(expected[worst]),
        float(computed[worst]), 0.01 * float(expected[worst]),
        "1 % is asked for; the way is exact, so only rounding is left", "reference tool",
    )  # fmt: skip
    yield Row(
        f"walking map, the latest of {cells} cells: computed less exact time [s]", source, 0.0,
        float((computed - expected).max()), 1e-9, "an error may only make arrival earlier; rounding aside",
        "reference tool", "at most",
    )  # fmt: skip


def _against_fast_marching() -> Row:
    """Lengths over a whole floor beside scikit-fmm, order 2, started from a circle round the start."""
    cell, start = 0.025, np.array([0.5, 0.5])
    grid = grid_over(CORNER.bounds, cell=cell)
    centres = grid.centres()
    inside = shapely.contains_xy(CORNER, centres[..., 0], centres[..., 1])
    away = np.linalg.norm(centres - start, axis=-1)
    front = np.ma.MaskedArray(away - 0.25, ~inside)
    marched = np.ma.filled(skfmm.distance(front, dx=cell, order=2), np.nan) + 0.25
    web = web_of((CORNER,), (np.empty((0, 2, 2)),), ())
    costs = Costs(1.0, 1.0, 0.0)
    own = times_on(web, reach_from(web, 0, start, costs=costs), 0, grid=grid, costs=costs)
    far = inside & (away > 1.0)
    return Row(
        "lengths over a floor with a block: mean of the differences from fast marching, each by its length [%]",
        "scikit-fmm, order 2, cells of 2.5 cm, the same floor", 0.0,
        float(100.0 * np.mean(np.abs(own[far] - marched[far]) / marched[far])), 0.5,
        "fast marching is itself off by about that much on such cells", "reference tool",
    )  # fmt: skip

"""The walking map of 5 cm cells against scikit-fmm, order 2, on the same cells; and against the exact answer.

One invented floor of nine rooms with doorways and furniture. The map is what a question asks for: all times from one
point, doors included (scikit-fmm has no doors to pass). The network of ways is made once for a house and serves every
point, pace and device; the time it takes is told beside, and its share is in neither side of the ratio.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import shapely
import skfmm

from wardwright.geometry.clearance import shrunk
from wardwright.geometry.raster import BoolArray, FloatArray, grid_over
from wardwright.physics.walking.network import Costs, reach_from, times_on, web_of

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "tests"))
from common.visibility_graph import VisibilityGraph, invented_floor

CELL_M = 0.05
START = np.array([2.02, 1.53])
PACE = 1.3
PASS_DOOR_S = 1.0
CELLS = 1000
AWAY_M = 1.0
MOST_RATIO = 3.0
MOST_ERROR = 0.01
ROUNDING_S = 1e-9


def run() -> dict[str, Any]:
    """Time both, compare random cells with the exact visibility graph; figures, ratio and budget."""
    area, lines = invented_floor()
    free = shrunk(area, 0.22)
    grid = grid_over(free.bounds, cell=CELL_M)
    centres = grid.centres()
    costs = Costs(1.0 / PACE, 1.0, PASS_DOOR_S)
    made = min(_timed(lambda: web_of((free,), (lines,), ())) for _ in range(3))
    web = web_of((free,), (lines,), ())

    def own() -> FloatArray:
        return times_on(web, reach_from(web, 0, START, costs=costs), 0, grid=grid, costs=costs)

    inside = shapely.contains_xy(free, centres[..., 0], centres[..., 1])
    # Started from a circle of two cells, which helps the other side.
    front = np.ma.MaskedArray(np.linalg.norm(centres - START, axis=-1) - 2 * CELL_M, ~inside)
    own()
    mine = min(_timed(own) for _ in range(15))
    theirs = min(_timed(lambda: skfmm.distance(front, dx=CELL_M, order=2)) for _ in range(15))
    exact = VisibilityGraph(free, lines, START, pace=PACE, pass_door=PASS_DOOR_S)
    errors, relative = _errors(own(), centres, inside=inside, exact=exact)
    ratio = mine / theirs
    return {
        "name": "walking map: nine furnished rooms, 5 cm cells",
        "figures": {
            "cells": int(inside.sum()),
            "corners": len(web.points),
            "map_ms": round(mine * 1e3, 2),
            "scikit_fmm_order_2_ms": round(theirs * 1e3, 2),
            "network_made_once_ms": round(made * 1e3, 1),
            "cells_compared_with_the_visibility_graph": len(errors),
            "latest_s": float(errors.max()),
            "earliest_s": float(errors.min()),
            "largest_relative_error": float(relative.max()),
        },
        "ratio": round(ratio, 2),
        "budget": "at most 3 times scikit-fmm order 2; at most 1 % from the exact visibility graph, never later",
        "is_met": bool(ratio <= MOST_RATIO and relative.max() <= MOST_ERROR and errors.max() <= ROUNDING_S),
    }


def _errors(
    times: FloatArray, centres: FloatArray, *, inside: BoolArray, exact: VisibilityGraph
) -> tuple[FloatArray, FloatArray]:
    """Computed less exact time at random cells, and the size of that relative to the exact. [s] [-]"""
    far = np.argwhere(inside & (np.linalg.norm(centres - START, axis=-1) > AWAY_M))
    picked = far[np.random.default_rng(0).choice(len(far), CELLS, replace=False)]
    computed = times[tuple(picked.T)]
    expected = np.array([exact.time_to(centres[row, column]) for row, column in picked])
    return computed - expected, np.abs(computed - expected) / expected


def _timed(work: Callable[[], object]) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


if __name__ == "__main__":
    for key, value in run().items():
        print(f"{key}: {value}")

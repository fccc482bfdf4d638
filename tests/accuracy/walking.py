"""Walking held against exact cases and an independent visibility graph; `prove` collects the rows."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import shapely

from common.visibility_graph import VisibilityGraph, invented_floor
from wardwright.geometry.clearance import shrunk
from wardwright.geometry.raster import grid_over
from wardwright.physics.walking.network import Costs, reach_from, times_on, way_to, web_of

CORNER = shapely.box(0, 0, 4, 4).difference(shapely.box(1, 0, 3, 2))
START = np.array([2.02, 1.53])
COSTS = Costs(1 / 1.3, 1.0, 1.0)


def accuracy_rows(*, cells: int = 1000) -> list[dict[str, Any]]:
    """The rows for docs/accuracy.md: exact cases first, then the walking map of a furnished floor.

    Parameters
    ----------
    cells : int, default 1000
        Random cells that are compared with the visibility graph.
    """
    return [*_exact_cases(), *_map_of_a_floor(cells)]


def _length(area: Any, a: tuple[float, float], b: tuple[float, float]) -> float:
    web = web_of((area,), (np.empty((0, 2, 2)),), ())
    costs = Costs(1.0, 1.0, 0.0)
    found = way_to(web, reach_from(web, 0, np.array(a), costs=costs), (0, np.array(b)), costs=costs)
    return math.inf if found is None else found[0]


def _exact_cases() -> list[dict[str, Any]]:
    rows = [
        {
            "quantity": "shortest walk round a block's corners [m]",
            "source": "2 sqrt(0.25 + 2.25) + 2, derived by hand",
            "expected": 5.16227766,
            "computed": _length(CORNER, (0.5, 0.5), (3.5, 0.5)),
            "tolerance": 5e-9,
            "why": "the way is exact; the figure has nine digits",
        }
    ]
    for sides in (32, 128):
        disk = shapely.Point(0, 0).buffer(1.0, quad_segs=sides // 4)
        computed = _length(shapely.box(-4, -4, 4, 4).difference(disk), (-2.0, 0.0), (2.0, 0.0))
        # With d = pi / n, half a side's angle: each chord is shorter than its arc by about d^2 / 6 of it, over pi / 3
        # of arc; at each end the tangent leaves at most d from where it leaves the disk, worth d^3 / 3 at most.
        half = math.pi / sides
        shortfall = half**2 / 6 * math.pi / 3 + 2 * half**3 / 3
        rows.append(
            {
                "quantity": f"shortest walk round a disk drawn with {sides} sides inside it [m]",
                "source": "2 sqrt(3) + pi/3 round the disk itself, derived by hand",
                "expected": 4.51129917,
                "computed": computed,
                "tolerance": shortfall,
                "why": "sides inside the disk cut the arc: always shorter, so arrival is earlier",
                "is_met": 0.0 < 4.51129917 - computed <= shortfall,
            }
        )
    return rows


def _map_of_a_floor(cells: int) -> list[dict[str, Any]]:
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
    return [
        {
            "quantity": f"walking map, the worst of {cells} cells over 1 m away [s]",
            "source": source,
            "expected": float(expected[worst]),
            "computed": float(computed[worst]),
            "tolerance": 0.01 * float(expected[worst]),
            "why": "1 % is asked for; the way is exact, so only rounding is left",
        },
        {
            "quantity": f"walking map, the latest of {cells} cells: computed less exact time [s]",
            "source": source,
            "expected": 0.0,
            "computed": float((computed - expected).max()),
            "error": max(0.0, float((computed - expected).max())),
            "tolerance": 1e-9,
            "why": "an error may only make arrival earlier; rounding aside",
        },
    ]

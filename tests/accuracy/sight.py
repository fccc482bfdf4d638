"""Sight with height held against similar triangles, an exact area, and a general-purpose ray caster."""

from __future__ import annotations

from collections.abc import Iterator
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path
from typing import Any

import numpy as np

from accuracy.rows import Row
from wardwright.geometry.panels import box, sheets
from wardwright.geometry.sight import look, lowest_visible, visible_heights

FLOOR = Path(__file__).resolve().parents[2] / "benchmarks" / "sight_height.py"
"""Where the furnished floor is, and the ray caster over it."""
L_ROOM = ((0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (2.0, 2.0), (2.0, 4.0), (0.0, 4.0))


def accuracy_rows() -> list[Row]:
    """The rows for docs/accuracy.md."""
    return [*_triangles(), _seen_area(), *_ray_caster()]


def _triangles() -> Iterator[Row]:
    why, hand = "the azimuth looked up is at most half a step off", "similar triangles, by hand"
    screen = look((0, 0, 2.0), sheets([(2, -5, 2, 5, 0, 1.0)]), reach=6, band=(0, 2.4))
    yield Row(
        "lowest height seen 1 m behind a screen 1 m high, 2 m off, from 2 m [m]", hand, 0.5,
        float(lowest_visible(screen, [(3.0, 0.0)])[0]), 1e-3, why, "derived",
    )  # fmt: skip
    head = look((0, 0, 2.2), sheets([(2, -5, 2, 5, 2.0, 2.4)]), reach=6, band=(0, 2.4))
    yield Row(
        "highest height seen 2 m behind a door head 2 m high, 2 m off, from 2.2 m [m]", hand, 1.8,
        float(visible_heights(head, [(4.0, 0.0)]).high[0, 0]), 1e-3, why, "derived",
    )  # fmt: skip
    ring = ((2.0, -2.0), (3.0, -2.0), (3.0, 2.0), (2.0, 2.0))
    table = look((0, 0, 2.0), box(ring, low=0.7, high=0.75), reach=6, band=(0, 2.4))
    yield Row(
        "lowest height seen 1 m behind a table 0.75 m high, 2 m to 3 m off, from 2 m [m]", hand, 1 / 3,
        float(lowest_visible(table, [(4.0, 0.0)])[0]), 1e-3, why, "derived",
    )  # fmt: skip


def _seen_area() -> Row:
    corners = np.array(L_ROOM)
    walls = [(*a, *b, 0.0, 2.4) for a, b in zip(corners, np.roll(corners, -1, axis=0), strict=True)]
    seen = look((3.0, 0.5, 1.5), sheets(walls), reach=8, band=(0.0, 2.4))
    cell = 0.01
    middles = np.arange(cell / 2, 4.0, cell)
    cells = np.stack(np.meshgrid(middles, middles), axis=-1).reshape(-1, 2)
    inside = (cells[:, 0] < 2.0) | (cells[:, 1] < 2.0)
    count = int(np.isfinite(lowest_visible(seen, cells[inside])).sum())
    return Row(
        "area of an L-shaped room seen from (3, 0.5) [m2]", "32/3: the hidden corner is cut at (2/3, 4), by hand",
        32 / 3, count * cell**2, 0.02, "cells of 1 cm along an edge of 2.4 m that hides the rest", "derived",
    )  # fmt: skip


def _ray_caster() -> Iterator[Row]:
    floor = _furnished_floor()
    draw = np.random.default_rng(7)
    points = floor.floor_cells()
    boxes = np.array([*floor.WALLS, *floor.FURNITURE])[:, None, :4]
    inside = (boxes[..., :2] < points).all(axis=-1) & (points < boxes[..., 2:]).all(axis=-1)
    points = points[~inside.any(axis=0)]
    points = points[draw.choice(len(points), 6000, replace=False)]
    heights = draw.uniform(0.02, floor.CEILING_M - 0.02, len(points))
    sight = look(
        floor.EYE, floor.own_blockers(), heading=floor.HEADING, half_angle=floor.HALF_ANGLE,
        reach=floor.REACH_M, band=(0.0, floor.CEILING_M),
    )  # fmt: skip
    found = visible_heights(sight, points)
    own = ((found.low <= heights) & (heights <= found.high)).any(axis=0)
    other = floor.sees(floor.other_caster(), points, heights)
    source = "trimesh with embree, one ray each, the same furnished floor"
    yield Row(
        "share of 6000 places over free floor, any height, that both see or both do not [-]", source, 1.0,
        float((own == other).mean()), 0.005, "places within half a step of azimuth of an edge may differ",
        "reference tool",
    )  # fmt: skip
    yield Row(
        "share of those places that are seen [-]", source, float(other.mean()), float(own.mean()), 0.005,
        "as before; neither side may lean to seeing more", "reference tool",
    )  # fmt: skip


def _furnished_floor() -> Any:
    spec = spec_from_file_location("sight_height", FLOOR)
    assert spec is not None
    assert spec.loader is not None
    module = module_from_spec(spec)
    spec.loader.exec_module(module)
    return module

"""Walls from pairs of parallel faces that close nowhere: runs between two faces, and the corners where runs meet."""

from __future__ import annotations

import itertools
import math
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.intake.dxf.file import FloatArray
from wardwright.intake.dxf.spans import Span, common, less, merged

THICK_M = (0.05, 0.45)
"""A wall is at least and at most that thick. [m] (assumption)"""
SAME_WAY_RAD = 0.006
"""Faces that are turned by less run the same way. [rad] (assumption)"""
SAME_LINE_M = 0.004
"""Faces that lie this close beside one another are one. [m] (assumption)"""
LEAST_RUN_M = 0.02
"""A shorter pair of faces is none. [m] (assumption)"""
CORNER_M2 = 0.35
"""What runs close in between them is a corner up to this size. [m2] (assumption)"""
REACH_M = 0.7
"""How far a run is lengthened into a corner. [m] (assumption)"""
GRID_M = 1e-4
APART_M = 2.5
"""Walls farther than this from all others are another drawing. [m] (assumption)"""


class Way(NamedTuple):
    """A direction that faces run in; across is to its left."""

    x: float
    y: float

    def point(self, along: float, across: float) -> tuple[float, float]:
        """The place on the plan. [m]"""
        return (along * self.x - across * self.y, along * self.y + across * self.x)


class Run(NamedTuple):
    """A straight piece of wall between two faces."""

    way: Way
    low: float
    """Across, of its right face. [m]"""
    high: float
    """Across, of its left face. [m]"""
    start: float
    """Along. [m]"""
    end: float

    @property
    def thickness(self) -> float:
        """From face to face. [m]"""
        return self.high - self.low

    @property
    def middle(self) -> float:
        """Across, of its centre line. [m]"""
        return (self.low + self.high) / 2

    def part(self, start: float, end: float) -> shapely.Polygon:
        """The rectangle between its faces from one place along to another. [m]"""
        corners = ((start, self.low), (end, self.low), (end, self.high), (start, self.high))
        return shapely.Polygon([self.way.point(*corner) for corner in corners])

    @property
    def area(self) -> shapely.Polygon:
        """Its outline. [m]"""
        return self.part(self.start, self.end)


class Faces(NamedTuple):
    """The faces that lie on one line: across, and where along. [m]"""

    way: Way
    across: float
    spans: list[Span]


def face_lines(faces: FloatArray) -> list[Faces]:
    """The lines that faces lie on, longest faces first giving the directions.

    Parameters
    ----------
    faces : ndarray, shape (n, 2, 2)
        Straight faces. [m]

    Returns
    -------
    list of Faces
        By direction, then across.
    """
    steps = faces[:, 1] - faces[:, 0]
    length = np.hypot(*steps.T)
    ways: list[Way] = []
    by_way: dict[int, list[tuple[float, Span]]] = {}
    for i in np.argsort(-length, kind="stable"):
        if length[i] < 1e-6:
            continue
        x, y = steps[i] / length[i]
        number = next((k for k, way in enumerate(ways) if abs(way.x * y - way.y * x) < SAME_WAY_RAD), None)
        if number is None:
            x, y = (-x, -y) if x < -1e-9 or (abs(x) < 1e-9 and y < 0) else (x, y)
            ways.append(Way(float(x), float(y)))
            number = len(ways) - 1
        way = ways[number]
        along = faces[i] @ np.array((way.x, way.y))
        across = float((faces[i] @ np.array((-way.y, way.x))).mean())
        by_way.setdefault(number, []).append((across, (float(along.min()), float(along.max()))))
    found = []
    for number, pieces in sorted(by_way.items()):
        pieces.sort()
        for _, group in itertools.groupby(_numbered(pieces), key=lambda pair: pair[0]):
            members = [piece for _, piece in group]
            across = sum(a * (e - s) for a, (s, e) in members) / sum(e - s for _, (s, e) in members)
            found.append(Faces(ways[number], across, merged((span for _, span in members), gap=1e-3)))
    return found


def _numbered(pieces: list[tuple[float, Span]]) -> list[tuple[int, tuple[float, Span]]]:
    """Pieces in order of across, with the number of their line."""
    number, before, found = 0, -math.inf, []
    for piece in pieces:
        number += piece[0] - before > SAME_LINE_M
        before = piece[0]
        found.append((number, piece))
    return found


def runs_of(faces: FloatArray) -> list[Run]:
    """Runs of wall between the nearest parallel faces, each stretch of a face being used once.

    Parameters
    ----------
    faces : ndarray, shape (n, 2, 2)
        Straight faces. [m]

    Returns
    -------
    list of Run
        Not yet lengthened into corners.
    """
    lines = face_lines(faces)
    free = [list(line.spans) for line in lines]
    pairs = []
    for i, j in itertools.combinations(range(len(lines)), 2):
        apart = lines[j].across - lines[i].across
        if lines[i].way is lines[j].way and THICK_M[0] <= abs(apart) <= THICK_M[1]:
            shared = sum(e - s for s, e in common(lines[i].spans, lines[j].spans))
            if shared >= LEAST_RUN_M:
                pairs.append((round(abs(apart), 2), -shared, i, j))
    found = []
    for _, _, i, j in sorted(pairs):
        taken = [span for span in common(free[i], free[j]) if span[1] - span[0] >= LEAST_RUN_M]
        free[i], free[j] = less(free[i], taken), less(free[j], taken)
        low, high = sorted((lines[i].across, lines[j].across))
        found += [Run(lines[i].way, low, high, *span) for span in taken]
    return found


def with_corners(runs: list[Run], faces: FloatArray) -> tuple[list[Run], list[shapely.Polygon]]:
    """The runs lengthened through the corners where they meet, and the corners that no run fills.

    Parameters
    ----------
    runs : list of Run
        As found between faces.
    faces : ndarray, shape (n, 2, 2)
        All faces. [m]

    Returns
    -------
    runs : list of Run
        Those on one line that now meet are one.
    corners : list of shapely.Polygon
        What is left over.
    """
    areas = [run.area for run in runs]
    built = shapely.union_all(areas, grid_size=GRID_M)
    lines = [*shapely.linestrings(faces), *(area.exterior for area in areas)]
    net = shapely.union_all(lines, grid_size=GRID_M)
    cells = shapely.get_parts(shapely.polygonize(shapely.get_parts(net)))
    corners = [
        c
        for c in cells
        if c.area < CORNER_M2 and not built.contains(c.representative_point()) and _is_thin(c)
    ]
    for _ in range(2):
        runs = _joined([_lengthened(run, corners) for run in runs])
    filled = shapely.union_all([run.area.buffer(1e-3) for run in runs])
    left = [c for c in corners if c.difference(filled).area > 0.25 * c.area and c.area > 1e-3]
    return runs, left


def _is_thin(cell: shapely.Polygon) -> bool:
    return bool(cell.buffer(-THICK_M[1] / 2).is_empty)


def _lengthened(run: Run, corners: list[shapely.Polygon]) -> Run:
    """A run with its ends moved to the far side of the corners they touch."""
    ends = [run.start, run.end]
    for k, sign in ((0, -1.0), (1, 1.0)):
        probe = shapely.Point(run.way.point(ends[k] + sign * 0.01, run.middle))
        corner = next((c for c in corners if c.contains(probe)), None)
        if corner is not None:
            along = shapely.get_coordinates(corner) @ np.array((run.way.x, run.way.y))
            far = float(along.min() if k == 0 else along.max())
            ends[k] = far if abs(far - ends[k]) < REACH_M else ends[k]
    return run._replace(start=ends[0], end=ends[1])


def _joined(runs: list[Run]) -> list[Run]:
    """The runs, those on one line that meet made one."""
    groups: dict[tuple[Way, float, float], list[Span]] = {}
    for run in runs:
        groups.setdefault((run.way, run.low, run.high), []).append((run.start, run.end))
    return [
        Run(way, low, high, *span)
        for (way, low, high), spans in groups.items()
        for span in merged(spans, gap=0.01)
    ]


def house_of(runs: list[Run]) -> tuple[list[Run], int]:
    """The runs of the largest group that stands together, and how many others there are: other drawings."""
    if not runs:
        return [], 0
    blots = shapely.get_parts(shapely.union_all([run.area.buffer(APART_M / 2) for run in runs]))
    groups = [[run for run in runs if blot.contains(run.area)] for blot in blots]
    largest = max(groups, key=lambda group: sum(run.end - run.start for run in group))
    return largest, len(runs) - len(largest)

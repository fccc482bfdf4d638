"""Gaps in walls: from the end of one run to the next wall ahead, with what is drawn and written there."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.intake.dxf.file import FloatArray, Swing
from wardwright.intake.dxf.spans import Span, common, merged
from wardwright.intake.dxf.texts import Size, Text, size_in
from wardwright.intake.dxf.walls import Run

WIDE_M = (0.25, 6.5)
"""An opening is at least and at most that wide. [m] (assumption)"""
PASSAGE_M = 2.5
"""Where nothing is drawn nor written, a wider gap is no passage but part of the room. [m] (assumption)"""
JAMB_NEAR_M = 0.15
"""A door's hinge lies this close to a jamb. [m] (assumption)"""
SAME_WIDTH_M = 0.04
"""A size and a gap that differ by less are of one opening. [m] (assumption)"""
LIKE_WIDTH_M = 0.16
"""The same, where no other is nearer. [m] (assumption)"""
TEXT_NEAR_M = 0.9
"""A size is written this close to its opening. [m] (assumption)"""
IN_LINE_M = 0.02
"""Runs whose faces lie this close in line are one wall. [m] (assumption)"""
SPANNED = 0.6
"""Lines along this share of a gap, or jambs across this share of the wall, show an opening. [-] (assumption)"""


INSIDE_M = 0.01
"""A line this far from both faces is a pane or a leaf that slides. [m] (assumption)"""


class Signs(NamedTuple):
    """What a drawing holds of openings. [m]"""

    leaves: FloatArray
    """Lines of the layers of openings, shape (m, 2, 2)."""
    swings: tuple[Swing, ...]
    texts: tuple[Text, ...]


@dataclass
class Gap:
    """A gap ahead of a run's end."""

    run: Run
    """The run it begins at, which gives its line and thickness."""
    start: float
    """Along that run's way. [m]"""
    end: float
    swings: list[Swing]
    size: Size | None = None
    is_drawn: bool = False
    """Whether jambs or lines along it are drawn."""
    lines: tuple[Span, ...] = ()
    """Where along it lines run between its faces, beyond its jambs too. [m]"""

    @property
    def width(self) -> float:
        """From jamb to jamb. [m]"""
        return self.end - self.start

    @property
    def area(self) -> shapely.Polygon:
        """Between the jambs and the faces. [m]"""
        return self.run.part(self.start, self.end)

    @property
    def is_opening(self) -> bool:
        """Whether anything says that a door or window is there."""
        return bool(self.swings) or self.size is not None or self.is_drawn


def gaps_of(runs: list[Run], corners: list[shapely.Polygon], signs: Signs) -> tuple[list[Gap], list[Text]]:
    """The gaps that are openings or passages, and the sizes that belong to none of them.

    Parameters
    ----------
    runs : list of Run
        All walls. [m]
    corners : list of shapely.Polygon
        Further solid pieces. [m]
    signs : Signs
        What is drawn and written. [m]

    Returns
    -------
    gaps : list of Gap
        Openings first, then passages; none crosses another.
    loose : list of Text
        Sizes without a gap.
    """
    found = _candidates(runs, corners)
    for gap in found:
        gap.swings = [swing for swing in signs.swings if _hangs_in(swing, gap)]
        _see_lines(gap, signs.leaves)
    loose = _give_sizes(found, signs.texts)
    found.sort(key=lambda gap: (gap.size is None, not gap.swings, gap.width))
    openings = _apart([gap for gap in found if gap.is_opening], [])
    solid = shapely.union_all([*(run.area for run in runs), *corners, *(gap.area for gap in openings)])
    passages = [
        gap for gap in found if not gap.is_opening and gap.width <= PASSAGE_M and not _is_tee(gap, solid)
    ]
    passages.sort(key=lambda gap: (gap.run.thickness, gap.width))
    return [*openings, *_apart(passages, openings)], loose


def _apart(gaps: list[Gap], kept: list[Gap]) -> list[Gap]:
    """The gaps in their order, less those that cross one that is kept already."""
    found: list[Gap] = []
    for gap in gaps:
        area = gap.area
        if all(
            area.intersection(other.area).area < 0.1 * min(area.area, other.area.area)
            for other in (*kept, *found)
        ):
            found.append(gap)
    return found


def _is_tee(gap: Gap, solid: shapely.Geometry) -> bool:
    """Whether the run ends in a wall that goes on to both sides: it goes no farther by itself."""
    run = gap.run
    at, sign = (gap.start, -1.0) if abs(gap.start - run.end) < 1e-6 else (gap.end, 1.0)
    beside = (run.low - 0.03, run.high + 0.03)
    return all(solid.contains(shapely.Point(run.way.point(at + sign * 0.03, across))) for across in beside)


def _candidates(runs: list[Run], corners: list[shapely.Polygon]) -> list[Gap]:
    """From each end of each run to the next wall ahead, each gap once."""
    solids = [run.area for run in runs] + corners
    tree = shapely.STRtree(solids)
    found: list[Gap] = []
    for run in runs:
        for at, sign in ((run.start, -1.0), (run.end, 1.0)):
            start = run.way.point(at + sign * 0.005, run.middle)
            ray = shapely.LineString([start, run.way.point(at + sign * WIDE_M[1], run.middle)])
            ahead = [solids[int(k)] for k in tree.query(ray, predicate="intersects")]
            far = min(
                (float(shapely.Point(start).distance(ray.intersection(s))) for s in ahead), default=math.inf
            )
            if WIDE_M[0] <= far + 0.005 <= WIDE_M[1]:
                ends = sorted((at, at + sign * (far + 0.005)))
                gap = Gap(run, ends[0], ends[1], [])
                if not any(gap.area.intersection(g.area).area > 0.8 * gap.area.area for g in found):
                    found.append(gap)
    return found


def _hangs_in(swing: Swing, gap: Gap) -> bool:
    """Whether a leaf's hinge is at a jamb, and it is as wide as the gap or, of two leaves, half as wide."""
    corners = shapely.get_coordinates(gap.area)
    near = np.hypot(*(corners - np.array(swing.centre)).T).min() <= JAMB_NEAR_M
    shares = (swing.radius / gap.width, 2 * swing.radius / gap.width)
    return bool(near) and any(abs(share - 1.0) < 0.15 for share in shares)


def _see_lines(gap: Gap, leaves: FloatArray) -> None:
    """Note what is drawn in a gap: jambs at both ends, or lines along most of it."""
    run = gap.run
    along = leaves @ np.array((run.way.x, run.way.y))
    across = leaves @ np.array((-run.way.y, run.way.x))
    low, high = across.min(axis=1), across.max(axis=1)
    start, end = along.min(axis=1), along.max(axis=1)
    within = (low > run.low - 0.02) & (high < run.high + 0.02)
    jamb = within & (high - low > SPANNED * run.thickness)
    has_jambs = all(bool((jamb & (np.abs(start - at) < 0.03)).any()) for at in (gap.start, gap.end))
    level = within & (high - low < 0.01) & (end - start > 0.1)
    here = common(merged(zip(start[level], end[level], strict=True)), [(gap.start, gap.end)])
    gap.is_drawn = has_jambs or sum(b - a for a, b in here) > SPANNED * gap.width
    inside = level & (low > run.low + INSIDE_M) & (high < run.high - INSIDE_M)
    near = inside & (end > gap.start - gap.width) & (start < gap.end + gap.width)
    gap.lines = tuple((float(a), float(b)) for a, b in zip(start[near], end[near], strict=True))


def _give_sizes(gaps: list[Gap], texts: tuple[Text, ...]) -> list[Text]:
    """Give each size to the gap of its width that is nearest; the sizes that are left over."""
    left = {i: (text, size) for i, text in enumerate(texts) if (size := size_in(text.words)) is not None}
    for slack in (SAME_WIDTH_M, LIKE_WIDTH_M):
        pairs = sorted(
            (float(gap.area.distance(shapely.Point(text.place))), i, k)
            for i, (text, size) in left.items()
            for k, gap in enumerate(gaps)
            if gap.size is None and abs(gap.width - size.width_m) <= slack
        )
        for far, i, k in pairs:
            if far <= TEXT_NEAR_M and i in left and gaps[k].size is None:
                gaps[k].size = left.pop(i)[1]
    return [text for text, _ in left.values()]

"""The sheet a plan is drawn on: its scale, its edges, the scale bar and the north arrow."""

from __future__ import annotations

import math
from typing import NamedTuple

from wardwright.documents.drawing.recording import Recorder
from wardwright.model.placement import wall_footprint
from wardwright.model.site import Site

SCALES = (20, 50, 100, 200, 500, 1000)
"""Preferred reductions for building drawings (ISO 5455, from memory), 1:25 left out."""
SHEET_WIDTH_MM = 178.0
SHEET_HEIGHT_MM = 218.0
"""What an A4 page upright leaves for a drawing, with its heading and key. [mm]"""
ROUND_MM = 11.0
"""Kept free round the house, for what is on its outer walls. [mm]"""
SMALL_WIDTH_MM = 88.0
SMALL_HEIGHT_MM = 132.0
"""What a drawing beside the words of an answer may take; two stand side by side on A4. [mm]"""
FOOT_MM = 11.0
"""Kept free under the house, for the scale bar. [mm]"""


class Sheet(NamedTuple):
    """One sheet for all storeys, so that they can be laid on each other."""

    bounds: tuple[float, float, float, float]
    """Of the whole drawing, foot included. [m]"""
    scale: int
    """The 50 of 1:50."""

    @property
    def mm_per_m(self) -> float:
        """Paper millimetres for a metre."""
        return 1000.0 / self.scale


def sheet_for(site: Site, *, width_mm: float = SHEET_WIDTH_MM, height_mm: float = SHEET_HEIGHT_MM) -> Sheet:
    """Choose the largest usual scale at which every storey fits on a page, or in a part of one.

    Parameters
    ----------
    site : Site
        The house.
    width_mm, height_mm : float
        The room there is; a whole page unless it is said.

    Returns
    -------
    Sheet
        Edges [m] and scale.
    """
    points = [p for wall in site.walls for p in wall_footprint(wall)]
    points += [p for space in site.spaces for p in space.outline_m]
    if not points:
        points = [(0.0, 0.0), (1.0, 1.0)]
    x0, x1 = min(p[0] for p in points), max(p[0] for p in points)
    y0, y1 = min(p[1] for p in points), max(p[1] for p in points)
    scale = SCALES[-1]
    for scale in SCALES:
        unit = 1000.0 / scale
        wide = (x1 - x0) * unit + 2 * ROUND_MM
        high = (y1 - y0) * unit + 2 * ROUND_MM + FOOT_MM
        if wide <= width_mm and high <= height_mm:
            break
    metre = scale / 1000.0
    least = 80.0 * metre  # the scale bar and the arrow need this much
    spare = max(0.0, least - (x1 - x0) - 2 * ROUND_MM * metre) / 2
    return Sheet(
        (
            x0 - ROUND_MM * metre - spare,
            y0 - (ROUND_MM + FOOT_MM) * metre,
            x1 + ROUND_MM * metre + spare,
            y1 + ROUND_MM * metre,
        ),
        scale,
    )


def draw_foot(recorder: Recorder, sheet: Sheet, *, north_deg: float | None) -> None:
    """Draw the scale bar and the north arrow at the foot of a sheet."""
    unit = 1.0 / sheet.mm_per_m
    x0, y0, x1, _ = sheet.bounds
    left, level = x0 + 2.0 * unit, y0 + 5.5 * unit
    whole = _bar_length(sheet)
    steps = 5 if whole in (5, 50) else 4 if whole == 20 else 2
    piece = whole / steps
    for i in range(steps):
        a, b = left + i * piece, left + (i + 1) * piece
        ring = ((a, level), (b, level), (b, level + 1.1 * unit), (a, level + 1.1 * unit))
        recorder.polygon("frame-solid" if i % 2 == 0 else "opening", (ring,))
    recorder.text("frame-text", (left, level - 2.4 * unit), "0", anchor="start")
    recorder.text("frame-text", (left + whole, level - 2.4 * unit), f"{whole:g} m")
    recorder.text(
        "frame-text", (left + whole + 4.0 * unit, level + 0.6 * unit), f"1:{sheet.scale}", anchor="start"
    )
    centre = (x1 - 6.0 * unit, y0 + 6.5 * unit)
    if north_deg is None:
        recorder.text("frame-text", (x1 - 2.0 * unit, level), "north not known", anchor="end")
        return
    turn = math.radians(90.0 + north_deg)
    cos, sin = math.cos(turn), math.sin(turn)
    tip = (centre[0] + 4.0 * unit * cos, centre[1] + 4.0 * unit * sin)
    tail = (centre[0] - 4.0 * unit * cos, centre[1] - 4.0 * unit * sin)
    recorder.circle("fixture", centre, radius_mm=4.0)
    recorder.line("frame-line", tail, tip)
    recorder.head("frame-solid", tip, turn_deg=90.0 + north_deg, length_mm=3.0)
    recorder.text("frame-text", (tip[0] - 2.2 * unit * sin * -1, tip[1] - 2.2 * unit * cos), "N")


def _bar_length(sheet: Sheet) -> int:
    """Whole metres that make a bar of 30 to 100 mm."""
    for metres in (1, 2, 5, 10, 20, 50):
        if metres * sheet.mm_per_m >= 30.0:
            return metres
    return 50

"""The sheet a plan is drawn on: its scale, its edges, the scale bar and the north arrow."""

from __future__ import annotations

import math
from typing import NamedTuple

from wardwright.documents.drawing.inks import text_width_mm
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.recording import Recorder
from wardwright.model.placement import wall_footprint
from wardwright.model.site import Site

SCALES = (20, 50, 100, 200, 500, 1000)
"""Preferred reductions for building drawings (ISO 5455, from memory), 1:25 left out."""
FOOT_MM = 10.0
"""Kept free under the house, for the scale bar and the names of small rooms. [mm]"""


class Room(NamedTuple):
    """The room on paper that a drawing may take."""

    width_mm: float
    height_mm: float
    round_mm: float
    """Kept free round the house, for what is on its outer walls. [mm]"""


WHOLE = Room(178.0, 218.0, 11.0)
"""What an A4 page upright leaves for a drawing, with its heading and key."""
HALF = Room(88.0, 132.0, 8.0)
"""Two stand side by side on A4."""
QUARTER = Room(43.0, 100.0, 7.0)
"""Two stand side by side in a column of half an A4 page."""
BAR_MM = (30.0, 20.0)
"""How long the scale bar is at least: where there is room, and else. [mm]"""
BAR_AT_MM = (2.0, 5.5)
"""Where it begins, from the sheet's lower left corner. [mm]"""
BESIDE_BAR_MM = 16.0
"""What the words at its end and the north arrow need beside it. [mm]"""
NARROW_MM = 46.0
"""A sheet that is not this wide is narrow. [mm]"""
NUMBERED_MM = 9.6
"""How far over the edge the names of small rooms stand. [mm]"""
LINE_MM = 2.8
"""Of their lines. [mm]"""
LEAST_MM = 42.0
"""What the scale bar and the north arrow need. [mm]"""


class Sheet(NamedTuple):
    """One sheet for all storeys, so that they can be laid on each other."""

    bounds: tuple[float, float, float, float]
    """Of the whole drawing, foot included. [m]"""
    scale: int
    """The 50 of 1:50."""
    round_mm: float
    """Paper round the house. [mm]"""

    @property
    def width_mm(self) -> float:
        """Width on paper. [mm]"""
        return (self.bounds[2] - self.bounds[0]) * self.mm_per_m

    @property
    def is_narrow(self) -> bool:
        """Whether it has room for the least only."""
        return self.width_mm < NARROW_MM

    @property
    def mm_per_m(self) -> float:
        """Paper millimetres for a metre."""
        return 1000.0 / self.scale


def sheet_for(site: Site, *, room: Room = WHOLE) -> Sheet:
    """Choose the largest usual scale at which every storey fits on a page, or in a part of one.

    Parameters
    ----------
    site : Site
        The house.
    room : Room
        What it may take; a whole page unless it is said.

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
    edge = room.round_mm
    scale = SCALES[-1]
    for scale in SCALES:
        unit = 1000.0 / scale
        wide = (x1 - x0) * unit + 2 * edge
        high = (y1 - y0) * unit + 2 * edge + FOOT_MM
        if wide <= room.width_mm and high <= room.height_mm:
            break
    metre = scale / 1000.0
    spare = max(0.0, LEAST_MM * metre - (x1 - x0) - 2 * edge * metre) / 2
    side = edge * metre + spare
    return Sheet((x0 - side, y0 - (edge + FOOT_MM) * metre, x1 + side, y1 + edge * metre), scale, edge)


def draw_foot(recorder: Recorder, sheet: Sheet, *, north_deg: float | None, has_scale: bool = True) -> None:
    """Draw the scale bar, if it has a scale, and the north arrow at the foot of a sheet."""
    if has_scale:
        _draw_bar(recorder, sheet)
    _draw_north(recorder, sheet, north_deg=north_deg)


def _draw_bar(recorder: Recorder, sheet: Sheet) -> None:
    unit = 1.0 / sheet.mm_per_m
    left, level = sheet.bounds[0] + BAR_AT_MM[0] * unit, sheet.bounds[1] + BAR_AT_MM[1] * unit
    whole = _bar_length(sheet)
    steps = 5 if whole in (5, 50) else 4 if whole == 20 else 2
    piece = whole / steps
    for i in range(steps):
        a, b = left + i * piece, left + (i + 1) * piece
        ring = ((a, level), (b, level), (b, level + 1.1 * unit), (a, level + 1.1 * unit))
        recorder.polygon("frame-solid" if i % 2 == 0 else "opening", (ring,))
    recorder.text("frame-text", (left, level - 2.4 * unit), "0", anchor="start")
    recorder.text(
        "frame-text", (left + whole, level - 2.4 * unit), f"{whole:g} m, 1:{sheet.scale}", anchor="end"
    )


def _draw_north(recorder: Recorder, sheet: Sheet, *, north_deg: float | None) -> None:
    unit = 1.0 / sheet.mm_per_m
    _, y0, x1, _ = sheet.bounds
    centre = (x1 - 6.0 * unit, y0 + 6.5 * unit)
    if north_deg is None:
        words = "north not known"
        room_mm = sheet.width_mm - BAR_AT_MM[0] - _bar_length(sheet) * sheet.mm_per_m
        over = 0.6 if room_mm > text_width_mm("frame-text", words) + 8.0 else 3.2
        recorder.text("frame-text", (x1 - 2.0 * unit, y0 + (BAR_AT_MM[1] + over) * unit), words, anchor="end")
        return
    turn = math.radians(90.0 + north_deg)
    cos, sin = math.cos(turn), math.sin(turn)
    tip = (centre[0] + 4.0 * unit * cos, centre[1] + 4.0 * unit * sin)
    tail = (centre[0] - 4.0 * unit * cos, centre[1] - 4.0 * unit * sin)
    recorder.circle("fixture", centre, radius_mm=4.0)
    recorder.line("frame-line", tail, tip)
    recorder.head("frame-solid", tip, turn_deg=90.0 + north_deg, length_mm=3.0)
    recorder.text("frame-text", (tip[0] - 2.2 * unit * sin * -1, tip[1] - 2.2 * unit * cos), "N")


def draw_numbered(
    recorder: Recorder, sheet: Sheet, numbered: tuple[tuple[str, str], ...], *, board: Board
) -> None:
    """Say at the foot of a sheet which spaces the numbers on it stand for."""
    if not numbered:
        return
    unit = 1.0 / sheet.mm_per_m
    x0, y0, _, _ = sheet.bounds
    style = "space-name-tiny"
    lines = [""]
    for number, name in numbered:
        more = f"{number} {name}"
        longer = f"{lines[-1]}, {more}" if lines[-1] else more
        if lines[-1] and text_width_mm(style, longer) > sheet.width_mm - 4.0:
            lines[-1] += ","
            lines.append(more)
        else:
            lines[-1] = longer
    for i, line in enumerate(reversed(lines)):
        level = y0 + (NUMBERED_MM + i * LINE_MM) * unit
        wide = text_width_mm(style, line)
        board.take((x0 + (2.0 + wide / 2) * unit, level), (wide, LINE_MM))
        recorder.text(style, (x0 + 2.0 * unit, level), line, anchor="start")


def _bar_length(sheet: Sheet) -> int:
    """Whole metres that make a bar of a length that is easily read off, beside the north arrow."""
    lengths = [metres for metres in (1, 2, 5, 10, 20, 50) if metres * sheet.mm_per_m >= BAR_MM[1]] or [50]
    fitting = [m for m in lengths if m * sheet.mm_per_m <= sheet.width_mm - BESIDE_BAR_MM]
    return next((m for m in fitting if m * sheet.mm_per_m >= BAR_MM[0]), lengths[0])

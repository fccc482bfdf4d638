"""Doors, windows and gaps on the plan."""

from __future__ import annotations

import math

from wardwright.documents.drawing.recording import Recorder
from wardwright.model.fabric import Wall
from wardwright.model.opening import Opening
from wardwright.model.placement import along, direction, opening_footprint, opening_line
from wardwright.model.record import Line2, Point2

GLASS_M = 0.03
"""Half the distance between the two lines of a pane. [m]"""
SLIDE_M = 0.035
"""How far apart sliding leaves are drawn. [m]"""


def draw_opening(recorder: Recorder, wall: Wall, opening: Opening) -> None:
    """Draw an opening by its kind: leaf and swing, double line, or dashes."""
    line = opening_line(wall, opening)
    if opening.kind in ("window", "rooflight"):
        _window(recorder, wall, opening)
    elif opening.kind == "gap" or opening.leaves == 0:
        _edges(recorder, wall, line)
    elif opening.hinge == "sliding":
        _sliding(recorder, line)
    elif opening.kind == "door" and opening.hinge in ("start", "end"):
        _swinging(recorder, wall, opening)
    else:  # garage doors, hatches, fixed and tilting leaves: the leaf in its opening
        recorder.polygon("opening", (opening_footprint(wall, opening),))
        recorder.line("leaf", *line)


def _window(recorder: Recorder, wall: Wall, opening: Opening) -> None:
    recorder.polygon("opening", (opening_footprint(wall, opening),))
    line = opening_line(wall, opening)
    _, _, length = direction(line)
    for side in (-GLASS_M, GLASS_M):
        recorder.line("glass", along(line, 0.0, left_m=side), along(line, length, left_m=side))


def _edges(recorder: Recorder, wall: Wall, line: Line2) -> None:
    half = wall.thickness_m / 2
    _, _, length = direction(line)
    for side in (-half, half):
        recorder.line("gap", along(line, 0.0, left_m=side), along(line, length, left_m=side))


def _sliding(recorder: Recorder, line: Line2) -> None:
    _, _, length = direction(line)
    share = 0.55
    recorder.line("leaf", along(line, 0.0, left_m=SLIDE_M), along(line, length * share, left_m=SLIDE_M))
    recorder.line(
        "leaf", along(line, length * (1 - share), left_m=-SLIDE_M), along(line, length, left_m=-SLIDE_M)
    )


def _swinging(recorder: Recorder, wall: Wall, opening: Opening) -> None:
    line = opening_line(wall, opening)
    _, _, length = direction(line)
    _threshold(recorder, wall, line)
    if opening.swing == "none":
        recorder.line("leaf", *line)
        return
    if opening.leaves >= 2:
        _leaf(recorder, wall, opening, span=(0.0, length / 2))
        _leaf(recorder, wall, opening, span=(length, length / 2))
    elif opening.hinge == "start":
        _leaf(recorder, wall, opening, span=(0.0, length))
    else:
        _leaf(recorder, wall, opening, span=(length, 0.0))


def _threshold(recorder: Recorder, wall: Wall, line: Line2) -> None:
    if wall.is_exterior:
        _edges(recorder, wall, line)


def _leaf(recorder: Recorder, wall: Wall, opening: Opening, *, span: tuple[float, float]) -> None:
    """One leaf that turns at the first offset of its span and reaches to the second when shut."""
    line = opening_line(wall, opening)
    left = wall.thickness_m / 2 * (1.0 if opening.swing == "left" else -1.0)
    hinge, shut = along(line, span[0], left_m=left), along(line, span[1], left_m=left)
    width = abs(span[1] - span[0])
    _, (nx, ny), _ = direction(line)
    sign = 1.0 if opening.swing == "left" else -1.0
    tip: Point2 = (hinge[0] + sign * nx * width, hinge[1] + sign * ny * width)
    recorder.line("leaf", hinge, tip)
    a = math.degrees(math.atan2(shut[1] - hinge[1], shut[0] - hinge[0]))
    b = math.degrees(math.atan2(tip[1] - hinge[1], tip[0] - hinge[0]))
    start, end = (a, b) if (b - a) % 360.0 <= 180.0 else (b, a)
    recorder.arc("swing", hinge, radius=width, start_deg=start, end_deg=start + (end - start) % 360.0)

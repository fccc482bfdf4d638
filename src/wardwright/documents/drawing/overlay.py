"""What an answer or a finding draws over the plan: its sketches put into ink."""

from __future__ import annotations

import math
from bisect import bisect_right

import shapely

from wardwright.documents.drawing.hatching import area_of, rings_of
from wardwright.documents.drawing.inks import box_size_mm, text_width_mm
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.lettered import TOLD_BY_LETTER, draw_letters, keep_clear
from wardwright.documents.drawing.measured import draw_measured, is_measured
from wardwright.documents.drawing.recording import Recorder
from wardwright.documents.drawing.round_signs import draw_rings
from wardwright.model.record import Point2, Ring
from wardwright.model.sketch import Sketch

AREAS = (
    "possibly-seen", "seen", "leak", "blind", "unnoticed", "arrival-seen", "trip-seen", "sunlit", "perch",
)  # fmt: skip
"""Roles that are hatched, the widest first."""
PLAIN_LINES = ("task-line", "pet-line", "climb")
"""Roles that are a line and nothing else."""
PLACES = ("level", "goal", "notice", "radio-cost", "fault", "perch", "climb-step", "task", "suggestion")
"""Roles that are one place, with a sign or with words."""
UNNOTICED_FLOOR = "unnoticed-floor"
"""The style of floor, rather than a walk, where nothing notices."""
SIGN_MM = 3.4
"""What a sign takes. [mm]"""
LABEL_MM = 26.0
"""A label wider than this is folded. [mm]"""
SMOOTH_M = 0.05
"""How far the outline of an area of cells is smoothed for drawing; specks smaller than twice this go. [m]"""


def draw_sketches(
    recorder: Recorder, sketches: tuple[Sketch, ...], *, board: Board, mm_per_m: float
) -> tuple[str, ...]:
    """Draw the sketches of one storey.

    Parameters
    ----------
    recorder : Recorder
        Takes the verbs.
    sketches : tuple of Sketch
        What is asked for.
    board : Board
        Places that labels have; those of the sketches are added.
    mm_per_m : float
        Paper millimetres for a metre.

    Returns
    -------
    tuple of str
        The roles that were drawn, for the key of signs.
    """
    recorder.layer = "under"
    for role in AREAS:
        _floor(recorder, sketches, role)
    recorder.layer = "over"
    for role in ("arrival-band", "trip", "timely"):
        for ring in _joined(sketches, role):
            recorder.polyline(role, (*ring, ring[0]))
    _plain_lines(recorder, sketches)
    _take_signs(sketches, board=board)
    for role in (*TOLD_BY_LETTER, "unnoticed", "walk", "radio-path", "beam"):
        for sketch in sketches:
            if sketch.role == role and len(sketch.points) >= 2:
                _way(recorder, sketch, board=board, mm_per_m=mm_per_m)
    draw_letters(recorder, sketches, board=board)
    for sketch in (one for one in sketches if one.points):
        if is_measured(sketch):
            draw_measured(recorder, sketch, board=board)
        elif sketch.role in PLACES:
            _place(recorder, sketch, board=board, mm_per_m=mm_per_m)
    drawn = {sketch.role for sketch in sketches if sketch.points or sketch.rings}
    return tuple(role for role in ROLE_ORDER if role in drawn)


def _plain_lines(recorder: Recorder, sketches: tuple[Sketch, ...]) -> None:
    for sketch in sketches:
        if sketch.role in PLAIN_LINES and len(sketch.points) >= 2:
            for ring in sketch.rings:
                recorder.polyline("ground-thing", (*ring, ring[0]))
            recorder.polyline(sketch.role, sketch.points)


ROLE_ORDER = (
    "walk", "unnoticed", "notice", "goal", "seen", "possibly-seen", "blind", "leak", "distance", "level", "timely",
    "arrival-band", "arrival-seen", "trip", "trip-seen", "radio-path", "radio-cost", "beam", "sunlit", "task",
    "task-line", "climb", "climb-step", "perch", "pet-line", "beaten", "least-detected", "fault", "suggestion",
)  # fmt: skip
"""In the order of the key of signs."""


def _take_signs(sketches: tuple[Sketch, ...], *, board: Board) -> None:
    """Note the places of all signs first, so that no label lies on one, whichever is drawn first."""
    for sketch in sketches:
        if sketch.points and sketch.role in ("goal", "notice", "fault"):
            board.take(sketch.points[0], (SIGN_MM, SIGN_MM))


def _floor(recorder: Recorder, sketches: tuple[Sketch, ...], role: str) -> None:
    """Hatch the floor of one role and draw its edge."""
    rings = _joined(sketches, role)
    if role == "possibly-seen" and rings:
        # What is surely noticed is hatched once, not twice.
        rings = rings_of(area_of(rings).difference(area_of(_joined(sketches, "seen")).buffer(1e-6)))
    if not rings:
        return
    style = UNNOTICED_FLOOR if role == "unnoticed" else role
    recorder.hatch(style, rings)
    for ring in rings:
        recorder.polyline(f"{style}-edge", (*ring, ring[0]))


def _joined(sketches: tuple[Sketch, ...], role: str) -> tuple[Ring, ...]:
    areas = [area_of(sketch.rings) for sketch in sketches if sketch.role == role and sketch.rings]
    if not areas:
        return ()
    whole = shapely.union_all(areas).buffer(0)
    # Opened, then closed: thinner than the smoothing is no area, narrower no gap.
    opened = whole.buffer(-SMOOTH_M, join_style="mitre").buffer(2 * SMOOTH_M, join_style="mitre")
    return rings_of(opened.buffer(-SMOOTH_M, join_style="mitre").simplify(SMOOTH_M))


def _way(recorder: Recorder, sketch: Sketch, *, board: Board, mm_per_m: float) -> None:
    points = _thinned(sketch.points)
    recorder.polyline(sketch.role, points)
    if sketch.role not in ("walk", *TOLD_BY_LETTER):
        return
    (ax, ay), (bx, by) = _last_step(sketch.points)
    recorder.head("frame-solid", (bx, by), turn_deg=math.degrees(math.atan2(by - ay, bx - ax)), length_mm=2.6)
    if sketch.role != "walk":
        keep_clear(points, board=board)
        return
    for point in sketch.points[:: max(1, len(sketch.points) // 60)]:
        board.take(point, (1.0, 1.0))
    if len(sketch.times_s) == len(sketch.points):
        _seconds(recorder, sketch, board=board, mm_per_m=mm_per_m)


def _seconds(recorder: Recorder, sketch: Sketch, *, board: Board, mm_per_m: float) -> None:
    """Tick a way at whole seconds, and number some of the ticks."""
    times = sketch.times_s
    span = times[-1] - times[0]
    length = sum(math.dist(a, b) for a, b in zip(sketch.points, sketch.points[1:], strict=False))
    each = next((s for s in (1, 2, 5, 10, 20, 60) if span / s <= max(2.0, length * mm_per_m / 4.0)), 120)
    number = next((s for s in (1, 2, 5, 10, 20, 60) if s >= each and span / s <= 6), 120)
    for second in range((math.floor(times[0] / each) + 1) * each, math.floor(times[-1]) + 1, each):
        at, turn = _at_time(sketch, float(second))
        is_numbered = second % number == 0
        recorder.tick("walk-tick", at, turn_deg=turn + 90.0, length_mm=2.6 if is_numbered else 1.6)
        if is_numbered:
            text = f"{second} s"
            size = (text_width_mm("walk-time", text), 2.3)
            centre = board.place(at, size, clear_mm=1.5, toward_deg=round(turn / 90.0) * 90.0 + 90.0)
            recorder.text("walk-time", centre, text)


def _at_time(sketch: Sketch, time_s: float) -> tuple[Point2, float]:
    """Where a way is at a time, and which way it goes there."""
    i = min(max(bisect_right(sketch.times_s, time_s) - 1, 0), len(sketch.points) - 2)
    (ax, ay), (bx, by) = sketch.points[i], sketch.points[i + 1]
    step = sketch.times_s[i + 1] - sketch.times_s[i]
    share = min(max((time_s - sketch.times_s[i]) / step, 0.0), 1.0) if step > 0.0 else 0.0
    near = sketch.points[max(0, i - 2)], sketch.points[min(len(sketch.points) - 1, i + 3)]
    turn = math.degrees(math.atan2(near[1][1] - near[0][1], near[1][0] - near[0][0]))
    return (ax + (bx - ax) * share, ay + (by - ay) * share), turn


def _last_step(points: tuple[Point2, ...]) -> tuple[Point2, Point2]:
    end = points[-1]
    for point in reversed(points):
        if math.dist(point, end) > 0.1:
            return point, end
    return points[0], end


def _thinned(points: tuple[Point2, ...]) -> tuple[Point2, ...]:
    line = shapely.LineString(points).simplify(0.01)
    return tuple((float(x), float(y)) for x, y in line.coords)


def _place(recorder: Recorder, sketch: Sketch, *, board: Board, mm_per_m: float) -> None:
    at = sketch.points[0]
    unit = 1.0 / mm_per_m
    match sketch.role:
        case "notice" | "goal" | "level":
            draw_rings(recorder, sketch.role, at)
        case "perch":
            pass  # its area is hatched; the height stands on it
        case "radio-cost":
            at = _costly(recorder, sketch)
        case "fault":
            if len(sketch.points) > 1:
                recorder.polyline("fault-line", sketch.points)
            for turn in (45.0, 135.0):
                recorder.tick("fault", at, turn_deg=turn, length_mm=4.2)
        case style:
            text = sketch.label or "here"
            size = box_size_mm(style, text)
            centre = board.place(at, size, clear_mm=2.5, is_apart=True)
            recorder.line(style, at, centre)
            recorder.circle("device-dot", at, radius_mm=0.6)
            recorder.box(style, centre, text)
            return
    board.take(at, (SIGN_MM, SIGN_MM))
    if sketch.label:
        lines = _folded(sketch.label)
        size = (max(text_width_mm("answer-label", line) for line in lines), 2.9 * len(lines))
        centre = board.place(at, size, clear_mm=3.0, is_apart=True)
        if math.dist(centre, at) > (size[0] / 2 + 7.0) * unit:
            recorder.line("leader", at, centre)
        for i, line in enumerate(lines):
            level = centre[1] + ((len(lines) - 1) / 2 - i) * 2.9 * unit
            recorder.text("answer-label", (centre[0], level), line)


def _costly(recorder: Recorder, sketch: Sketch) -> Point2:
    """What takes most of a radio path: a stroke along its wall, or a dot; its middle."""
    xs, ys = zip(*sketch.points, strict=True)
    middle = (sum(xs) / len(xs), sum(ys) / len(ys))
    if len(sketch.points) > 1:
        recorder.polyline("radio-cost", sketch.points)
    else:
        recorder.circle("radio-cost", middle, radius_mm=1.2)
    return middle


def _folded(label: str) -> tuple[str, ...]:
    """A label in one line, or in two of about the same length where it is long."""
    words = label.split()
    if text_width_mm("answer-label", label) <= LABEL_MM or len(words) < 2:
        return (label,)
    cut = min(range(1, len(words)), key=lambda i: abs(len(" ".join(words[:i])) - len(label) / 2))
    return " ".join(words[:cut]), " ".join(words[cut:])

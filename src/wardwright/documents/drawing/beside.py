"""One drawing set beside another on the same sheet."""

from __future__ import annotations

from wardwright.documents.drawing.recording import (
    Circle,
    Drawing,
    Head,
    Layer,
    Line,
    Recorder,
    Recording,
    Text,
    Verb,
)
from wardwright.model.record import Point2

EDGE_MM = 6.0
"""Paper round the whole. [mm]"""


def beside(
    plan: Drawing,
    right: tuple[Drawing, ...],
    *,
    heading: tuple[tuple[str, str], ...],
    key: str,
    title: str,
    description: str,
) -> Drawing:
    """Set drawings in millimetres in a column to the right of a plan, with a heading over them.

    Parameters
    ----------
    plan : Drawing
        Any unit; its scale is kept.
    right : tuple of Drawing
        In millimetres, made of lines, circles, heads and texts; from the top down.
    heading : tuple of (str, str)
        Style and text of each line over them.
    key, title, description : str
        Of the whole.

    Returns
    -------
    Drawing
        In the plan's unit, on paper of its own.

    Raises
    ------
    TypeError
        If a drawing to the right holds another verb.
    """
    unit = 1.0 / plan.mm_per_unit
    x0, y0, x1, y1 = plan.bounds
    width = max(drawing.width_mm for drawing in right)
    edge = EDGE_MM * unit
    bounds = (x0 - edge, y0 - edge, x1 + 2 * edge + width * unit, y1 + edge)
    recorder = Recorder()
    recorder.layer = "under"
    corners = ((bounds[0], bounds[1]), (bounds[2], bounds[1]), (bounds[2], bounds[3]), (bounds[0], bounds[3]))
    recorder.polygon("paper", (corners,))
    left, level = x1 + edge, y1 - 4.0 * unit
    recorder.layer = "over"
    for style, text in heading:
        recorder.text(style, (left + 2.0 * unit, level), text, anchor="start")
        level -= 7.0 * unit
    own = plan.own
    for drawing in right:
        level -= drawing.height_mm * unit
        own = own.with_(_moved(drawing, to=(left, level), unit=unit))
        level -= 5.0 * unit
    return plan._replace(
        key=key,
        title=title,
        description=description,
        bounds=bounds,
        own=recorder.recording().with_(own),
        base_key=None,
    )


def _moved(drawing: Drawing, *, to: Point2, unit: float) -> Recording:
    """A drawing in millimetres, its lower left corner put on a place."""
    x0, y0, _, _ = drawing.bounds

    def at(point: Point2) -> Point2:
        return (to[0] + (point[0] - x0) * unit, to[1] + (point[1] - y0) * unit)

    def moved(verb: Verb) -> Verb:
        match verb:
            case Line():
                return verb._replace(start=at(verb.start), end=at(verb.end))
            case Circle():
                return verb._replace(centre=at(verb.centre))
            case Text() | Head():
                return verb._replace(at=at(verb.at))
            case _:
                raise TypeError(f"a {type(verb).__name__} cannot be set beside a plan")

    strokes: list[tuple[Layer, Verb]] = [(layer, moved(verb)) for layer, verb in drawing.own.strokes]
    return Recording(tuple(strokes))

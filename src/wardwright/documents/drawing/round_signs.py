"""Signs that are circles about a place."""

from __future__ import annotations

from wardwright.documents.drawing.recording import Recorder
from wardwright.model.record import Point2

RINGS: dict[str, tuple[tuple[str, float], ...]] = {
    "notice": (("notice", 1.7), ("device-dot", 0.5)),
    "goal": (("goal", 2.6), ("goal", 1.5)),
    "level": (("level", 1.3),),
}
"""Signs that are circles about a place: style and radius of each. [mm]"""


def draw_rings(recorder: Recorder, role: str, at: Point2) -> None:
    """Draw a sign that is made of circles."""
    for style, radius in RINGS[role]:
        recorder.circle(style, at, radius_mm=radius)

"""Signs that are circles about a place."""

from __future__ import annotations

import pytest

from wardwright.documents.drawing.recording import Recorder
from wardwright.documents.drawing.round_signs import RINGS, draw_rings


@pytest.mark.parametrize("role", sorted(RINGS))
def test_each_is_its_circles_about_the_place(role: str) -> None:
    recorder = Recorder()
    draw_rings(recorder, role, (1.0, 2.0))
    drawn = [verb for _, verb in recorder.recording().strokes]
    assert [(verb.style, verb.radius_mm) for verb in drawn] == list(RINGS[role])
    assert all(verb.centre == (1.0, 2.0) for verb in drawn)

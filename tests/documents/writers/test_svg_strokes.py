from __future__ import annotations

from typing import get_args

from wardwright.documents.drawing.recording import LAYERS, Drawing, Recorder, Verb
from wardwright.documents.writers.svg_strokes import PLAYERS, Paper, played


def test_every_verb_has_its_player() -> None:
    assert set(PLAYERS) == set(get_args(Verb))


def test_only_layers_that_are_drawn_on_make_a_group() -> None:
    recorder = Recorder()
    recorder.line("wall", (0.0, 0.0), (1.0, 2.0))
    recording = recorder.recording()
    drawing = Drawing("key", "title", "words", (0.0, 0.0, 4.0, 4.0), 20.0, own=recording)
    assert played(recording, Paper(drawing), LAYERS) == [
        '<g class="layer-house">',
        '<path class="ink-wall" d="M0 80l20 -40"/>',
        "</g>",
    ]

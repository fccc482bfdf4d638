from __future__ import annotations

import pytest

from wardwright.documents.drawing.recording import Drawing, Recorder
from wardwright.documents.writers.pdf_drawing import patch, svg_for_pdf
from wardwright.documents.writers.svg import write_svg


def drawing() -> Drawing:
    recorder = Recorder()
    recorder.text("space-name", (1.0, 1.0), "Hall")
    recorder.line("wall", (0.0, 0.0), (1.0, 0.0))
    return Drawing("d", "t", "w", (0.0, 0.0, 2.0, 2.0), 20.0, own=recorder.recording())


def test_letters_stand_on_a_patch_and_have_no_rim() -> None:
    text = svg_for_pdf(drawing()).decode()
    assert "paint-order" in write_svg(drawing()).decode()
    assert "paint-order" not in text
    assert text.index("ink-paper") < text.index(">Hall<")


@pytest.mark.parametrize(
    ("anchor", "turn", "middle"),
    [
        ("middle", 0.0, (0.0, 0.0)),
        ("start", 0.0, (1.0, 0.0)),
        ("end", 0.0, (-1.0, 0.0)),
        ("start", 90.0, (0.0, 1.0)),
    ],
)
def test_a_patch_lies_under_its_text(anchor: str, turn: float, middle: tuple[float, float]) -> None:
    recorder = Recorder()
    recorder.text("space-name", (0.0, 0.0), "abcd", anchor=anchor, turn_deg=turn)  # type: ignore[arg-type]
    ring = patch(recorder.recording().strokes[0][1], mm_per_unit=1.0)  # type: ignore[arg-type]
    half = 4 * 2.7 * 0.54 / 2
    centre = [sum(point[i] for point in ring) / 4 for i in (0, 1)]
    assert centre == pytest.approx([middle[0] * half, middle[1] * half], abs=1e-5)

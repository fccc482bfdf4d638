from __future__ import annotations

from wardwright.documents.drawing.recording import Drawing, Line, Recorder, Text


def test_verbs_are_kept_in_order_with_their_layer() -> None:
    recorder = Recorder()
    recorder.line("wall", (0, 0), (1, 0))
    recorder.layer = "names"
    recorder.text("small", (0, 0), "hall")
    assert recorder.recording().strokes == (
        ("house", Line("wall", (0, 0), (1, 0))),
        ("names", Text("small", (0, 0), "hall", "middle")),
    )


def test_one_layer_can_be_had_alone_and_two_recordings_played_together() -> None:
    recorder = Recorder()
    recorder.line("wall", (0, 0), (1, 0))
    recorder.layer = "over"
    recorder.circle("goal", (0, 0), radius_mm=1.0)
    whole = recorder.recording()
    assert whole.of(["over"]).with_(whole.of(["house"])).strokes == whole.strokes[::-1]


def test_size_on_paper_follows_the_scale() -> None:
    drawing = Drawing(key="a", title="", description="", bounds=(0.0, 0.0, 4.0, 2.0), mm_per_unit=20.0)
    assert (drawing.width_mm, drawing.height_mm, drawing.scale) == (80.0, 40.0, 50)

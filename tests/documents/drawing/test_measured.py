import shapely

from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.measured import draw_measured, is_measured, measured_sign
from wardwright.documents.drawing.recording import Recorder
from wardwright.model.sketch import Sketch


def drawn(sketch: Sketch) -> str:
    recorder = Recorder()
    empty = shapely.Polygon()
    board = Board((0.0, 0.0, 10.0, 10.0), mm_per_unit=10.0, solid=empty, soft=empty, clear=empty)
    draw_measured(recorder, sketch, board=board)
    return repr(recorder.recording())


def test_a_distance_is_a_line_with_its_length_and_a_walk_its_length_alone() -> None:
    line = Sketch(role="distance", storey="g", points=((1.0, 1.0), (3.0, 1.0)), label="2.00 m")
    walk = line.model_copy(update={"points": ((1.0, 1.0),)})
    assert is_measured(line)
    assert "2.00 m" in drawn(line)
    assert "'distance'" in drawn(line)
    assert "2.00 m" in drawn(walk)
    assert "'distance'" not in drawn(walk)


def test_a_rooms_level_is_a_figure_and_one_with_words_is_not_drawn_here() -> None:
    room = Sketch(role="level", storey="g", points=((5.0, 5.0),), label="62")
    assert is_measured(room)
    assert "'62'" in drawn(room)
    assert not is_measured(room.model_copy(update={"label": "62 dBA at the pillow"}))


def test_both_have_a_sign() -> None:
    for role, style in (("distance", "'distance'"), ("level", "'level-room'")):
        recorder = Recorder()
        measured_sign(recorder, role, (1.0, 3.0), right=(12.0, 3.0))
        assert style in repr(recorder.recording())

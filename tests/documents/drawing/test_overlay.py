from __future__ import annotations

import pytest
import shapely

from wardwright.documents.drawing.hatching import area_of
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.overlay import draw_sketches
from wardwright.documents.drawing.recording import Box, Circle, Hatch, Polyline, Recorder, Text, Tick, Verb
from wardwright.model.sketch import Sketch

WEST = ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0))
WIDE = ((0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (0.0, 2.0))


def drawn(*sketches: Sketch) -> tuple[list[tuple[str, Verb]], tuple[str, ...]]:
    recorder = Recorder()
    board = Board((-1, -1, 9, 9), mm_per_unit=10.0, solid=shapely.Polygon(), soft=shapely.Polygon())
    roles = draw_sketches(recorder, sketches, board=board, mm_per_m=10.0)
    return list(recorder.recording().strokes), roles


def test_floor_is_hatched_under_the_house() -> None:
    strokes, roles = drawn(Sketch(role="seen", storey="g", rings=(WEST,)))
    assert roles == ("seen",)
    (layer, hatch) = next((layer, verb) for layer, verb in strokes if isinstance(verb, Hatch))
    assert layer == "under"
    assert area_of(hatch.rings).area == pytest.approx(4.0)


def test_what_is_surely_noticed_is_not_hatched_twice() -> None:
    strokes, _ = drawn(
        Sketch(role="seen", storey="g", rings=(WEST,)),
        Sketch(role="possibly-seen", storey="g", rings=(WIDE,)),
    )
    areas = {verb.style: area_of(verb.rings).area for _, verb in strokes if isinstance(verb, Hatch)}
    assert areas == pytest.approx({"seen": 4.0, "possibly-seen": 4.0}, rel=1e-4)


def test_two_detectors_floors_are_joined() -> None:
    strokes, _ = drawn(
        Sketch(role="seen", storey="g", rings=(WEST,)), Sketch(role="seen", storey="g", rings=(WIDE,))
    )
    assert len([verb for _, verb in strokes if isinstance(verb, Hatch)]) == 1


def test_undetected_floor_has_a_pattern_of_its_own() -> None:
    strokes, roles = drawn(Sketch(role="unnoticed", storey="g", rings=(WEST,)))
    assert roles == ("unnoticed",)
    assert [verb.style for _, verb in strokes if isinstance(verb, Hatch)] == ["unnoticed-floor"]


def test_a_walk_is_ticked_in_seconds_where_they_pass() -> None:
    walk = Sketch(role="walk", storey="g", points=((0.0, 0.0), (4.0, 0.0)), times_s=(0.5, 4.5))
    strokes, _ = drawn(walk)
    ticks = [verb for _, verb in strokes if isinstance(verb, Tick)]
    assert [tick.at[0] for tick in ticks] == pytest.approx([0.5, 1.5, 2.5, 3.5])
    assert [verb.text for _, verb in strokes if isinstance(verb, Text)] == ["1 s", "2 s", "3 s", "4 s"]


def test_a_walk_without_a_clock_has_no_ticks() -> None:
    strokes, _ = drawn(Sketch(role="walk", storey="g", points=((0.0, 0.0), (4.0, 0.0))))
    assert not [verb for _, verb in strokes if isinstance(verb, Tick)]


@pytest.mark.parametrize("role", ["notice", "goal", "fault", "suggestion"])
def test_a_place_is_drawn_with_its_label(role: str) -> None:
    strokes, roles = drawn(Sketch(role=role, storey="g", points=((1.0, 1.0),), label="OC here"))  # type: ignore[arg-type] # parametrised
    assert roles == (role,)
    texts = [verb.text for _, verb in strokes if isinstance(verb, Text | Box)]
    assert texts == ["OC here"]
    assert [verb for _, verb in strokes if isinstance(verb, Circle | Tick)]


def test_a_long_label_is_folded() -> None:
    label = "noticed by Living room movement detector"
    strokes, _ = drawn(Sketch(role="notice", storey="g", points=((4.0, 4.0),), label=label))
    lines = [verb.text for _, verb in strokes if isinstance(verb, Text)]
    assert len(lines) == 2
    assert " ".join(lines) == label


def test_where_notice_still_helps_is_an_outline() -> None:
    strokes, _ = drawn(Sketch(role="timely", storey="g", rings=(WEST,)))
    assert [type(verb) for _, verb in strokes] == [Polyline]


def test_specks_are_no_area() -> None:
    speck = ((3.0, 0.0), (3.05, 0.0), (3.05, 0.05), (3.0, 0.05))
    strokes, _ = drawn(Sketch(role="seen", storey="g", rings=(WEST, speck)))
    (hatch,) = [verb for _, verb in strokes if isinstance(verb, Hatch)]
    assert len(hatch.rings) == 1
    assert area_of(hatch.rings).area == pytest.approx(4.0, rel=1e-6)

from __future__ import annotations

import math

import pytest

from wardwright.documents.drawing.openings import draw_opening
from wardwright.documents.drawing.recording import Arc, Line, Polygon, Recorder, Verb
from wardwright.model.fabric import Wall
from wardwright.model.opening import Opening

WALL = Wall(id="w", storey="g", line_m=((0.0, 0.0), (4.0, 0.0)), thickness_m=0.2)


def drawn(**fields: object) -> list[Verb]:
    recorder = Recorder()
    given = {"id": "o", "name": "o", "kind": "door", "wall": "w", "offset_m": 2.0, "width_m": 1.0, **fields}
    draw_opening(recorder, WALL, Opening.model_validate(given))
    return [verb for _, verb in recorder.recording().strokes]


@pytest.mark.parametrize(
    ("hinge", "swing", "foot", "tip", "sweep"),
    [
        ("start", "left", (1.5, 0.1), (1.5, 1.1), (0, 90)),
        ("end", "left", (2.5, 0.1), (2.5, 1.1), (90, 180)),
        ("start", "right", (1.5, -0.1), (1.5, -1.1), (-90, 0)),
        ("end", "right", (2.5, -0.1), (2.5, -1.1), (180, 270)),
    ],
)
def test_a_leaf_turns_at_its_hinge_to_its_side(
    hinge: str, swing: str, foot: tuple[float, float], tip: tuple[float, float], sweep: tuple[float, float]
) -> None:
    leaf, arc = drawn(hinge=hinge, swing=swing)
    assert isinstance(leaf, Line)
    assert isinstance(arc, Arc)
    assert leaf.start == pytest.approx(foot)
    assert leaf.end == pytest.approx(tip)
    for wanted, found in zip(sweep, (arc.start_deg, arc.end_deg), strict=True):
        assert math.cos(math.radians(found)) == pytest.approx(math.cos(math.radians(wanted)), abs=1e-9)
        assert math.sin(math.radians(found)) == pytest.approx(math.sin(math.radians(wanted)), abs=1e-9)


def test_two_leaves_are_half_as_wide() -> None:
    arcs = [verb for verb in drawn(leaves=2) if isinstance(verb, Arc)]
    assert [arc.radius for arc in arcs] == [0.5, 0.5]


def test_a_window_is_a_frame_and_two_lines() -> None:
    kinds = [(type(verb), verb.style) for verb in drawn(kind="window", hinge="bottom")]
    assert kinds == [(Polygon, "opening"), (Line, "glass"), (Line, "glass")]


def test_a_gap_is_dashed_along_both_faces() -> None:
    lines = [verb for verb in drawn(kind="gap", leaves=0) if isinstance(verb, Line)]
    assert [line.style for line in lines] == ["gap", "gap"]
    assert {round(line.start[1], 3) for line in lines} == {-0.1, 0.1}


def test_sliding_and_fixed_leaves_have_no_swing() -> None:
    for fields in ({"hinge": "sliding"}, {"hinge": "fixed"}, {"swing": "none"}, {"kind": "garage-door"}):
        verbs = drawn(**fields)
        assert verbs
        assert not [verb for verb in verbs if isinstance(verb, Arc)], fields

from __future__ import annotations

from xml.etree import ElementTree as ET

import pytest

from wardwright.documents.drawing.recording import Drawing, Recorder
from wardwright.documents.writers.svg import inline_svg, write_svg
from wardwright.documents.writers.svg_strokes import PLAYERS, number

SPACE = "{http://www.w3.org/2000/svg}"


def drawing(**more: object) -> Drawing:
    recorder = Recorder()
    square = ((0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0))
    recorder.line("wall", (0.0, 0.0), (2.0, 1.0))
    recorder.polyline("walk", square)
    recorder.polygon("wall", (square,))
    recorder.hatch("seen", (square,))
    recorder.circle("goal", (1.0, 0.5), radius_mm=2.0)
    recorder.arc("swing", (0.0, 0.0), radius=1.0, start_deg=0.0, end_deg=90.0)
    recorder.tick("walk-tick", (1.0, 0.5), turn_deg=90.0, length_mm=4.0)
    recorder.head("frame-solid", (1.0, 0.5), turn_deg=0.0)
    recorder.text("space-name", (1.0, 0.5), "Tom & <Jerry>")
    recorder.box("device", (1.0, 0.5), "MD")
    fields = {"key": "k", "title": "A <title>", "description": "words", "bounds": (0.0, 0.0, 2.0, 1.0)}
    return Drawing(**{**fields, "mm_per_unit": 20.0, "own": recorder.recording(), **more})  # type: ignore[arg-type] # a test's fields


def test_every_verb_is_played() -> None:
    played = {type(verb) for _, verb in drawing().own.strokes}
    assert played == set(PLAYERS)
    assert len(played) == 10


def test_the_size_on_paper_is_the_scale_exactly() -> None:
    root = ET.fromstring(write_svg(drawing()))  # noqa: S314 - our own bytes
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("40mm", "20mm", "0 0 40 20")


def test_it_is_named_for_who_cannot_see_it() -> None:
    root = ET.fromstring(write_svg(drawing()))  # noqa: S314 - our own bytes
    labels = (root.get("aria-labelledby") or "").split()
    found = {element.get("id"): element.text for element in root if element.get("id")}
    assert [found[label] for label in labels] == ["A <title>", "words"]
    assert root.get("role") == "img"


def test_text_stays_text_and_is_escaped() -> None:
    root = ET.fromstring(write_svg(drawing()))  # noqa: S314 - our own bytes
    assert [text.text for text in root.iter(f"{SPACE}text")] == ["Tom & <Jerry>", "MD"]


def test_y_points_up_on_the_plan_and_down_on_paper() -> None:
    root = ET.fromstring(write_svg(drawing()))  # noqa: S314 - our own bytes
    line = next(path for path in root.iter(f"{SPACE}path") if path.get("class") == "ink-wall")
    assert line.get("d") == "M0 20l40 -20"


def test_an_arc_runs_anticlockwise_on_the_plan() -> None:
    root = ET.fromstring(write_svg(drawing()))  # noqa: S314 - our own bytes
    arc = next(path for path in root.iter(f"{SPACE}path") if path.get("class") == "ink-swing")
    assert arc.get("d") == "M20 20A20 20 0 0 0 0 0"


def test_the_same_drawing_gives_the_same_bytes() -> None:
    assert write_svg(drawing()) == write_svg(drawing())


def test_a_shared_base_is_written_once() -> None:
    one = drawing()
    base = one.own
    first = one._replace(base=base, own=base.of(["over"]), base_key="plan")
    drawn: set[str] = set()
    whole, again = inline_svg(first, drawn=drawn), inline_svg(first._replace(key="b"), drawn=drawn)
    assert '<g id="plan">' in whole
    assert '<use href="#plan"/>' in again
    assert len(again) < len(whole) / 2


@pytest.mark.parametrize(
    ("value", "text"), [(-0.004, "0"), (10.0, "10"), (100.0, "100"), (1.005, "1"), (0.5, "0.5")]
)
def test_numbers_are_short(value: float, text: str) -> None:
    assert number(value) == text


def test_rounded_steps_do_not_add_up_to_an_error() -> None:
    recorder = Recorder()
    points = tuple((i / 3.0, 0.0) for i in range(301))
    recorder.polyline("walk", points)
    line = drawing(own=recorder.recording(), bounds=(0.0, 0.0, 100.0, 1.0), mm_per_unit=1.0)
    path = next(ET.fromstring(write_svg(line)).iter(f"{SPACE}path"))  # noqa: S314 - our own bytes
    steps = (path.get("d") or "").split("l")[1:]
    assert sum(float(step.split()[0]) for step in steps) == pytest.approx(100.0, abs=0.011)

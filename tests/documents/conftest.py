"""A small made-up house, with answers and findings made up too: what the papers are drawn from in tests.

The numbers of the answers are invented to fill the page; nothing here says what the engines find.
"""

from __future__ import annotations

import math
import os
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest

from wardwright.documents.content.page import Page, page_of
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, PartAnswer
from wardwright.rules.finding import Finding, Mend


def _wall(
    name: str, storey: str, line: tuple[tuple[float, float], tuple[float, float]], **more: object
) -> dict:
    return {"id": name, "storey": storey, "line_m": line, **more}


def _shell(storey: str) -> list[dict]:
    thick = {"thickness_m": 0.3, "is_exterior": True}
    s = storey[0]
    return [
        _wall(f"{s}-south", storey, ((-0.15, -0.15), (5.15, -0.15)), **thick),
        _wall(f"{s}-east", storey, ((5.15, -0.15), (5.15, 8.65)), **thick),
        _wall(f"{s}-north", storey, ((5.15, 8.65), (-0.15, 8.65)), **thick),
        _wall(f"{s}-west", storey, ((-0.15, 8.65), (-0.15, -0.15)), **thick),
    ]


def make_site() -> Site:
    walls = [
        *_shell("ground"),
        _wall("g-hall", "ground", ((1.95, 0.0), (1.95, 5.2))),
        _wall("g-kitchen", "ground", ((0.0, 5.25), (5.0, 5.25)), basis={"thickness_m": "guessed"}),
        *_shell("first"),
        _wall("f-landing", "first", ((1.95, 0.0), (1.95, 8.5))),
        _wall("f-front", "first", ((1.95, 3.6), (5.0, 3.6))),
        _wall("f-bath", "first", ((0.0, 5.6), (1.9, 5.6))),
        _wall("f-back", "first", ((1.95, 6.0), (5.0, 6.0))),
    ]
    openings = [
        {"id": "front-door", "name": "front door", "kind": "door", "wall": "g-south", "offset_m": 1.1,
         "width_m": 0.9, "hinge": "start", "swing": "left", "lock": "multi-point", "is_entry_door": True},
        {"id": "living-window", "name": "living room window", "kind": "window", "wall": "g-south",
         "offset_m": 3.6, "width_m": 1.8, "sill_m": 0.8, "head_m": 2.1, "glazing": "double"},
        {"id": "kitchen-window", "name": "kitchen window", "kind": "window", "wall": "g-north",
         "offset_m": 3.9, "width_m": 1.2, "sill_m": 1.0, "head_m": 2.1, "glazing": "double"},
        {"id": "back-door", "name": "back door", "kind": "door", "wall": "g-north", "offset_m": 1.3,
         "width_m": 0.9, "hinge": "end", "swing": "left", "lock": "latch"},
        {"id": "living-door", "name": "living room door", "kind": "door", "wall": "g-hall", "offset_m": 1.8,
         "width_m": 0.8, "hinge": "end", "swing": "right"},
        {"id": "kitchen-door", "name": "kitchen door", "kind": "door", "wall": "g-kitchen", "offset_m": 0.55,
         "width_m": 0.8, "hinge": "start", "swing": "left", "habit": "open"},
        {"id": "arch", "name": "dining arch", "kind": "gap", "wall": "g-kitchen", "offset_m": 3.5,
         "width_m": 1.6, "leaves": 0},
        {"id": "front-bedroom-window", "name": "front bedroom window", "kind": "window", "wall": "f-south",
         "offset_m": 3.6, "width_m": 1.5, "sill_m": 0.9, "head_m": 2.1, "glazing": "double"},
        {"id": "back-bedroom-window", "name": "back bedroom window", "kind": "window", "wall": "f-north",
         "offset_m": 1.6, "width_m": 1.2, "sill_m": 0.9, "head_m": 2.1, "glazing": "double"},
        {"id": "front-bedroom-door", "name": "front bedroom door", "kind": "door", "wall": "f-landing",
         "offset_m": 3.0, "width_m": 0.76, "hinge": "start", "swing": "right"},
        {"id": "middle-bedroom-door", "name": "middle bedroom door", "kind": "door", "wall": "f-landing",
         "offset_m": 4.3, "width_m": 0.76, "hinge": "end", "swing": "right"},
        {"id": "back-bedroom-door", "name": "back bedroom door", "kind": "door", "wall": "f-landing",
         "offset_m": 6.6, "width_m": 0.76, "hinge": "end", "swing": "right"},
        {"id": "bath-door", "name": "bathroom door", "kind": "door", "wall": "f-bath", "offset_m": 1.4,
         "width_m": 0.7, "hinge": "end", "swing": "left"},
    ]  # fmt: skip
    spaces = [
        ("hall", "Hall", "ground", (0, 0, 1.9, 5.2), "hall"),
        ("living", "Living room", "ground", (2.0, 0, 5.0, 5.2), "living"),
        ("kitchen", "Kitchen", "ground", (0, 5.3, 5.0, 8.5), "kitchen"),
        ("landing", "Landing", "first", (0, 0, 1.9, 5.55), "landing"),
        ("bathroom", "Bathroom", "first", (0, 5.65, 1.9, 8.5), "bathroom"),
        ("front-bedroom", "Front bedroom", "first", (2.0, 0, 5.0, 3.55), "bedroom"),
        ("middle-bedroom", "Middle bedroom", "first", (2.0, 3.65, 5.0, 5.95), "bedroom"),
        ("back-bedroom", "Back bedroom", "first", (2.0, 6.05, 5.0, 8.5), "bedroom"),
    ]
    devices = [
        ("control-unit", "Hall control unit", "control-radio", "g-hall", "left", 3.6, 1.6, None),
        ("keypad", "Hall keypad", "keypad-radio", "g-south", "left", 1.85, 1.4, None),
        ("md-living", "Living room movement detector", "movement-12", "g-hall", "right", 0.2, 2.2, 40.0),
        ("md-kitchen", "Kitchen movement detector", "movement-12", "g-east", "left", 8.4, 2.2, 215.0),
        ("md-landing", "Landing movement detector", "movement-12", "f-landing", "left", 5.3, 2.2, 250.0),
        ("siren-out", "Front sounder outside", "sounder-out", "g-south", "right", 2.3, 2.4, None),
        ("siren-in", "Landing sounder inside", "sounder-in", "f-west", "left", 6.5, 2.1, None),
    ]
    return Site.model_validate(
        {
            "name": "14 Tannery Row",
            "place": {"country": "GB", "latitude_deg": 53.8, "north_deg": 20.0},
            "storeys": [
                {"id": "ground", "name": "Ground floor", "elevation_m": 0.0, "height_m": 2.4},
                {"id": "first", "name": "First floor", "elevation_m": 2.65, "height_m": 2.4},
            ],
            "walls": walls,
            "openings": openings,
            "spaces": [
                {"id": i, "name": n, "storey": s, "use": u,
                 "outline_m": ((b[0], b[1]), (b[2], b[1]), (b[2], b[3]), (b[0], b[3]))}
                for i, n, s, b, u in spaces
            ],
            "stairs": [
                {"id": "stairs", "lower": "ground", "upper": "first", "width_m": 0.85,
                 "line_m": ((0.45, 1.6), (0.45, 4.9))}
            ],
            "fixtures": [
                {"id": "sofa", "name": "sofa", "storey": "ground", "kind": "sofa", "centre_m": (4.5, 3.0),
                 "size_m": (0.9, 2.0)},
                {"id": "radiator", "name": "radiator", "storey": "ground", "kind": "radiator",
                 "centre_m": (3.6, 0.08), "size_m": (1.4, 0.12), "heat": "warm"},
                {"id": "worktop", "name": "worktop", "storey": "ground", "kind": "worktop",
                 "centre_m": (4.7, 7.0), "size_m": (0.6, 2.4)},
                {"id": "bed", "name": "bed", "storey": "first", "kind": "bed", "centre_m": (3.9, 1.4),
                 "size_m": (1.5, 2.0)},
            ],
            "ground": {
                "boundary_m": ((-0.4, -3.0), (5.4, -3.0), (5.4, 14.0), (-0.4, 14.0)),
                "things": [
                    {"id": "bin", "name": "bin", "kind": "bin", "height_m": 1.1, "can_be_climbed": True,
                     "outline_m": ((2.2, 8.95), (2.8, 8.95), (2.8, 9.5), (2.2, 9.5))}
                ],
            },
            "devices": [
                {"id": i, "name": n, "sheet": s, "heading_deg": h,
                 "mount": {"on": "wall", "wall": w, "side": side, "offset_m": o, "height_m": z}}
                for i, n, s, w, side, o, z, h in devices
            ]
            + [
                {"id": "oc-front", "name": "Front door contact", "sheet": "contact",
                 "mount": {"on": "opening", "opening": "front-door"}},
                {"id": "oc-back", "name": "Back door contact", "sheet": "contact",
                 "mount": {"on": "opening", "opening": "back-door"}},
            ],
            "zones": [
                {"id": "zone-1", "number": 1, "name": "Front door", "devices": ("oc-front",),
                 "behaviour": "entry-exit"}
            ],
            "people": [{"id": "grandmother", "name": "grandmother", "pace": "slow"}],
        }
    )  # fmt: skip


def make_catalogue() -> Catalogue:
    def sheet(name: str, kind: str, **more: object) -> dict:
        return {"id": name, "name": name, "source": "own", "mark": "assumption", "kind": kind, **more}

    rows = ({"name": "main", "pairs": 8, "depression_deg": 8.0},)
    return Catalogue.model_validate(
        {
            "sheets": [
                sheet("control-radio", "control-unit", control={}),
                sheet("keypad-radio", "keypad"),
                sheet("movement-12", "movement-detector", movement={
                    "reach_m": 12, "angle_deg": 90, "height_low_m": 2.0, "height_high_m": 2.4, "rows": rows}),
                sheet("contact", "opening-contact", contact={"gap_m": 0.015}),
                sheet("sounder-out", "sounder", sounder={"level_dba": 100, "is_outside": True}),
                sheet("sounder-in", "sounder", sounder={"level_dba": 95}),
            ],
            "figures": [
                Figure(id="pace-hurried", name="intruder's pace, hurried", value=2.5, low=1.8, high=3.2,
                       unit="m/s", source="own", mark="assumption"),
                Figure(id="force-rc2", name="forcing a door or window of class RC2", value=180, low=120,
                       high=300, unit="s", source="en-1627", mark="published"),
            ],
        }
    )  # fmt: skip


def _estimate(value: float, low: float, high: float, unit: str = "s") -> Estimate:
    return Estimate(
        value=value, low=low, high=high, unit=unit, basis="guessed",
        drivers=(
            Driver(name="breaking the control unit", swing=abs(high - low) * 0.7, basis="default"),
            Driver(name="intruder's pace, hurried", swing=abs(high - low) * 0.3, basis="told"),
        ),
    )  # fmt: skip


def _walk(points: list[tuple[float, float]], *, pace: float, start: float) -> tuple[tuple, tuple]:
    xs, ts = [points[0]], [start]
    for a, b in pairwise(points):
        n = max(1, round(math.dist(a, b) / 0.05))
        for i in range(1, n + 1):
            xs.append((a[0] + (b[0] - a[0]) * i / n, a[1] + (b[1] - a[1]) * i / n))
            ts.append(ts[-1] + math.dist(a, b) / n / pace)
    return tuple(xs), tuple(ts)


def _fan(x: float, y: float, heading: float, reach: float, box: tuple[float, float, float, float]) -> tuple:
    ring = [(x, y)]
    for i in range(-9, 10):
        turn = math.radians(heading + 5 * i)
        px, py = x + reach * math.cos(turn), y + reach * math.sin(turn)
        ring.append((min(max(px, box[0]), box[2]), min(max(py, box[1]), box[3])))
    return tuple(ring)


def make_answers() -> tuple[Answer, ...]:
    way, clock = _walk(
        [(3.7, 8.2), (3.5, 5.25), (3.0, 3.0), (2.3, 1.9), (1.6, 1.8), (1.55, 3.4)], pace=2.5, start=5.0
    )
    living = _fan(2.05, 0.25, 40, 6.0, (2.0, 0.0, 5.0, 5.2))
    far = _fan(2.05, 0.25, 40, 9.0, (2.0, 0.0, 5.0, 7.4))
    parts = lambda n, s, m, r, b: tuple(  # noqa: E731 - a row of one table
        PartAnswer(
            name=name, estimate=None if v is None else _estimate(*v), reason=None if v else "nothing notices"
        )
        for name, v in (("first notice", n), ("sounder", s), ("message", m), ("reached", r), ("broken", b))
    )
    return (
        Answer(
            question=1, subject="front door", subject_id="front-door",
            measure="time in hand before the control unit is broken", estimate=_estimate(-29.4, -38.2, -21.0),
            verdict="bad", chance=0.0,
            parts=parts((0, 0, 0.4), (31, 30.2, 32.5), (41, 36, 61), (1.6, 1.1, 2.4), (11.6, 6.6, 16.9)),
            notes=("The entry time runs while the intruder is at the control unit.",),
            mends=(
                Mend(action="change-programme", subject="14 Tannery Row", values=(("entry_time_s", 20),),
                     gain=_estimate(10.0, 9.8, 10.2)),
                Mend(action="move-device", subject="control-unit", values=(("space", "landing"),),
                     gain=_estimate(24.1, 18.0, 29.5)),
                Mend(action="change-lock", subject="front-door", values=(("lock", "rc2"),)),
            ),
            sketches=(
                Sketch(
                    role="walk", storey="ground", points=((1.0, 0.2), (1.55, 1.5), (1.6, 3.4)), times_s=(0, 0.7, 1.6)
                ),
                Sketch(role="notice", storey="ground", points=((1.0, 0.1),), label="noticed 0 s"),
                Sketch(role="goal", storey="ground", points=((1.85, 3.6),), label="broken 12 s"),
            ),
        ),
        Answer(
            question=1, subject="kitchen window", subject_id="kitchen-window",
            measure="time in hand before the control unit is broken", estimate=_estimate(0.2, -4.1, 4.4),
            verdict="thin", chance=0.53,
            parts=parts((7.8, 5.9, 9.9), (8.8, 6.8, 11.3), (18.8, 13.9, 38.7), (9.0, 7.4, 11.8), (19.0, 14.2, 25.1)),
            mends=(
                Mend(action="change-lock", subject="kitchen-window", values=(("glazing", "laminated"),)),
                Mend(action="add-light", subject="kitchen-window"),
                Mend(action="add-device", subject="kitchen", values=(("kind", "opening-contact"),),
                     gain=_estimate(7.8, 5.9, 9.9)),
            ),
            sketches=(
                Sketch(role="walk", storey="ground", points=way, times_s=clock),
                Sketch(role="unnoticed", storey="ground", points=way[:70]),
                Sketch(role="notice", storey="ground", points=(way[70],), label="noticed 8 s"),
                Sketch(role="goal", storey="ground", points=((1.85, 3.6),), label="control unit"),
                Sketch(role="timely", storey="ground", rings=(((2.0, 3.0), (5.0, 3.0), (5.0, 5.2), (2.0, 5.2)),)),
                Sketch(role="suggestion", storey="ground", points=((3.9, 8.5),), label="OC here"),
            ),
        ),
        Answer(
            question=5, subject="back door", subject_id="back-door", measure="walked before anything notices",
            estimate=_estimate(3.4, 1.9, 5.2, "m"), verdict="thin",
            sketches=(Sketch(role="unnoticed", storey="ground", points=((1.3, 8.3), (1.3, 6.4), (0.6, 5.4))),),
        ),
        Answer(
            question=11, subject="Living room movement detector", subject_id="md-living",
            measure="share of its own space it surely sees", estimate=_estimate(0.86, 0.74, 0.93, "-"),
            verdict="good",
            parts=(
                PartAnswer(name="surely seen, upright", estimate=_estimate(13.4, 11.6, 14.5, "m2")),
                PartAnswer(name="blind part", estimate=_estimate(2.2, 1.1, 4.0, "m2")),
                PartAnswer(name="crossing angle", estimate=_estimate(61, 48, 74, "deg")),
            ),
            sketches=(
                Sketch(role="seen", storey="ground", rings=(living,)),
                Sketch(role="possibly-seen", storey="ground", rings=(far,)),
                Sketch(role="blind", storey="ground", rings=(((4.1, 4.1), (5.0, 4.1), (5.0, 5.2), (4.1, 5.2)),)),
                Sketch(role="leak", storey="ground", rings=(((2.9, 5.4), (4.2, 5.4), (4.4, 7.3), (3.3, 7.3)),)),
            ),
        ),
        Answer(
            question=11, subject="Landing movement detector", subject_id="md-landing",
            measure="share of its own space it surely sees", estimate=None,
            reason="the posture sheet is not known", verdict="unknown",
        ),
        Answer(
            question=1, subject="back door", subject_id="back-door",
            measure="time in hand before the control unit is broken", estimate=_estimate(11.0, 6.0, 16.4),
            verdict="good", chance=0.99,
            parts=parts((0, 0, 0.2), (1, 0.3, 2.9), (11, 6.1, 31), (12, 9.8, 15.2), (22, 16.8, 28.9)),
        ),
        Answer(
            question=1, subject="back bedroom window", subject_id="back-bedroom-window",
            measure="time in hand before the control unit is broken", estimate=None,
            reason="nothing would notice", verdict="bad",
            parts=parts(None, None, None, (14, 11, 19), (24, 18, 31)),
        ),
    )  # fmt: skip


def make_findings() -> tuple[Finding, ...]:
    return (
        Finding(
            code="CTL101", rule="control-unit-on-entry-route", severity="must mend", subject="control-unit",
            message="Hall control unit stands 3.5 m along the way from the front door",
            cure="Move it off the way in", estimate=_estimate(3.5, 3.4, 3.6, "m"), limit=5.0,
            sketches=(Sketch(role="fault", storey="ground", points=((1.85, 3.6),)),),
        ),
        Finding(
            code="MOV101", rule="movement-detector-above-hot-thing", severity="advise", subject="md-living",
            message="Living room movement detector is 0.9 m from the radiator",
            cure="Move it 0.4 m along the wall",
            mends=(Mend(action="move-device", subject="md-living", values=(("offset_m", 0.6), ("height_m", 2.2))),),
        ),
        Finding(
            code="CON101", rule="contact-gap-over-sheet", severity="not run", subject="oc-back",
            message="Back door contact: the gap between its parts is not known", cure="Measure the gap",
        ),
        Finding(
            code="NAM101", rule="names-not-clear", severity="check with the standard", subject="siren-in",
            message="<Landing> & sounder", cure="Rename it",
        ),
    )  # fmt: skip


@pytest.fixture
def site() -> Site:
    return make_site()


@pytest.fixture
def catalogue() -> Catalogue:
    return make_catalogue()


@pytest.fixture
def answers() -> tuple[Answer, ...]:
    return make_answers()


@pytest.fixture
def findings() -> tuple[Finding, ...]:
    return make_findings()


REFERENCES = Path(__file__).resolve().parents[1] / "references"


@pytest.fixture
def kept() -> Callable[[str, str], None]:
    """Compare a text with the one that is kept; `scripts/keep-references` writes them anew."""

    def compare(name: str, text: str) -> None:
        path = REFERENCES / name
        if os.environ.get("WARDWRIGHT_KEEP_REFERENCES") == "1":
            path.write_text(text, encoding="utf-8")
        assert path.is_file(), f"tests/references/{name} is not there: run scripts/keep-references"
        assert text == path.read_text(encoding="utf-8"), (
            f"tests/references/{name} differs: look at the change, then run scripts/keep-references"
        )

    return compare


@pytest.fixture
def page(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], findings: tuple[Finding, ...]
) -> Page:
    return page_of(site, catalogue, answers, findings, worth_adding=("where the keypad is to be",))

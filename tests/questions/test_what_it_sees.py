"""Question 11 on a room that can be worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from common.worked_terrace import worked_terrace
from wardwright.model.device import Device, FreeMount, WallMount
from wardwright.model.fabric import Storey
from wardwright.questions.table import QUESTIONS, ask
from wardwright.questions.what_it_sees import answers, percentile
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
CORNER = WallMount(wall="ground-cross", side="left", offset_m=5.7, height_m=2.2)
SITE = worked_terrace(contacts={"front-door": "entry-exit"}, movement={"kitchen": (CORNER, 135.0, "instant")})


def test_no_movement_detector_is_not_computable() -> None:
    (only,) = answers(worked_terrace(contacts={}), CATALOGUE)
    assert only.reason == "not computable: no movement detector"
    assert only.verdict == "unknown"


def test_a_corner_detector_sees_nearly_all_of_its_room_and_nothing_else() -> None:
    (kitchen,) = answers(SITE, CATALOGUE)
    parts = {p.name: p.estimate for p in kitchen.parts}
    assert kitchen.estimate is not None
    # The kitchen is 5.9 m by 3.5 m: 20.65 m2, all within 7 m of the corner.
    assert kitchen.estimate.value < 0.2
    for name in ("seen at 0.3 m height", "seen at 1.0 m height", "possibly noticed on"):
        estimate = parts[name]
        assert estimate is not None
        assert estimate.value == pytest.approx(20.65, rel=0.15)
    leak = parts["seen outside its space"]
    assert leak is not None
    assert leak.value < 3.0  # only what the kitchen door lets through if it stands open
    assert kitchen.verdict == "good"


def test_crossing_angles_are_told_for_the_ways_that_cross_its_view() -> None:
    (kitchen,) = answers(SITE, CATALOGUE)
    named = {p.name: p.estimate for p in kitchen.parts if p.name.startswith("crossing angle")}
    assert set(named) == {"crossing angle from kitchen window"}
    angle = named["crossing angle from kitchen window"]
    assert angle is not None
    assert 0.0 <= angle.low <= angle.value <= angle.high <= 90.0


def test_a_detector_turned_to_the_wall_side_is_blind_to_half_its_room() -> None:
    site = worked_terrace(contacts={}, movement={"kitchen": (CORNER, 178.0, "instant")})
    (kitchen,) = answers(site, CATALOGUE)
    (good,) = answers(SITE, CATALOGUE)
    assert kitchen.estimate is not None
    assert good.estimate is not None
    assert kitchen.estimate.value > good.estimate.value + 0.1


def test_what_it_sees_is_drawn_and_limits_are_said() -> None:
    (kitchen,) = answers(SITE, CATALOGUE)
    assert {"seen", "possibly-seen"} <= {sketch.role for sketch in kitchen.sketches}
    assert "crawling and very slow movement may pass unnoticed" in kitchen.notes


def test_a_control_unit_on_a_storey_without_floor_of_ours_crashes_nothing() -> None:
    loft = Storey(id="loft", name="Loft", elevation_m=5.4, height_m=2.0)
    unit = Device(
        id="unit",
        name="Control unit",
        sheet="control-unit-radio",
        mount=FreeMount(storey="loft", at_m=(4, 4)),
    )
    site = SITE.model_copy(
        update={
            "storeys": (*SITE.storeys, loft),
            "devices": tuple(unit if d.id == "unit" else d for d in SITE.devices),
        }
    )
    found = ask(site, CATALOGUE)
    assert {a.question for a in found} == {one.number for one in QUESTIONS}
    races = [a for a in found if a.question == 1]
    assert all((a.reason or "").startswith("not computable: ") for a in races)
    assert any("no way on foot" in note for a in found if a.question == 5 for note in a.notes)


def test_a_percentile_is_numpys_to_the_last_digit() -> None:
    rng = np.random.default_rng(3)
    for number in (1, 2, 3, 20, 21, 137):
        values = np.sort(rng.uniform(0.0, 90.0, number))
        for share in (0.05, 0.5, 0.95):
            assert percentile(values, share) == float(np.percentile(values, 100.0 * share))

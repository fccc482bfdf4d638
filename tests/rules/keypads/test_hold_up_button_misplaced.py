"""KEY105: height, door and bed, and what presses it by chance."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, person, radiator, two_rooms_and_hall
from wardwright.rules.finding import Finding
from wardwright.rules.keypads.hold_up_button_misplaced import hold_up_button_misplaced as rule
from wardwright.rules.registry import findings_of

# 1.5 m by 2 m, its near edge at x = 9.4: 0.76 m from the button on the east wall.
BED = radiator(8.65, 1.0, id="bed", name="bed", kind="bed", heat="none").model_copy(
    update={"size_m": (1.5, 2.0)}
)
FAR = on_wall("far", "hold-up", "east", 1.15, height_m=1.05)


def button(sheet: str = "hold-up", height_m: float = 1.05) -> Any:
    return on_wall("near", sheet, "kitchen-wall", 1.0, side="right", height_m=height_m)


def findings(*devices: Any, **parts: Any) -> tuple[Finding, ...]:
    return findings_of(rule, two_rooms_and_hall(devices=devices, **parts), CATALOGUE)


@pytest.mark.parametrize(
    ("sheet", "height_m", "severity", "best"),
    [
        ("hold-up", 1.5, "must mend", 1.2),
        ("hold-up", 1.3, "check with the standard", 1.2),
        ("hold-up-single", 0.8, "check with the standard", 0.9),
    ],
)
def test_a_height_outside_its_sheet_or_the_custom_is_found(
    sheet: str, height_m: float, severity: str, best: float
) -> None:
    (found,) = findings(button(sheet, height_m))
    assert found.severity == severity
    assert found.mends[0].values == (("height_m", pytest.approx(best)),)


def test_near_neither_it_is_moved_to_the_door() -> None:
    (found,) = findings(FAR)
    assert found.message == "far: it is near neither an entry door nor a bed"
    assert dict(found.mends[0].values)["height_m"] == pytest.approx(1.05)
    assert findings(button()) == ()


def test_a_bed_within_an_arms_length_is_near() -> None:
    assert findings(FAR, fixtures=(BED,)) == ()
    away = BED.model_copy(update={"centre_m": (8.55, 1.0)})
    assert len(findings(FAR, fixtures=(away,))) == 1


def test_a_single_press_by_a_bed_or_with_a_child_is_found() -> None:
    single = on_wall("far", "hold-up-single", "east", 1.15, height_m=1.05)
    (by_bed,) = findings(single, fixtures=(BED,))
    assert by_bed.message == "far: a single press sets it off, by a bed"
    assert by_bed.mends[0].values == (("sheet", "hold-up"),)
    (child,) = findings(button("hold-up-single"), people=(person("Tom", is_child=True),))
    assert child.message.endswith("in reach of Tom")
    assert findings(button("hold-up-single")) == ()


def test_two_faults_that_need_two_cures_get_no_mend() -> None:
    (found,) = findings(button("hold-up-single", 0.5), people=(person("Tom", is_child=True),))
    assert ", and " in found.message
    assert found.mends == ()


def test_without_door_and_bed_its_place_is_not_judged() -> None:
    doors = tuple(one.model_copy(update={"is_entry_door": False}) for one in two_rooms_and_hall().openings)
    (found,) = findings(button(), openings=doors)
    assert (found.severity, found.subject) == ("not run", "near")

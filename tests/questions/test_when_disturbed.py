"""Question 9 on rooms that can be thought through."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, radiator, window
from common.mending import mended
from common.rule_houses.sunlight import ACROSS, FACING_SUNRISE, LONDON, LOW, TALL_SOUTH, WIDE_SOUTH
from wardwright.model.place import Place
from wardwright.model.surroundings import Ground
from wardwright.questions.answer import Answer
from wardwright.questions.when_disturbed import answers, without_mends


def asked(**parts: Any) -> Answer:
    usual: dict[str, Any] = {"devices": (LOW,), "openings": (TALL_SOUTH,), "place": FACING_SUNRISE}
    (only,) = answers(one_room(**(usual | parts)), CATALOGUE)
    return only


def test_nothing_to_ask_about() -> None:
    (only,) = answers(one_room(place=LONDON), CATALOGUE)
    assert only.reason == "not computable: no movement detector or camera inside"


def test_without_a_latitude_the_reason_is_told_and_hot_things_all_the_same() -> None:
    found = asked(place=Place(), fixtures=(radiator(2.5, 3.9),))
    assert (found.verdict, found.reason) == ("unknown", "not computable: no latitude")
    assert any("nearer to it than its sheet wants" in note for note in found.notes)


def test_the_sunrise_in_its_eye_is_bad_and_the_first_mend_takes_it_away() -> None:
    found = asked()
    assert found.verdict == "bad"
    assert found.estimate is not None
    assert found.estimate.low <= found.estimate.value <= found.estimate.high
    assert found.estimate.unit == "min"
    assert found.estimate.drivers[0].name == "where north lies on the plan"
    assert {one.onto for one in found.sunshine} == {"lens", "view"}
    assert {sketch.role for sketch in found.sketches} == {"beam", "sunlit"}
    site = one_room(devices=(LOW,), openings=(TALL_SOUTH,), place=FACING_SUNRISE)
    for mend in found.mends:
        (after,) = answers(mended(site, mend), CATALOGUE)
        assert after.verdict != "bad"


def test_in_hand_there_are_no_mends_and_the_same_number() -> None:
    site = one_room(devices=(LOW,), openings=(TALL_SOUTH,), place=FACING_SUNRISE)
    (quick,) = without_mends(site, CATALOGUE)
    assert quick.mends == ()
    assert quick.estimate == asked().estimate


def test_a_blind_that_is_told_keeps_it_out_but_its_being_left_open_is_told() -> None:
    found = asked(openings=(TALL_SOUTH.model_copy(update={"covering": "blind"}),))
    assert found.estimate is not None
    assert found.estimate.value == 0.0
    assert found.estimate.high > 10.0
    assert found.verdict == "thin"
    assert any("its blind keeps the sun out only when" in note for note in found.notes)
    assert all(one.is_covered for one in found.sunshine)


def test_an_unknown_north_is_said_and_the_worst_is_taken() -> None:
    known, unknown = asked(), asked(place=FACING_SUNRISE.model_copy(update={"north_deg": None}))
    assert known.estimate is not None
    assert unknown.estimate is not None
    assert unknown.estimate.value > 0.5 * known.estimate.value
    assert unknown.estimate.low == 0.0
    assert unknown.notes[0].startswith("north not known: worst of all norths")


def test_hours_without_a_zone_are_said_to_be_the_suns() -> None:
    place = FACING_SUNRISE.model_copy(update={"country": None})
    assert any("mean time" in note for note in asked(place=place).notes)
    assert not any("mean time" in note for note in asked().notes)


def test_floor_in_view_is_lit_from_the_south_and_not_from_the_north() -> None:
    lit = asked(devices=(ACROSS,), openings=(WIDE_SOUTH,), place=LONDON)
    dark = asked(devices=(ACROSS,), openings=(window("n", "north", 2.15),), place=LONDON)
    parts = [{p.name: p.estimate for p in one.parts}["sun on floor in its view"] for one in (lit, dark)]
    assert parts[0] is not None
    assert parts[1] is not None
    assert parts[0].value > 90_000
    assert parts[1].value < 10_000
    assert (lit.verdict, dark.verdict) == ("thin", "good")


def test_headlamps_and_warm_things_are_told() -> None:
    facing = on_wall("living-movement", "fan", "north", 2.65)
    road = Ground(road_m=((2.5, -40.0), (2.5, -5.0)))
    far = radiator(0.2, 1.0)
    found = asked(devices=(facing,), ground=road, fixtures=(far,), openings=(window("s", "south", 2.65),))
    assert found.verdict == "thin"
    assert any(part.name == "headlamps through s on its lens" for part in found.parts)
    assert any("warm things in its view" in note for note in found.notes)
    blank = asked(devices=(facing,), openings=(window("s", "south", 2.65),))
    assert "headlamps were not looked at: no road is drawn" in blank.notes


@pytest.mark.parametrize("is_inside", [True, False])
def test_a_camera_in_a_room_is_asked_about_and_one_outside_is_not(is_inside: bool) -> None:
    side = "left" if is_inside else "right"
    camera = on_wall("eye", "camera", "north", 2.65, height_m=2.0, side=side)
    site = one_room(devices=(camera,), openings=(TALL_SOUTH,), place=FACING_SUNRISE)
    (found,) = answers(site, CATALOGUE)
    if is_inside:
        assert found.verdict == "bad"
        assert {mend.action for mend in found.mends} == {"change-covering"}
    else:
        assert found.verdict == "unknown"

"""Question 3 on a house worked by hand."""

from __future__ import annotations

import math

import pytest

from common.arrival_house import KEYPAD, SLOW, USUAL, arrival_house
from common.houses import opening
from common.turning import quarter_turned
from wardwright.model.estimate import Estimate
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.entry_and_exit_times import EXTRA_S, answers, gifts, walk_on
from wardwright.questions.race_from_opening import answers as races
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.trips import trips

CATALOGUE = load_catalogue()
TAKEN_S = (0.84 + math.hypot(0.6, 2.73)) / 0.64 + 14.0


def only(site: Site) -> Answer:
    (found,) = answers(site, CATALOGUE)
    return found


def part(answer: Answer, name: str) -> Estimate:
    found = next(one.estimate for one in answer.parts if one.name == name)
    assert found is not None
    return found


def test_the_entry_time_of_the_slowest_with_its_spare() -> None:
    answer = only(arrival_house(kitchen_door="shut"))
    assert (answer.question, answer.subject_id) == (3, "front-door")
    assert answer.measure == "entry time needed by the slowest, with 30 % spare"
    assert answer.estimate is not None
    assert answer.estimate.value == pytest.approx(1.3 * TAKEN_S)
    assert part(answer, "grandmother coming in").value == pytest.approx(TAKEN_S)
    assert part(answer, "father coming in").value < TAKEN_S
    assert part(answer, "grandmother leaving").value == pytest.approx(TAKEN_S - 14.0 + 8.0)
    assert part(answer, "entry time programmed").value == 30.0


def test_leaving_decides_where_it_is_what_is_short() -> None:
    times = Programme(entry_time_s=45.0, exit_time_s=10.0)
    answer = only(arrival_house(programme=times))
    assert answer.measure.startswith("exit time needed")
    assert answer.verdict == "bad"


def test_without_keypad_or_entry_door_it_is_not_computable_and_doors_are_named() -> None:
    bare = only(arrival_house(devices=(), zones=()))
    assert (bare.verdict, bare.reason) == ("unknown", "not computable: no keypad")
    site = arrival_house()
    none = tuple(one.model_copy(update={"is_entry_door": False}) for one in site.openings)
    answer = only(site.model_copy(update={"openings": none}))
    assert answer.reason is not None
    assert "entry door" in answer.reason
    assert any("front door is no entry door" in note for note in answer.notes)
    nothing = only(arrival_house(spaces=()))
    assert nothing.reason == "not computable: none of the spaces is ours"


def test_other_doors_that_people_could_use_are_named() -> None:
    site = arrival_house()
    back = opening("back-door", "west", 5.0)
    answer = only(site.model_copy(update={"openings": (*site.openings, back)}))
    assert "back door is no entry door: whoever comes home that way gives the alarm" in answer.notes


def test_each_entry_door_is_answered_by_itself() -> None:
    site = arrival_house()
    back = opening("back-door", "west", 5.0, is_entry_door=True)
    found = answers(site.model_copy(update={"openings": (*site.openings, back)}), CATALOGUE)
    assert [one.subject_id for one in found] == ["back-door", "front-door"]
    values = [one.estimate.value for one in found if one.estimate]
    assert values[0] > values[1]  # it is farther to the keypad


def test_a_keypad_that_is_not_reached_is_said() -> None:
    site = arrival_house()
    walled = tuple(one for one in site.openings if one.id != "kitchen-door")
    away = KEYPAD.model_copy(update={"mount": KEYPAD.mount.model_copy(update={"side": "left"})})
    devices = tuple(away if one.id == "keypad" else one for one in site.devices)
    answer = only(site.model_copy(update={"openings": walled, "devices": devices}))
    assert answer.reason == "not computable: no way on foot from front door to keypad"


def test_each_extra_5_s_is_what_the_race_of_question_1_loses() -> None:
    site = arrival_house(kitchen_door="shut", without=("hall-movement", "study-movement", "kitchen-movement"))
    door = site.opening("front-door")
    found = {one.name: one.estimate for one in gifts(site, CATALOGUE, door)}
    now = found.pop("time in hand if this door is forced")
    race = next(one.estimate for one in races(site, CATALOGUE) if one.subject_id == "front-door")
    assert now is not None
    assert race is not None
    assert now.value == pytest.approx(race.value)
    # Nothing but the entry time's end gives the alarm: every second more is a second lost.
    assert len(found) == len(EXTRA_S)
    for extra in EXTRA_S:
        words = f"moved by {abs(extra):g} s {'more' if extra > 0 else 'less'} entry time"
        moved = found[words]
        assert moved is not None
        assert moved.value == pytest.approx(-extra)
        programme = site.programme.model_copy(update={"entry_time_s": 30.0 + extra})
        again = site.model_copy(update={"programme": programme})
        other = next(one.estimate for one in races(again, CATALOGUE) if one.subject_id == "front-door")
        assert other is not None
        assert other.value - race.value == pytest.approx(moved.value)


def test_an_instant_detector_before_the_unit_makes_the_entry_time_harmless() -> None:
    site = arrival_house(kitchen_door="shut")  # the unit is in the study, behind its detector
    found = {one.name: one.estimate for one in gifts(site, CATALOGUE, site.opening("front-door"))}
    moved = found["moved by 15 s more entry time"]
    assert moved is not None
    assert moved.value == pytest.approx(0.0)


def test_no_control_unit_and_an_entry_time_too_short_to_shorten() -> None:
    site = arrival_house(without=("unit",))
    (one,) = gifts(site, CATALOGUE, site.opening("front-door"))
    assert one.reason == "no control unit"
    short = arrival_house(programme=Programme(entry_time_s=5.0))
    names = [one.name for one in gifts(short, CATALOGUE, short.opening("front-door"))]
    assert not any("less" in name for name in names)


def test_what_is_drawn_is_the_walk_and_the_keypad() -> None:
    answer = only(arrival_house())
    assert [sketch.role for sketch in answer.sketches] == ["walk", "goal"]
    (trip,) = trips(arrival_house(), CATALOGUE)
    (walk,) = walk_on(trip)
    assert walk.points[0] == pytest.approx((5.1, 0.27))
    assert walk.points[-1] == pytest.approx((4.5, 3.0))


def test_limits_of_the_place_are_told_with_their_source() -> None:
    answer = only(arrival_house(programme=Programme(entry_time_s=60.0)))
    assert any("longer than the limit of 45 s (EN 50131 1, 2006" in note for note in answer.notes)


def test_nobody_told_is_somebody_slow() -> None:
    answer = only(arrival_house(people=()))
    assert answer.estimate is not None
    assert answer.estimate.value == pytest.approx(1.3 * TAKEN_S)
    assert "who lives there is not told: somebody slow is reckoned with" in answer.notes


def test_a_quarter_turn_and_another_order_change_nothing() -> None:
    site = arrival_house(people=(SLOW, USUAL))
    names = ("walls", "openings", "devices", "people", "spaces", "zones")
    other = site.model_copy(update={name: tuple(reversed(getattr(site, name))) for name in names})
    one = only(site)
    assert only(other) == one
    turned = only(quarter_turned(site))
    assert turned.notes == one.notes
    for a, b in zip(one.parts, turned.parts, strict=True):
        assert a.estimate is not None
        assert b.estimate is not None
        assert b.estimate.value == pytest.approx(a.estimate.value, abs=1e-9)

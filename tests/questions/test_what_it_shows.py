"""Question 19: density and task words at the door, beyond the boundary, private rooms, the drawing."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE as KIT
from common.houses import on_wall, one_room
from common.rule_houses.cameras import AHEAD, BEDROOM, DOOR, FAR_DOOR, INSIDE, OUT, PLOT, WIDE_PLOT
from common.turning import quarter_turned
from wardwright.model.surroundings import Ground
from wardwright.questions.answer import Answer
from wardwright.questions.what_it_shows import answers, without_mends
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SITE = one_room(devices=(AHEAD,), openings=(FAR_DOOR,), ground=Ground(boundary_m=WIDE_PLOT))


def only(found: tuple[Answer, ...]) -> Answer:
    (answer,) = found
    return answer


def test_without_a_camera() -> None:
    assert only(answers(one_room(), KIT)).reason == "not computable: no camera"


def test_the_door_decides_and_both_editions_are_named() -> None:
    answer = only(answers(SITE, KIT))
    assert answer.measure == "density of the picture at front door"
    assert answer.estimate is not None
    assert answer.estimate.low == pytest.approx(answer.estimate.value / 2)
    assert (
        "at front door: identify by the edition of 2014, characterise by the edition of 2025" in answer.notes
    )
    assert answer.verdict == "thin"
    assert any(note.startswith("a mask over the upper part") for note in answer.notes) == any(
        mend.action == "other" for mend in answer.mends
    )


def test_each_mend_is_no_worse_at_the_door_and_sees_less_or_shows_more() -> None:
    answer = only(answers(SITE, KIT))
    gains = [mend.gain.value for mend in answer.mends if mend.gain is not None]
    assert gains
    assert all(gain >= 125.0 for gain in gains)


def test_without_a_boundary_that_is_said() -> None:
    answer = only(answers(one_room(devices=(AHEAD,), openings=(FAR_DOOR,)), KIT))
    assert "how much it sees beyond the boundary is not computable: no boundary is drawn" in answer.notes
    assert answer.verdict == "thin"


def test_a_camera_that_shows_no_door() -> None:
    away = OUT.model_copy(update={"heading_deg": -170.0})
    answer = only(answers(one_room(devices=(away,), openings=(DOOR,), ground=Ground(boundary_m=PLOT)), KIT))
    assert (answer.verdict, answer.estimate) == ("bad", None)
    assert [part.reason for part in answer.parts if part.reason] == ["not in the picture"]


def test_a_private_room() -> None:
    answer = only(answers(one_room(devices=(INSIDE,), spaces=BEDROOM), KIT))
    assert answer.verdict == "bad"
    assert answer.mends[0].values == (("is_covered_when_home", True),)


def test_drawn_as_words_at_points_and_one_line() -> None:
    answer = only(answers(SITE, KIT))
    roles = [sketch.role for sketch in answer.sketches]
    assert roles.count("task-line") == 1
    assert set(roles) == {"task", "task-line"}
    assert all(not sketch.rings for sketch in answer.sketches)
    assert [sketch.label for sketch in answer.sketches if sketch.role == "task"] == ["identify"]


def test_its_lamp_is_said() -> None:
    site = one_room(devices=(on_wall("in", "camera-inside", "south", 2.0),))
    assert "at night its own lamp carries 7 m" in only(answers(site, load_catalogue())).notes


def test_a_quarter_turn_changes_nothing() -> None:
    site, catalogue = read_sample("bungalow"), load_catalogue()
    for one, two in zip(answers(site, catalogue), answers(quarter_turned(site), catalogue), strict=True):
        assert (one.verdict, one.notes) == (two.verdict, two.notes)
        for part, other in zip(one.parts, two.parts, strict=True):
            assert (part.estimate is None) == (other.estimate is None)
            if part.estimate is not None and other.estimate is not None:
                assert other.estimate.value == pytest.approx(part.estimate.value)


def test_in_hand_says_the_same_but_for_mends() -> None:
    whole, quick = only(answers(SITE, KIT)), only(without_mends(SITE, KIT))
    assert quick == whole.model_copy(update={"mends": ()})

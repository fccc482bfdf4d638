"""Question 14: which upper windows and roofs can be reached, and how."""

from __future__ import annotations

from typing import Any

import pytest

from common.climb_house import box, house
from common.houses import CATALOGUE, one_room, window
from common.turning import quarter_turned
from wardwright.model.device import Device, OpeningMount
from wardwright.model.programme import Zone
from wardwright.model.surroundings import Ground
from wardwright.questions.answer import Answer
from wardwright.questions.reach_from_outside import NONE_HIGH, answers, without_mends
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names
from wardwright.trials.ways_in import ways_in

ROOF = box("roof", 5.9, 2.0, 2.3)


def about(site: Any, subject: str = "window") -> Answer:
    return next(one for one in answers(site, CATALOGUE) if one.subject_id == subject)


def test_without_an_opening_to_the_outside() -> None:
    (answer,) = answers(one_room(), CATALOGUE)
    assert answer.reason == "not computable: no opening to the outside is drawn"


def test_without_an_upper_opening() -> None:
    (answer,) = answers(one_room(openings=(window("low", "south", 2.0),)), CATALOGUE)
    assert (answer.verdict, answer.notes) == ("good", (NONE_HIGH,))
    assert answer.estimate is not None
    assert answer.estimate.value < 0.0


def test_out_of_reach_by_so_much() -> None:
    answer = about(house())
    assert answer.estimate is not None
    assert answer.estimate.value == pytest.approx(1.35)
    assert (answer.verdict, answer.mends) == ("good", ())
    assert answer.parts[0].reason == "it is not made, as it is drawn"


def test_a_bare_house_says_that_nobody_has_looked_outside() -> None:
    answer = about(house(ground=Ground()))
    assert answer.verdict == "thin"
    assert any(note.startswith("nobody has said what stands outside") for note in answer.notes)


def test_reached_by_a_roof_with_its_time() -> None:
    """Two holds of 3 s, and 3.75 m up at 0.4 m/s: 15.4 s."""
    answer = about(house(ROOF))
    assert answer.verdict == "bad"
    time = answer.parts[0].estimate
    assert time is not None
    assert time.value == pytest.approx(2 * 3.0 + 3.75 / 0.4)
    assert time.low < time.value < time.high
    assert [part.name for part in answer.parts[1:]] == ["up to roof", "up to window"]
    assert "reached from the ground: roof, 2.3 m up; window, 1.5 m up" in answer.notes[0]


def test_noticed_at_the_opening() -> None:
    pane = house(ROOF).openings[0].model_copy(update={"glazing": None})
    contact = Device(id="c", name="c", sheet="contact", mount=OpeningMount(opening="window"))
    zone = Zone(id="z", number=1, name="z", devices=("c",), behaviour="instant")
    answer = about(house(ROOF, openings=(pane,), devices=(contact,), zones=(zone,)))
    assert answer.verdict == "good"
    assert any(note.startswith("whoever gets there is noticed") for note in answer.notes)
    logged = zone.model_copy(update={"behaviour": "log-only"})
    assert about(house(ROOF, openings=(pane,), devices=(contact,), zones=(logged,))).verdict == "bad"


def test_what_nobody_has_said_is_named() -> None:
    said = "nobody has said whether these can be climbed: roof"
    assert said in about(house(ROOF)).notes
    told = ROOF.model_copy(update={"can_be_climbed": True})
    assert said not in about(house(told)).notes


@pytest.mark.parametrize("name", sample_names())
def test_ways_in_and_the_answers_agree(name: str) -> None:
    """What is reached in the likely case is a way in, and what is not is none: one reckoning."""
    site, catalogue = read_sample(name), load_catalogue()
    ways, not_counted = ways_in(site, catalogue)
    for answer in answers(site, catalogue):
        if answer.subject_id in ("roofs", "site"):
            continue
        reached = answer.estimate.value <= 0.0
        assert reached == (answer.subject_id in {way.opening.id for way in ways})
        assert reached != (answer.subject_id in {one.opening.id for one in not_counted})


def test_in_hand_says_the_same_but_for_mends() -> None:
    site = read_sample("terrace")
    catalogue = load_catalogue()
    whole = answers(site, catalogue)
    assert without_mends(site, catalogue) == tuple(one.model_copy(update={"mends": ()}) for one in whole)


def test_a_quarter_turn_and_the_order_of_things_change_nothing() -> None:
    things = (ROOF, box("bin", 7.0, 2.0, 1.1, kind="bin"))
    one = about(house(*things))
    for two in (about(house(*reversed(things))), about(quarter_turned(house(*things)))):
        assert (two.verdict, two.notes[0], len(two.mends)) == (one.verdict, one.notes[0], len(one.mends))
        assert one.estimate is not None
        assert two.estimate is not None
        assert two.estimate.value == pytest.approx(one.estimate.value)

"""Question 17: which detectors can stay with the pets in."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, pet
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from common.turning import quarter_turned
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.pets_in import NOT_ACTIVE, answers
from wardwright.rules.movement.animal_can_climb_into_view import animal_can_climb_into_view
from wardwright.rules.movement.animal_heavier_than_its_detector_passes import (
    animal_heavier_than_its_detector_passes,
)
from wardwright.rules.registry import findings_of
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names


def house(**parts: Any) -> Site:
    usual: dict[str, Any] = {"devices": (PASSING_PETS,), "fixtures": (SIDEBOARD,), "pets": (pet("cat"),)}
    return one_room(**(usual | parts))


def only(site: Site) -> Answer:
    (answer,) = answers(site, CATALOGUE)
    return answer


def zone(behaviour: str) -> Zone:
    return Zone(id="z", number=1, name="z", devices=(PASSING_PETS.id,), behaviour=behaviour)


@pytest.mark.parametrize(
    ("parts", "reason"),
    [({"devices": ()}, "no movement detector"), ({"pets": ()}, "no pets told")],
)
def test_where_it_is_not_computable(parts: dict[str, Any], reason: str) -> None:
    answer = only(house(**parts))
    assert (answer.reason, answer.verdict) == (f"not computable: {reason}", "unknown")


def test_the_room_that_is_left_on_the_sideboard_decides() -> None:
    answer = only(house())
    assert answer.verdict == "bad"
    assert answer.measure == "room between the animal and the lowest zone above it: cat on sideboard"
    assert answer.estimate is not None
    assert answer.estimate.value == pytest.approx(-0.173, abs=0.001)
    names = [part.name for part in answer.parts]
    assert names[1:] == ["cat: walks until it trips it", "cat: jump that gets it onto sideboard"]
    assert "cat weighs 4.5 kg; the sheet passes up to 18 kg" in answer.notes
    assert "cat reaches its zones from sideboard (1.4 m up)" in answer.notes


def test_several_animals_each_have_their_numbers_and_the_worst_decides() -> None:
    answer = only(house(pets=(pet("rabbit"), pet("cat"))))
    assert answer.measure.endswith("cat on sideboard")
    assert {part.name.split(":")[0] for part in answer.parts} == {"cat", "rabbit"}


def test_a_detector_that_only_writes_to_the_log_can_stay() -> None:
    answer = only(house(zones=(zone("log-only"),)))
    assert (answer.verdict, answer.estimate, answer.reason) == ("good", None, NOT_ACTIVE)


def test_a_detector_in_no_zone_is_taken_as_active() -> None:
    said = "it is in no zone yet: taken as active while the pets are in"
    assert said in only(house()).notes
    assert said not in only(house(zones=(zone("instant"),))).notes


def test_it_agrees_with_the_rules() -> None:
    """What MOV107 finds is bad here, at the same place and by the same figures; and where it is silent, not bad."""
    (found,) = findings_of(animal_can_climb_into_view, house(), CATALOGUE)
    answer = only(house())
    assert found.estimate is not None
    assert found.limit is not None
    assert answer.estimate is not None
    assert answer.estimate.value == pytest.approx(found.limit - found.estimate.value)
    low = house(fixtures=())
    assert findings_of(animal_can_climb_into_view, low, CATALOGUE) == ()
    assert only(low).verdict == "good"


@pytest.mark.parametrize("name", sample_names())
def test_no_sample_has_a_good_answer_that_a_rule_speaks_against(name: str) -> None:
    site, catalogue = read_sample(name), load_catalogue()
    told = {
        one.subject
        for rule in (animal_can_climb_into_view, animal_heavier_than_its_detector_passes)
        for one in findings_of(rule, site, catalogue)
    }
    good = {one.subject_id for one in answers(site, catalogue) if one.verdict == "good"}
    assert not told & good


def test_a_quarter_turn_and_the_order_of_things_change_nothing() -> None:
    other = SIDEBOARD.model_copy(update={"id": "other", "centre_m": (1.0, 1.0), "height_m": 0.5})
    one = only(house(fixtures=(SIDEBOARD, other)))
    for two in (
        only(house(fixtures=(other, SIDEBOARD))),
        only(quarter_turned(house(fixtures=(SIDEBOARD, other)))),
    ):
        assert (two.verdict, two.notes) == (one.verdict, one.notes)
        assert one.estimate is not None
        assert two.estimate is not None
        assert two.estimate.value == pytest.approx(one.estimate.value)


def test_a_detector_that_passes_none() -> None:
    site = house(devices=(on_wall("fan", "fan", "west", 2.0),), fixtures=())
    answer = only(site)
    assert answer.verdict == "bad"
    assert "cat weighs 4.5 kg; the sheet names no animal that it passes" in answer.notes
    assert "cat reaches its zones from the floor" in answer.notes

from __future__ import annotations

from wardwright.documents.content.proving_list import NO_TEST, proving_list
from wardwright.documents.content.quantities import sentence, value_words
from wardwright.questions.answer import Answer
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SITE, CATALOGUE = read_sample("bungalow"), load_catalogue()
ANSWERS = ask(SITE, CATALOGUE, (11,))
(GROUND,) = proving_list(SITE, CATALOGUE, ANSWERS)
LINES = {line.device: line for line in GROUND.devices}


def seen(device: str) -> Answer:
    return next(one for one in ANSWERS if one.subject_id == device)


def test_a_movement_detector_is_walked_where_it_is_taken_to_see() -> None:
    line = LINES["corridor-movement"]
    surely = next(part for part in seen("corridor-movement").parts if part.name == "surely noticed on")
    assert surely.estimate is not None
    assert any(value_words(surely.estimate) in one and "walk its edge" in one for one in line.facts)
    assert any(one.startswith("Sees into Utility room") for one in line.facts)
    assert (
        "It sleeps for 180 s after a signal: stay out of its sight that long before each walk." in line.facts
    )
    assert line.answer == "11/corridor-movement"


def test_a_contact_is_opened_and_shut_hard_and_shows_its_zone() -> None:
    line = LINES["side-contact"]
    assert line.facts[0] == "Shows as zone 2, Side door."
    assert "before the gap is 15 mm" in line.facts[1]
    assert line.answer == ""


def test_what_has_no_test_worked_out_says_so() -> None:
    assert LINES["corridor-smoke"].facts[1:] == (sentence(NO_TEST),)
    assert LINES["front-keypad"].facts[0].startswith("In no zone")
    without = proving_list(SITE, CATALOGUE, ())[0]
    assert (
        sentence(NO_TEST) in next(one for one in without.devices if one.device == "corridor-movement").facts
    )


def test_they_stand_by_zone_and_devices_in_none_come_last() -> None:
    numbers = [
        int(one.facts[0].split()[3].strip(",")) for one in GROUND.devices if one.facts[0].startswith("Shows")
    ]
    assert numbers == sorted(numbers)
    assert [one.facts[0].startswith("Shows") for one in GROUND.devices] == sorted(
        (one.facts[0].startswith("Shows") for one in GROUND.devices), reverse=True
    )

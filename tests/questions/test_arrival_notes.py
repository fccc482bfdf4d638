"""Coming in and leaving in short sentences."""

from __future__ import annotations

from common.arrival_house import SLOW, arrival_house
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.questions.arrival_notes import arrival_notes
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.trips import trips

CATALOGUE = load_catalogue()


def notes(site: Site) -> tuple[str, ...]:
    (trip,) = trips(site, CATALOGUE)
    return arrival_notes(site, CATALOGUE, trip, slowest=SLOW)


def test_an_ordinary_day_a_forgotten_code_and_wrong_turns() -> None:
    found = notes(arrival_house(kitchen_door="shut"))
    assert found[0] == "coming in: front contact starts the entry time, unset after 20 s"
    assert found[1] == (
        "a forgotten code: the alarm after 30 s by front contact, its message may leave after 40 s"
    )
    assert found[2].startswith("a wrong turn is an alarm in Kitchen after ")
    assert "(kitchen movement)" in found[2]
    assert len(found) == 3


def test_what_breaks_it_is_said_with_device_and_second() -> None:
    found = notes(arrival_house(kitchen_door="open"))
    assert found[0].startswith("coming in: kitchen movement gives the alarm after ")
    assert found[1] == "leaving: kept from setting by kitchen movement after 0 s"


def test_a_door_that_is_too_slow_to_shut() -> None:
    found = notes(arrival_house(kitchen_door="shut", programme=Programme(exit_time_s=10.0)))
    assert "leaving: door open too long by front contact after 10 s" in found


def test_a_turn_that_nothing_notices_is_said_too() -> None:
    found = notes(arrival_house(kitchen_door="shut", without=("kitchen-movement",)))
    assert any(note == "a wrong turn gives no alarm in Kitchen" for note in found)


def test_without_zones_nothing_would_happen_and_nothing_is_said() -> None:
    assert notes(arrival_house(zones=())) == ()

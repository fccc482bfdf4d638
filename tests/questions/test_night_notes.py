"""What goes with a trip from bed."""

from __future__ import annotations

from common.night_house import night_house
from wardwright.model.site import Site
from wardwright.questions.night_notes import night_notes, night_parts, night_sketches
from wardwright.questions.night_numbers import NightCase
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.night_rings import ring_on
from wardwright.trials.night_trips import night_trips

CATALOGUE = load_catalogue()


def case_of(site: Site, goal: str) -> NightCase:
    trip = next(one for one in night_trips(site, CATALOGUE) if one.goal == goal)
    assert trip.ends is not None
    return NightCase(trip, trip.ends, ring_on(site, CATALOGUE, trip), "night")


def test_the_device_its_behaviour_and_the_room() -> None:
    site = night_house()
    (note,) = night_notes(site, CATALOGUE, case_of(site, "kitchen"))
    assert note.startswith("hall movement (instant) notices in ")
    waits = night_house({"hall-movement": "entry-exit"})
    assert "it starts the entry time of 20 s, and nobody unsets the alarm" in night_notes(
        waits, CATALOGUE, case_of(waits, "kitchen")
    )
    at_times = case_of(site, "kitchen")._replace(leaves="most")
    assert night_notes(site, CATALOGUE, at_times)[-1].startswith(
        "only with a leaf standing as it does at times"
    )


def test_in_the_morning_it_is_told_where_it_is_unset() -> None:
    site = night_house({"front-contact": "entry-exit"})
    case = case_of(site, "out")
    assert any("by way of keypad" in note for note in night_notes(site, CATALOGUE, case))
    (part,) = night_parts(site, CATALOGUE, case)
    assert part.name == "unset at keypad after"
    assert night_parts(site, CATALOGUE, case_of(site, "kitchen")) == ()


def test_the_floor_the_walk_the_device_and_the_spot_are_drawn() -> None:
    site = night_house()
    found = night_sketches(site, CATALOGUE, case_of(site, "kitchen"))
    assert [one.role for one in found] == ["trip", "walk", "trip-seen", "fault", "notice"]
    assert found[4].label == "Ann here"
    quiet = night_house({"front-contact": "instant"})
    assert [one.role for one in night_sketches(quiet, CATALOGUE, case_of(quiet, "kitchen"))] == [
        "trip",
        "walk",
    ]


def test_only_a_leaf_between_is_said() -> None:
    site = night_house({"kitchen-movement": "instant"})
    case = case_of(site, "out")
    assert case.ring is None
    assert not any("only a leaf" in note for note in night_notes(site, CATALOGUE, case))

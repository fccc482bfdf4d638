"""The answer of question 4 about the site as a whole."""

from __future__ import annotations

from common.arrival_house import arrival_house
from common.houses import on_opening, zone
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.zone_behaviours import answers
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def whole(site: Site) -> Answer:
    return next(one for one in answers(site, CATALOGUE) if one.subject_id == "site")


def test_devices_that_differ_are_counted_surely_and_perhaps() -> None:
    site = arrival_house(kitchen_door="open", roles={"front-contact": "instant"})
    answer = whole(site)
    # The contact and the kitchen detector differ; the study's hangs on a door that nobody has spoken of.
    assert answer.estimate is not None
    assert (answer.estimate.value, answer.estimate.low, answer.estimate.high) == (2.0, 2.0, 3.0)
    assert answer.verdict == "bad"


def test_an_arrival_that_rings_and_a_leaving_that_is_kept_from_setting_are_named() -> None:
    notes = " ".join(whole(arrival_house(kitchen_door="open", without=("study-movement",))).notes)
    assert "an ordinary arrival by front door may be an alarm of kitchen movement" in notes
    assert "kitchen movement may keep the alarm from being set by whoever leaves by front door" in notes


def test_an_entry_door_without_a_contact_is_named() -> None:
    answer = whole(arrival_house(kitchen_door="shut", without=("front-contact", "study-movement")))
    assert answer.verdict == "bad"
    assert "nothing starts the entry time at front door: no contact on it is entry/exit" in answer.notes


def test_windows_open_when_setting() -> None:
    contact = on_opening("kitchen-contact", "kitchen-window", "contact-radio")
    site = arrival_house(also=(contact,))
    site = site.model_copy(update={"zones": (*site.zones, zone(50, "window", "kitchen-contact"))})
    assert "with kitchen window open setting is refused" in whole(site).notes
    times = Programme(if_open_when_setting="inhibit")
    out = whole(site.model_copy(update={"programme": times}))
    (note,) = [one for one in out.notes if one.startswith("with kitchen window open")]
    assert "kitchen contact is left out: kitchen movement still surely watches" in note
    ajar = tuple(
        one.model_copy(update={"habit": "ajar"}) if one.id == "kitchen-window" else one
        for one in site.openings
    )
    (always,) = [
        one
        for one in whole(site.model_copy(update={"openings": ajar})).notes
        if one.startswith("with kitchen window")
    ]
    assert (
        always == "with kitchen window open, as it usually is (ajar), setting is refused: it can never be set"
    )


def test_what_follows_tamper_hold_up_fire_and_water_is_told() -> None:
    notes = whole(arrival_house()).notes
    for signal in ("tamper", "hold-up", "fire", "water"):
        assert any(note.startswith(f"{signal}: ") for note in notes)

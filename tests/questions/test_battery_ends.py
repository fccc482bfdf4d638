"""Question 15: lives, what moves them, visits."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from common.houses import on_wall, one_room, person
from common.turning import quarter_turned
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.battery_ends import answers
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.cell_lives import Margin

CATALOGUE = load_catalogue()
HALL = on_wall("hall", "movement-12m", "south", 2.0)


def of(name: str, found: tuple[Answer, ...]) -> Answer:
    return next(answer for answer in found if answer.subject_id == name)


def house(*devices: Device, **parts: object) -> Site:
    return one_room(devices=devices, **parts)


def test_a_bare_house_has_no_battery() -> None:
    (only,) = answers(one_room(), CATALOGUE)
    assert (only.verdict, only.reason) == ("unknown", "not computable: no device")


def test_a_house_on_mains_has_no_battery() -> None:
    (only,) = answers(house(on_wall("cam", "camera-inside", "south", 2.0)), CATALOGUE)
    assert only.reason == "not computable: no device has a battery"


def test_without_people_a_default_counts_and_is_said() -> None:
    """60 activations and 80 check-ins a day, each sent 1.3 times, at 18 degrees: by hand 8.6 years."""
    answer = of("hall", answers(house(HALL), CATALOGUE))
    assert answer.estimate is not None
    drawn = 11e-6 + 25e-3 * 55e-3 * 140 * 1.3 / 86_400
    by_hand = 1.5 * 0.85 * 0.99 / (drawn * 8760 + 1.5 * 0.0125)
    assert answer.estimate.value == pytest.approx(by_hand)
    assert answer.estimate.low < answer.estimate.value < answer.estimate.high
    assert "how often it sends is a default: nobody is known who would pass it" in answer.notes


def test_people_who_stay_in_the_room_shorten_it() -> None:
    empty = of("hall", answers(house(HALL), CATALOGUE)).parts
    lived_in = of("hall", answers(house(HALL, people=(person("Ann", bed="living"),)), CATALOGUE)).parts
    values = {part.name: part.estimate.value for part in lived_in if part.estimate}
    assert values["messages a day besides"] >= 80.0
    assert {part.name: part.estimate.value for part in empty if part.estimate}[
        "messages a day besides"
    ] == 60.0


def test_its_date_tells_when() -> None:
    dated = HALL.model_copy(update={"cells_since": date(2026, 1, 15)})
    notes = of("hall", answers(house(dated), CATALOGUE)).notes
    assert any(note.startswith("by its date from 203") for note in notes)


def test_a_sheet_that_is_silent_is_not_guessed() -> None:
    rows = tuple(one.model_copy(update={"cells": None}) for one in CATALOGUE.sheets)
    silent = CATALOGUE.model_copy(update={"sheets": rows})
    answer = of("hall", answers(house(HALL), silent))
    assert answer.estimate is None
    assert answer.reason == "not computable: its sheet does not say what it draws from which cells"


def test_a_control_unit_ends_by_its_age() -> None:
    answer = of("unit", answers(house(on_wall("unit", "control-unit-radio", "south", 2.0)), CATALOGUE))
    assert answer.estimate is not None
    assert (answer.estimate.low, answer.estimate.value, answer.estimate.high) == (3.0, 4.0, 5.0)


def thirsty(site: Site) -> tuple[Answer, ...]:
    """Every device draws forty times what its sheet says."""
    rows = tuple(
        row.model_copy(update={"value": 40.0, "low": 30.0, "high": 50.0})
        if row.id == "current-share"
        else row
        for row in CATALOGUE.figures
    )
    return answers(site, CATALOGUE.model_copy(update={"figures": rows}))


def test_a_battery_that_ends_before_the_next_service_has_mends() -> None:
    keypad = on_wall("keypad", "keypad-radio", "south", 2.0, height_m=1.4)
    answer = of("keypad", thirsty(house(keypad)))
    assert answer.verdict == "bad"
    assert {dict(mend.values).get("cell") for mend in answer.mends} >= {"lithium-fr6"}
    assert answer.mends[0].gain is not None
    assert answer.estimate is not None
    assert answer.mends[0].gain.value > answer.estimate.value


def test_a_longer_check_in_stays_within_grade_and_programme() -> None:
    site = house(HALL)
    site = site.model_copy(update={"programme": site.programme.model_copy(update={"check_in_min": 40.0})})
    (mend,) = of("hall", thirsty(site)).mends
    assert mend.values == (("check_in_min", 40.0),)


def test_visits_are_planned_within_each_ones_low_end() -> None:
    found = answers(read_sample("terrace"), CATALOGUE)
    visits = of("site", found)
    assert visits.estimate is not None
    lows = [one.estimate.low for one in found if one.subject_id != "site" and one.estimate is not None]
    assert visits.estimate.value <= min(lows)
    assert any(note.startswith("after 3 years: ") for note in visits.notes)


def test_margins_of_the_radio_engine_are_taken_in() -> None:
    unit = on_wall("unit", "control-unit-radio", "north", 2.0, height_m=1.5)
    site = house(HALL, unit)
    near, default = of("hall", answers(site, CATALOGUE)), of("hall", answers(site, CATALOGUE, {}))
    assert near.estimate is not None
    assert default.estimate is not None
    # In one room each message is heard the first time; by default it is sent 1.3 times.
    assert near.estimate.value > default.estimate.value


@given(st.floats(-20.0, 30.0), st.floats(0.0, 30.0))
@settings(deadline=None)
def test_raising_every_links_margin_never_shortens_a_life(margin: float, better: float) -> None:
    site = house(HALL, on_wall("keypad", "keypad-radio", "north", 2.0, height_m=1.4))

    def lives(value: float) -> dict[str, float]:
        margins = {device.id: Margin(value, value - 6.0, value + 6.0) for device in site.devices}
        found = answers(site, CATALOGUE, margins)
        return {one.subject_id: one.estimate.value for one in found if one.estimate is not None}

    before, after = lives(margin), lives(margin + better)
    assert all(after[name] >= before[name] for name in before)


def test_a_quarter_turn_changes_nothing() -> None:
    site = read_sample("terrace")
    one, two = answers(site, CATALOGUE), answers(quarter_turned(site), CATALOGUE)
    assert [(a.subject_id, a.estimate, a.verdict) for a in one] == [
        (a.subject_id, a.estimate, a.verdict) for a in two
    ]

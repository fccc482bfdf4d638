from __future__ import annotations

from collections.abc import Callable
from datetime import date

import pytest

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.battery_days import lives
from wardwright.documents.content.forms.dates import battery_table, dates_paper, events_of
from wardwright.model.lifetimes import after_years
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
SINCE = date(2024, 5, 2)


@pytest.fixture(scope="module")
def answers() -> tuple[Answer, ...]:
    return ask(fitted(), CATALOGUE)


def dated(site: Site) -> Site:
    devices = tuple(
        one.model_copy(update={"cells_since": SINCE}) if one.id == "hall-keypad" else one
        for one in site.devices
    )
    return site.model_copy(update={"devices": devices})


def test_the_plan_reads_as_it_did(answers: tuple[Answer, ...], kept: Callable[[str, str], None]) -> None:
    kept("dates.txt", as_text(dates_paper(fitted(), CATALOGUE, answers, drawn_up=DAY)))


def test_no_battery_is_planned_beyond_the_low_end_of_its_life(answers: tuple[Answer, ...]) -> None:
    site = fitted()
    found = events_of(site, CATALOGUE, answers, drawn_up=DAY, is_open=False)
    for name, life in lives(site, answers).items():
        changed = [one.on for one in found if site.device(name).name in one.words]
        days = [DAY, *changed]
        assert all(
            later <= after_years(earlier, life.low) for earlier, later in zip(days, changed, strict=False)
        ), name
        assert changed


def test_known_cells_count_from_their_own_day(answers: tuple[Answer, ...]) -> None:
    site = dated(fitted())
    life = lives(site, answers)["hall-keypad"]
    found = events_of(site, CATALOGUE, answers, drawn_up=DAY, is_open=False)
    (own,) = [one for one in found if one.title.endswith("Ground hall keypad")]
    assert own.on == after_years(SINCE, life.low)
    assert not [one for one in found if "Ground hall keypad" in one.words]
    rows = {row[0]: row for row in battery_table(site, answers, drawn_up=DAY).rows}
    assert rows["Ground hall keypad"][-2:] == (SINCE, own.on)


def test_without_answers_no_battery_has_a_day() -> None:
    found = events_of(fitted(), CATALOGUE, (), drawn_up=DAY, is_open=False)
    assert not [one for one in found if "batter" in one.title]
    assert next(one for one in found if one.title == "Alarm: service").every_years == 1


def test_what_is_withheld_has_its_kind_for_a_name_in_the_open_calendar(answers: tuple[Answer, ...]) -> None:
    told = str(events_of(fitted(), CATALOGUE, answers, drawn_up=DAY, is_open=True))
    assert "landing control unit" not in told
    assert "control unit: its security updates end" in told

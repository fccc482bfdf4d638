"""Days by which batteries are changed."""

from __future__ import annotations

from datetime import date

import pytest

from common.fitted import DAY, fitted
from wardwright.documents.content.battery_days import battery_days, lives
from wardwright.model.lifetimes import after_years
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


@pytest.fixture(scope="module")
def answers() -> tuple[Answer, ...]:
    return ask(fitted(), CATALOGUE, (15,))


def since(site: Site, on: date) -> Site:
    devices = tuple(
        one.model_copy(update={"cells_since": on}) if one.id == "hall-keypad" else one for one in site.devices
    )
    return site.model_copy(update={"devices": devices})


def test_each_battery_has_a_day_no_later_than_the_low_end_of_its_life(answers: tuple[Answer, ...]) -> None:
    site = fitted()
    found = battery_days(site, CATALOGUE, answers, today=DAY)
    assert [one.on for one in found] == sorted(one.on for one in found)
    assert all(one.is_counted and not one.is_past for one in found)
    for name, life in lives(site, answers).items():
        first = next(one for one in found if site.device(name).name in one.names)
        assert date.fromisoformat(first.on) <= after_years(DAY, life.low)


def test_known_cells_have_a_day_of_their_own_which_may_be_past(answers: tuple[Answer, ...]) -> None:
    site = since(fitted(), date(2010, 1, 4))
    found = battery_days(site, CATALOGUE, answers, today=DAY)
    (own,) = [one for one in found if "Ground hall keypad" in one.names]
    life = lives(site, answers)["hall-keypad"]
    assert own.on == after_years(date(2010, 1, 4), life.low).isoformat()
    assert (own.names, own.is_counted, own.is_past) == (("Ground hall keypad",), False, True)


def test_without_answers_no_battery_has_a_day() -> None:
    assert battery_days(fitted(), CATALOGUE, (), today=DAY) == ()

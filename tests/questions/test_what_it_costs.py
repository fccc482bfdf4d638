"""Question 16: hours, price, the return visit, upkeep."""

from __future__ import annotations

import pytest

from common.houses import one_room
from common.priced_room import HALL, UNIT, priced_room
from common.turning import quarter_turned
from wardwright.model.place import Place
from wardwright.questions.answer import Answer
from wardwright.questions.what_it_costs import answers
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names

CATALOGUE = load_catalogue()


def of(subject: str, found: tuple[Answer, ...]) -> Answer:
    return next(answer for answer in found if answer.subject == subject)


def test_a_bare_house_takes_nothing_that_is_known() -> None:
    (only,) = answers(one_room(), CATALOGUE)
    assert (only.verdict, only.reason) == ("unknown", "not computable: no devices")


def test_a_house_whose_kit_was_there_before_is_told_apart() -> None:
    old = tuple(one.model_copy(update={"is_existing": True}) for one in (UNIT, HALL))
    (only,) = answers(priced_room(devices=old), CATALOGUE)
    assert only.reason == "not computable: nothing is to be fitted: all devices were there before"


@pytest.mark.parametrize("name", sample_names())
def test_every_sample_has_hours_price_and_return_visit(name: str) -> None:
    site = read_sample(name)
    found = answers(site, CATALOGUE)
    if site.devices:
        assert [answer.subject for answer in found] == ["hours", "price", "return visit", "upkeep"]
        hours = of("hours", found)
        assert hours.estimate is not None
        parts = [part.estimate.value for part in hours.parts if part.estimate]
        assert sum(parts) == pytest.approx(hours.estimate.value)


def test_hours_and_price_say_what_moves_them() -> None:
    found = answers(read_sample("terrace"), CATALOGUE)
    for subject in ("hours", "price", "upkeep"):
        estimate = of(subject, found).estimate
        assert estimate is not None
        assert estimate.low < estimate.value < estimate.high
        assert len(estimate.drivers) >= 2


def test_without_a_country_the_price_is_before_tax_and_has_no_currency() -> None:
    price = of("price", answers(priced_room(), CATALOGUE))
    assert price.measure == "for the job, before tax"
    assert price.estimate is not None
    assert price.estimate.unit == "XXX"
    assert "the currency is not known: tell the country" in price.notes


def test_in_britain_it_is_with_vat_and_that_is_to_be_checked() -> None:
    price = of("price", answers(priced_room(place=Place(country="GB")), CATALOGUE))
    assert price.measure == "for the job, with VAT"
    assert any("check with the local rules" in note for note in price.notes)


def test_a_part_without_a_price_makes_the_price_unknown() -> None:
    sheets = tuple(row.model_copy(update={"price": None}) for row in CATALOGUE.sheets)
    price = of("price", answers(priced_room(), CATALOGUE.model_copy(update={"sheets": sheets})))
    assert price.estimate is None
    assert price.reason is not None
    assert price.reason.startswith("not computable: no price is known for")


def test_a_return_visit_names_its_risks() -> None:
    back = of("return visit", answers(read_sample("terrace"), CATALOGUE))
    assert back.verdict == "bad"
    assert any(note.startswith("MOV106") for note in back.notes)
    fine = of("return visit", answers(priced_room(), CATALOGUE))
    assert fine.verdict == "good"


def test_what_saves_work_but_breaks_a_rule_is_told_and_is_no_mend() -> None:
    hours = of("hours", answers(read_sample("terrace"), CATALOGUE))
    assert any("but breaks SND102" in note or "and SND102" in note for note in hours.notes)
    assert not any(mend.subject.endswith("sounder") for mend in hours.mends)


def test_a_quarter_turn_changes_nothing() -> None:
    site = read_sample("terrace")
    one, two = answers(site, CATALOGUE), answers(quarter_turned(site), CATALOGUE)
    for before, after in zip(one, two, strict=True):
        assert before.estimate is not None
        assert after.estimate is not None
        assert after.estimate.value == pytest.approx(before.estimate.value)

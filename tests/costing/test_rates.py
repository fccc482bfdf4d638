"""What is charged, and how that is known."""

from __future__ import annotations

from decimal import Decimal

import pytest

from common.houses import one_room
from common.priced_room import FIRM
from wardwright.costing.rates import NO_CURRENCY, rates_of, visit_in_rows
from wardwright.model.place import Place
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.draws import Input, cases_of

CATALOGUE = load_catalogue()


def test_what_a_firm_tells_has_no_range() -> None:
    rates = rates_of(one_room(), CATALOGUE, FIRM)
    assert (rates.hour.exact, rates.hour.basis) == (Decimal("60.00"), "told")
    assert rates.hour.figure.low == rates.hour.figure.high == 60.0
    assert rates.mark_up.exact == Decimal("0.5")
    assert (rates.currency, rates.tax_percent) == ("GBP", Decimal(20))


def test_without_a_firm_the_figures_count_and_the_country_says_tax_and_currency() -> None:
    rates = rates_of(one_room(place=Place(country="SE")), CATALOGUE)
    assert (rates.currency, rates.tax_name, rates.tax_percent) == ("SEK", "moms", Decimal("25.0"))
    assert rates.hour.basis == "default"
    assert rates.hour.figure.low < rates.hour.figure.high
    assert "check with the local rules" in rates.tax_note


def test_where_nothing_is_known_no_tax_is_nought() -> None:
    rates = rates_of(one_room(), CATALOGUE)
    assert (rates.currency, rates.tax_percent) == (NO_CURRENCY, None)
    us = rates_of(one_room(place=Place(country="US", rule_pack="us")), CATALOGUE)
    assert (us.currency, us.tax_percent) == ("USD", None)


def test_what_a_firm_leaves_out_is_the_catalogues() -> None:
    bare = FIRM.model_copy(
        update={"rates": FIRM.rates.model_copy(update={"travel_min": None, "mark_up_percent": None})}
    )
    rates = rates_of(one_room(), CATALOGUE, bare)
    assert rates.travel.basis == rates.mark_up.basis == "default"


def test_a_visit_costs_its_time_and_the_way_there_and_back_and_likely_as_much_in_rows() -> None:
    rates = rates_of(one_room(), CATALOGUE, FIRM)
    length = CATALOGUE.figure("return-visit")
    time = Decimal(str(length.value)) + 2 * rates.travel.exact
    cost = rates.visit(Decimal(str(length.value)))
    assert cost == time + 2 * rates.journey.exact  # 60.00 an hour is 1.00 a minute
    rows = visit_in_rows(cases_of((*rates.inputs, Input.of(length))), length.id)
    assert rows[0] == pytest.approx(float(cost))

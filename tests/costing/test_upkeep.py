"""Upkeep over some years."""

from __future__ import annotations

from decimal import Decimal

import pytest

from common.priced_room import FIRM, priced_room
from wardwright.costing.firm import Subscription
from wardwright.costing.price_list import Price, PriceList
from wardwright.costing.rates import rates_of
from wardwright.costing.upkeep import changes_within, upkeep_of
from wardwright.model.estimate import Estimate
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
RATES = rates_of(priced_room(), CATALOGUE, FIRM)
LIFE = Estimate(value=2.5, low=1.5, high=6.0, unit="a")


@pytest.mark.parametrize(
    ("years", "life", "count"),
    [(5, 5.0, 1), (5, 4.99, 1), (5, 5.99, 1), (5, 6.0, 0), (5, 1.2, 5), (5, 0.4, 12)],
)
def test_batteries_are_changed_at_the_last_visit_before_they_end(years: int, life: float, count: int) -> None:
    assert changes_within(years, life, 1.0) == count


def test_by_hand() -> None:
    """Five visits of 60 min and two ways of 20 min at 1.00 a minute, two fares of 5.00: 110.00 each.

    A life of 2.5 a is two changes of one cell of 2.40, half as much again for the customer: 3.60.
    """
    upkeep = upkeep_of(priced_room(), CATALOGUE, RATES, lives={"hall": LIFE})
    visits, cells = upkeep.lines
    each = CATALOGUE.sheet("movement-12m").cells
    assert each is not None
    assert (visits.count, visits.each, visits.amount) == (5, Decimal("110.00"), Decimal("550.00"))
    assert (cells.count, cells.each) == (2 * each.count, Decimal("3.60"))
    assert upkeep.amount == Decimal("550.00") + 2 * each.count * Decimal("3.60")
    assert upkeep.a_year is not None
    assert upkeep.a_year.value == pytest.approx(float(upkeep.amount) / 5)
    assert upkeep.a_year.low <= upkeep.a_year.value <= upkeep.a_year.high


def test_a_life_that_is_not_known_makes_the_sum_unknown() -> None:
    upkeep = upkeep_of(priced_room(), CATALOGUE, RATES, lives={"hall": None})
    assert (upkeep.amount, upkeep.a_year) == (None, None)
    assert upkeep.not_known == ("how long the battery of hall lasts is not known",)


def test_a_cell_without_a_price_makes_it_unknown_too() -> None:
    cells = tuple(row.model_copy(update={"price": None}) for row in CATALOGUE.cells)
    rows = CATALOGUE.model_copy(update={"cells": cells})
    assert upkeep_of(priced_room(), rows, RATES, lives={"hall": LIFE}).amount is None
    prices = PriceList(where="p", rows=(Price(code="lithium-cr17345", price=Decimal("4.00")),))
    assert upkeep_of(priced_room(), rows, RATES, lives={"hall": LIFE}, prices=prices).amount is not None


def test_subscriptions_count_where_their_kit_is() -> None:
    paid = Subscription(name="mobile data", per_year=Decimal("48.00"), sheets=("message-mobile",))
    for_all = Subscription(name="help line", per_year=Decimal("10.00"))
    rates = RATES._replace(subscriptions=(paid, for_all))
    upkeep = upkeep_of(priced_room(), CATALOGUE, rates, lives={})
    assert [line.amount for line in upkeep.lines] == [Decimal("550.00"), Decimal("50.00")]

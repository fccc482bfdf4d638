"""The price of a design: by hand, and what must always hold."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.priced_room import FIRM, HALL, PRICES, UNIT, priced_room
from wardwright.costing.firm import Firm
from wardwright.costing.option import QuoteOption
from wardwright.costing.pricing import priced
from wardwright.costing.rates import rates_of
from wardwright.costing.return_visits import Risk
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def option(site: Site, firm: Firm | None = FIRM, prices: object = PRICES) -> QuoteOption:
    rates = rates_of(site, CATALOGUE, firm)
    found = priced(site, CATALOGUE, rates, prices=prices)  # type: ignore[arg-type]
    assert found is not None
    return found


def test_every_line_by_hand() -> None:
    """At 60.00 an hour a minute is 1.00.

    Prepare: 2 enrolling, 25, 15 programming. Fit: detector 14, steps 3, drilling an unknown wall 5, signal 3; unit
    35, drilling 5, mains 12; round the house 20, clearing up 20. Prove: 8 and 3. Contingency: twice 4 for an unknown
    wall, and 5 % of the 176 min on site: 16.8. One day, so four journeys of 20 min. A return visit: 10 % of 60 min,
    two ways of 20 min and two fares.
    """
    one = option(priced_room())
    assert [(line.code, line.count, line.amount) for line in one.lines] == [
        ("control-unit-radio", 1, Decimal("150.00")),
        ("movement-12m", 1, Decimal("70.00")),
        ("consumables", 1, Decimal("5.60")),
        ("survey", 60, Decimal("60.00")),
        ("prepare", 42, Decimal("42.00")),
        ("fit", 117, Decimal("117.00")),
        ("prove", 11, Decimal("11.00")),
        ("hand over", 40, Decimal("40.00")),
        ("travel", 80, Decimal("80.00")),
        ("journeys", 4, Decimal("20.00")),
        ("contingency", 17, Decimal("17.00")),
        ("return visit", Decimal("0.1"), Decimal("11.00")),
    ]
    assert (one.net, one.tax, one.gross) == (Decimal("623.60"), Decimal("124.72"), Decimal("748.32"))
    assert [line.cost for line in one.lines[:3]] == [Decimal("100.00"), Decimal("40.00"), Decimal("5.60")]


def test_the_range_holds_the_sum_and_is_near_it() -> None:
    """The sum differs from the likely price by the rounding of minutes alone."""
    one = option(priced_room())
    assert one.price is not None
    assert one.gross is not None
    assert one.price.low < one.price.value < one.price.high
    assert one.price.value == pytest.approx(float(one.gross), abs=1.2 * 0.5)
    assert one.price.unit == "GBP"


def test_the_customer_reads_the_same_sum_without_allowances_or_costs() -> None:
    one = option(priced_room())
    shown = one.for_the_customer
    assert sum(line.amount or 0 for line in shown) == one.net
    assert {line.kind for line in shown} == {"part", "consumables", "work", "travel"}
    assert [line.amount for line in shown if line.kind == "work"] == [Decimal("298.00")]
    assert all(line.cost is None for line in shown)


def test_a_price_that_is_missing_is_unknown_and_never_nought() -> None:
    short = PRICES.model_copy(update={"rows": PRICES.rows[:1]})
    one = option(priced_room(), prices=short)
    assert (one.net, one.tax, one.gross, one.price) == (None, None, None, None)
    assert len(one.not_priced) == 1
    assert one.hours.value > 0
    assert [line.amount for line in one.lines if line.code == "movement-12m"] == [None]
    assert [line.amount for line in one.lines if line.code == "consumables"] == [None]


def test_where_no_tax_is_known_there_is_none_and_no_price_with_it() -> None:
    one = option(priced_room(), firm=FIRM.model_copy(update={"tax": None}))
    assert one.net == Decimal("623.60")
    assert (one.tax, one.gross) == (None, None)


def test_nothing_to_fit_has_no_price() -> None:
    site = priced_room(devices=tuple(one.model_copy(update={"is_existing": True}) for one in (UNIT, HALL)))
    assert priced(site, CATALOGUE, rates_of(site, CATALOGUE)) is None


def test_a_risk_is_paid_for() -> None:
    """One risk of 40 % beside the 10 % of any job: 1 - 0.9 x 0.6 = 46 % of 110.00."""
    site = priced_room()
    risk = Risk("hall", "LNK104", "return-visit-lnk104", "")
    found = priced(site, CATALOGUE, rates_of(site, CATALOGUE, FIRM), prices=PRICES, risks=(risk,))
    assert found is not None
    assert found.lines[-1].amount == Decimal("50.60")


@given(st.data())
def test_more_devices_are_never_cheaper(data: st.DataObject) -> None:
    site = read_sample("terrace-better")
    order = data.draw(st.permutations([one.id for one in site.devices]))
    cut = data.draw(st.integers(1, len(order) - 1))
    few = tuple(one for one in site.devices if one.id in order[:cut])
    more = tuple(one for one in site.devices if one.id in order[: cut + 1])
    some = [option(site.model_copy(update={"devices": kit}), None, None).net for kit in (few, more)]
    assert some[0] is not None
    assert some[1] is not None
    assert some[0] <= some[1]


@given(st.data())
def test_the_order_of_devices_changes_nothing(data: st.DataObject) -> None:
    site = read_sample("terrace")
    devices = tuple(data.draw(st.permutations(site.devices)))
    assert option(site.model_copy(update={"devices": devices}), None, None) == option(site, None, None)


@given(st.integers(2, 9))
def test_a_rate_so_many_times_as_high_makes_work_so_many_times_as_dear(times: int) -> None:
    def work(rate: Decimal) -> Decimal:
        rates = FIRM.rates.model_copy(update={"labour_per_hour": rate})
        lines = option(priced_room(), FIRM.model_copy(update={"rates": rates})).lines
        return sum((line.amount or Decimal(0) for line in lines if line.kind == "work"), Decimal(0))

    assert work(Decimal(60) * times) == times * work(Decimal(60))

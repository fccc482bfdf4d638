"""One way of doing a job: what the customer reads of it."""

from __future__ import annotations

from decimal import Decimal

from common.priced_room import FIRM, PRICES, priced_room
from wardwright.costing.option import ALLOWANCES
from wardwright.costing.pricing import priced
from wardwright.costing.rates import rates_of
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_allowances_are_part_of_the_customers_work_and_the_sum_is_the_same() -> None:
    site = priced_room()
    option = priced(site, CATALOGUE, rates_of(site, CATALOGUE, FIRM), prices=PRICES)
    assert option is not None
    inside = sum(line.amount or Decimal(0) for line in option.lines if line.kind in ALLOWANCES)
    work = sum(line.amount or Decimal(0) for line in option.lines if line.kind == "work")
    (shown,) = (line for line in option.for_the_customer if line.kind == "work")
    assert inside > 0
    assert shown.amount == work + inside
    assert sum(line.amount or 0 for line in option.for_the_customer) == option.net

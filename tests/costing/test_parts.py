"""What is bought."""

from __future__ import annotations

from decimal import Decimal

from common.houses import on_wall, one_room
from common.priced_room import FIRM, PRICES, priced_room
from wardwright.costing.parts import parts_of
from wardwright.costing.rates import rates_of
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
RATES = rates_of(priced_room(), CATALOGUE, FIRM)


def test_devices_of_one_sheet_are_one_part() -> None:
    two = tuple(on_wall(name, "movement-12m", "south", at) for name, at in (("a", 1.0), ("b", 2.0)))
    (part,) = parts_of(one_room(devices=two), CATALOGUE, RATES)
    assert (part.needed, part.cost, part.each) == (2, Decimal("44.0"), Decimal("66.00"))
    assert part.base == Decimal("88.0")


def test_a_list_goes_before_the_catalogue_and_its_gaps_are_not_filled_from_it() -> None:
    unit, hall = parts_of(priced_room(), CATALOGUE, RATES, prices=PRICES)
    assert (unit.each, unit.is_marked_up) == (Decimal("150.00"), True)
    assert (hall.each, hall.is_marked_up) == (Decimal("70.00"), False)
    (gap,) = parts_of(
        priced_room(devices=(on_wall("x", "keypad-radio", "south", 1.0),)), CATALOGUE, RATES, prices=PRICES
    )
    assert (gap.cost, gap.each, gap.base) == (None, None, None)


def test_a_sheet_without_a_price_has_none() -> None:
    sheets = tuple(row.model_copy(update={"price": None}) for row in CATALOGUE.sheets)
    parts = parts_of(priced_room(), CATALOGUE.model_copy(update={"sheets": sheets}), RATES)
    assert all(part.each is None for part in parts)

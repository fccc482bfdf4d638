"""A room with two devices, a firm and its price list: a price that is worked out by hand."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from common.houses import on_wall, one_room
from wardwright.costing.firm import Firm, FirmRates, FirmTax
from wardwright.costing.price_list import Price, PriceList
from wardwright.model.site import Site

FIRM = Firm(
    name="Example Alarms",
    address=("1 Sample Street", "Anytown"),
    rates=FirmRates(
        currency="GBP",
        labour_per_hour=Decimal("60.00"),
        travel_per_journey=Decimal("5.00"),
        travel_min=20.0,
        mark_up_percent=Decimal(50),
        consumables_percent=Decimal(4),
    ),
    tax=FirmTax(percent=Decimal(20)),
    upkeep_years=5,
)
PRICES = PriceList(
    where="prices.csv",
    rows=(
        Price(code="control-unit-radio", cost=Decimal("100.00")),
        Price(code="movement-12m", cost=Decimal("40.00"), price=Decimal("70.00")),
    ),
)
UNIT = on_wall("unit", "control-unit-radio", "south", 1.0, height_m=1.5)
HALL = on_wall("hall", "movement-12m", "north", 2.0)


def priced_room(**parts: Any) -> Site:
    """A movement detector 2.2 m up and a control unit within reach, on walls of unknown make."""
    return one_room(**({"devices": (UNIT, HALL)} | parts))

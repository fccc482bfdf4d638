"""Prices and working time held against values by hand and against what is remembered; `prove` collects them."""

from __future__ import annotations

from typing import Any

from common.houses import on_opening, on_wall, one_room, opening, standing_free, window
from common.priced_room import FIRM, PRICES, priced_room
from wardwright.costing.labour import ON_SITE, labour_of
from wardwright.costing.pricing import priced
from wardwright.costing.rates import rates_of
from wardwright.costing.upkeep import upkeep_of
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
EXACT = "exact decimals; rounding as stated is part of the value"


def day_of_work() -> Site:
    """Kit that a builder's public page calls one day: four movement detectors, six contacts, an outside sounder, two
    hold-up buttons and a keyfob, by radio; with the control unit and the keypad that it takes for granted.
    """
    windows = tuple(window(f"window-{i}", "south", 0.8 + 1.4 * i, width_m=0.6) for i in range(3))
    others = tuple(window(f"window-{i}", "north", 0.8 + 1.4 * (i - 3), width_m=0.6) for i in range(3, 5))
    door = opening("door", "west", 2.0)
    openings = (*windows, *others, door)
    brick = tuple(wall.model_copy(update={"construction": "brick"}) for wall in one_room().walls)
    return one_room(
        walls=brick,
        openings=openings,
        devices=(
            on_wall("unit", "control-unit-radio", "east", 1.0, height_m=1.5),
            on_wall("keypad", "keypad-radio", "east", 2.0, height_m=1.4),
            *(on_wall(f"md-{i}", "movement-12m", "east", 0.5 + i) for i in range(4)),
            *(on_opening(f"contact-{one.id}", one.id, "contact-radio") for one in openings),
            on_wall("sounder", "sounder-outside", "south", 2.5, side="right", height_m=4.5),
            *(on_wall(f"button-{i}", "hold-up-radio", "north", 3.5 + i, height_m=1.0) for i in range(2)),
            standing_free("fob", "keyfob-radio", 1.0, 1.0),
        ),
    )


def accuracy_rows() -> list[dict[str, Any]]:
    """The rows for docs/accuracy.md."""
    room = priced_room()
    rates = rates_of(room, CATALOGUE, FIRM)
    option = priced(room, CATALOGUE, rates, prices=PRICES)
    upkeep = upkeep_of(
        room, CATALOGUE, rates, lives={"hall": Estimate(value=2.5, low=1.5, high=6.0, unit="a")}
    )
    labour = labour_of(day_of_work(), CATALOGUE)
    if option is None or labour is None or upkeep.amount is None:
        raise AssertionError("the worked houses have devices and prices")
    hours = sum(labour.likely_min(one) for one in ON_SITE if one in labour.by_phase) / 60.0
    sums = {
        "before tax [GBP]": (option.net, 623.60, "twelve lines by hand: see tests/costing/test_pricing.py"),
        "its tax of 20 % [GBP]": (option.tax, 124.72, "20 % of 623.60, by hand"),
        "with tax [GBP]": (option.gross, 748.32, "623.60 + 124.72, by hand"),
    }
    rows: list[dict[str, Any]] = [
        {
            "quantity": f"price of a control unit and a detector, {name}",
            "source": source,
            "expected": expected,
            "computed": float(value if value is not None else "nan"),
            "tolerance": 1e-9,
            "why": EXACT,
            "mark": "derived",
        }
        for name, (value, expected, source) in sums.items()
    ]
    rows.append(
        {
            "quantity": "five years of upkeep of that detector, before tax [GBP]",
            "source": "five visits of 110.00 and two changes of a cell at 3.60, by hand",
            "expected": 557.20,
            "computed": float(upkeep.amount),
            "tolerance": 1e-9,
            "why": EXACT,
            "mark": "derived",
        }
    )
    rows.append(
        {
            "quantity": "on site: 4 movement detectors, 6 contacts, a sounder, 2 buttons, a keyfob; one fitter [h]",
            "source": "a builder's public page calls it one day, as remembered: 8 h",
            "expected": 8.0,
            "computed": hours,
            "tolerance": 2.5,
            "why": "a day is no number of hours, and what it counts is not said; our times were set by such figures",
            "mark": "from memory",
        }
    )
    rows += [
        {
            "quantity": f"tax on a fitter's work in {country} [%]",
            "source": "the standard rate of value added tax, as remembered",
            "expected": percent,
            "computed": float("nan") if (row := CATALOGUE.tax_rate(country)) is None else row.percent,
            "tolerance": 1e-9,
            "why": "rates change: check with the local rules",
            "mark": "from memory",
        }
        for country, percent in (("GB", 20.0), ("IE", 23.0), ("DE", 19.0), ("FR", 20.0), ("ES", 21.0))
    ]
    return rows

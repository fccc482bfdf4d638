"""Cell lives, stand-by batteries and the catalogue's cells held against worked examples and published figures."""

from __future__ import annotations

from collections.abc import Iterator

from accuracy.rows import Row
from wardwright.physics.power.cell_life import average_current, cell_life, within_shelf_life
from wardwright.physics.power.standby import (
    battery_least,
    battery_least_simple,
    charge_current_least,
    charging_time,
    standby_time,
)
from wardwright.store.catalogue import load_catalogue

BY_HAND = "worked out by hand from what is drawn and what is lost in a year"
# Rated capacity [mAh], standby [uA], pulse [mA], its time [ms], pulses a day, loss in a year; current [uA], life [a].
LIVES = (
    (1500.0, 8.0, 25.0, 50.0, 300.0, 0.01, 12.34, 10.36),
    (225.0, 3.0, 12.0, 20.0, 100.0, 0.01, 3.28, 6.18),
    (1200.0, 10.0, 25.0, 50.0, 300.0, 0.03, 14.34, 6.31),
)
CELLS = "public data sheets of the IEC kind"
# Between which the rated capacity is [mAh], and the loss in a year [-], as published.
PUBLISHED = {
    "lithium-cr17345": (1400.0, 1600.0, 0.01, 0.015, "published"),
    "lithium-cr2032": (220.0, 235.0, 0.01, 0.01, "published"),
    "lithium-fr6": (3000.0, 3500.0, 0.005, 0.006, "published"),
    "alkaline-lr6": (2850.0, 3000.0, 0.02, 0.03, "from memory"),
    "alkaline-lr03": (1000.0, 1200.0, 0.02, 0.03, "from memory"),
}
SHELF_YEARS = {"lithium-cr17345": 10.0, "lithium-cr2032": 10.0, "lithium-fr6": 20.0}
ANNEX_E = "BS 5839-1:2025, Annex E, worked example as restated"
BY_GRADE = {1: (12.0, 72.0), 2: (12.0, 72.0), 3: (60.0, 24.0), 4: (60.0, 24.0)}


def accuracy_rows() -> Iterator[Row]:
    """The rows for docs/accuracy.md."""
    for row in LIVES:
        yield from _life(*row)
    cut = float(within_shelf_life(cell_life(1.5, 12.34e-6, loss=0.01), 10.0))
    yield Row(
        "life of that first cell, cut at its shelf life [a]", CELLS, 10.0, cut, 0.0, "the maker's figure",
        "published",
    )  # fmt: skip
    yield from _standby()
    yield from _catalogue()


def _life(
    mah: float,
    quiet: float,
    pulse: float,
    ms: float,
    a_day: float,
    loss: float,
    microamps: float,
    years: float,
) -> Iterator[Row]:
    drawn = float(average_current(quiet * 1e-6, pulse=[pulse * 1e-3], pulse_time=[ms * 1e-3], pulses=[a_day]))
    of = f"{mah:g} mAh cell, {quiet:g} uA and {a_day:g} pulses a day"
    yield Row(
        f"current drawn from a {of} [uA]", BY_HAND, microamps, drawn * 1e6, 0.005, "given to 0.01 uA", "derived",
    )  # fmt: skip
    yield Row(
        f"life of a {of} [a]", BY_HAND, years, float(cell_life(mah * 1e-3, drawn, loss=loss)), 0.005,
        "given to 0.01 years", "derived",
    )  # fmt: skip


def _standby() -> Iterator[Row]:
    yield Row(
        "battery for 24 h at 0.25 A and 0.5 h of alarm at 0.75 A [Ah]", ANNEX_E, 8.32,
        float(battery_least(0.25, 24.0, alarm=0.75, alarm_time=0.5)), 0.005, "given to 0.01 Ah", "published",
    )  # fmt: skip
    yield Row(
        "the same before the allowance for ageing [Ah]", ANNEX_E, 6.656,
        float(battery_least(0.25, 24.0, alarm=0.75, alarm_time=0.5, ageing=1.0)), 0.0005, "given to 0.001 Ah",
        "published",
    )  # fmt: skip
    yield Row(
        "battery by the older short form, 24 h at 0.05 A, alarm 0.3 A [Ah]",
        "worked example of the older short form, which is printed as 1.874", 1.875,
        float(battery_least_simple(0.05, 24.0, alarm=0.3)), 0.0005, "the printed figure is cut, not rounded",
        "published",
    )  # fmt: skip
    yield Row(
        "stand-by time of that first battery [h]", ANNEX_E, 24.0,
        float(standby_time(8.32, 0.25, alarm=0.75, alarm_time=0.5)), 0.005, "the example turned round, 8.32 rounded",
        "published",
    )  # fmt: skip
    least = float(charge_current_least(7.0, 72.0))
    yield Row(
        "least charger of a 7 Ah battery, 72 h allowed [A]", "EN 50131-6: 80 % in the time allowed, as quoted",
        0.8 * 7.0 / 72.0, least, 1e-9, "the form itself", "published",
    )  # fmt: skip
    yield Row(
        "time of that charger [h]", "EN 50131-6: 80 % in the time allowed, as quoted", 72.0,
        float(charging_time(7.0, least)), 1e-9, "the form turned round", "published",
    )  # fmt: skip
    limits = {(one.pack, one.id): one.value for one in load_catalogue().limits}
    for grade, (hours, recharge) in BY_GRADE.items():
        yield Row(
            f"stand-by time asked of grade {grade} [h]", "EN 50131-1, type A", hours,
            limits["uk-eu", f"standby-grade-{grade}"], 0.0, "the standard's figure", "published",
        )  # fmt: skip
        yield Row(
            f"time to charge again allowed to grade {grade} [h]", "EN 50131-6", recharge,
            limits["uk-eu", f"recharge-grade-{grade}"], 0.0, "the standard's figure", "from memory",
        )  # fmt: skip


def _catalogue() -> Iterator[Row]:
    catalogue = load_catalogue()
    for name, (low, high, loss_low, loss_high, mark) in PUBLISHED.items():
        cell = catalogue.cell(name)
        assert cell.capacity_mah is not None
        yield Row(
            f"{name}: rated capacity [mAh]", CELLS, (low + high) / 2, cell.capacity_mah, (high - low) / 2,
            "within what is published", "published",
        )  # fmt: skip
        yield Row(
            f"{name}: loss in a year [-]", CELLS, (loss_low + loss_high) / 2, cell.loss_share,
            (loss_high - loss_low) / 2 + 1e-12, "within what is told", mark,
        )  # fmt: skip
    for name, years in SHELF_YEARS.items():
        yield Row(
            f"{name}: shelf life [a]", CELLS, years, catalogue.cell(name).shelf_years or 0.0, 0.0,
            "the makers' figure", "published",
        )  # fmt: skip
    coin, alkaline = catalogue.cell("lithium-cr2032"), catalogue.cell("alkaline-lr6")
    yield Row(
        "lithium-cr2032: capacity when 3 mA are drawn [mAh]", CELLS, 155.0, coin.hard_capacity_mah or 0.0, 0.0,
        "the makers' figure", "published",
    )  # fmt: skip
    yield Row(
        "alkaline-lr6: capacity when 500 mA are drawn [mAh]", CELLS, 1500.0, alkaline.hard_capacity_mah or 0.0,
        100.0, "within 1400 to 1600 as published", "published",
    )  # fmt: skip
    lead = catalogue.cell("lead-acid")
    for month, share in ((0.03, lead.loss_high_share), (0.015, lead.loss_low_share)):
        yield Row(
            f"lead-acid: loss in a year at {month:.1%} a month [-]", "public data sheets of such batteries",
            1.0 - (1.0 - month) ** 12, share, 0.005, "written to 1 %", "published",
        )  # fmt: skip

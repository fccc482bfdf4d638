"""Figures of the catalogue, and defaults of the model, held against what is published."""

from __future__ import annotations

from collections.abc import Iterator

from accuracy.rows import Row
from wardwright.model.programme import Programme
from wardwright.store.catalogue import load_catalogue

# Comfortable walking speed, lowest and highest mean of the groups by age and sex. [m/s]
COMFORTABLE = (1.27, 1.46)
# Tool contact times. [s]
RESISTANCE = {"rc2": 180.0, "rc3": 300.0}
LONGEST_ENTRY_S = 45.0
BOHANNON = "R. W. Bohannon, Age and Ageing 26(1), 15-19 (1997): means by age and sex"
EN_1627 = "EN 1627:2021, tool contact time, as restated in public guidance"
EN_50131 = "EN 50131-1, clause 8.3: longest entry time"
NFPA_72 = "NFPA 72:2013, clauses 29.5.1 and 29.8.3"
CO_GUIDANCE = "American guidance on where to put CO alarms"
FEET = {
    "smoke-alarm-to-bedroom-door": (21.0, NFPA_72), "alarm-from-apex": (3.0, NFPA_72),
    "smoke-alarm-to-cooking": (10.0, NFPA_72),
    "smoke-alarm-to-cooking-outer": (20.0, NFPA_72), "smoke-alarm-to-wet-door": (3.0, NFPA_72),
    "smoke-alarm-to-moving-air": (3.0, NFPA_72), "smoke-alarm-below-ceiling-most": (1.0, NFPA_72),
    "co-alarm-to-appliance-least": (15.0, CO_GUIDANCE), "co-alarm-to-cooker-least": (5.0, CO_GUIDANCE),
}  # fmt: skip
FAHRENHEIT = {"smoke-alarm-coldest": 40.0, "smoke-alarm-warmest": 100.0}
EN_SECONDS = {
    "entry-time-most": (45.0, "longest entry time"),
    "sounding-time-least": (90.0, "shortest sounding of a warning device"),
    "sounding-time-most": (900.0, "longest sounding of a warning device"),
}


def accuracy_rows() -> Iterator[Row]:
    """The rows for docs/accuracy.md."""
    figures = {figure.id: figure for figure in load_catalogue().figures}
    pace = figures["pace-normal"]
    low, high = COMFORTABLE
    yield Row(
        "pace of an ordinary walk, beside the middle of the published means [m/s]", BOHANNON, (low + high) / 2,
        pace.value, (high - low) / 2, "the published means spread by so much", "published",
    )  # fmt: skip
    why = "the range drawn from must reach past the published means"
    yield Row(
        "low end of that pace [m/s]", BOHANNON, low, pace.low, 0.0, why, "published", "at most",
    )  # fmt: skip
    yield Row(
        "high end of that pace [m/s]", BOHANNON, high, pace.high, 0.0, why, "published", "at least",
    )  # fmt: skip
    for name, seconds in RESISTANCE.items():
        yield Row(
            f"forcing a door of class {name.upper()}, likely [s]", EN_1627, seconds,
            figures[f"force-{name}"].value, 0.0, "the class is defined by it", "published",
        )  # fmt: skip
    yield from _limits()
    yield Row(
        "entry time where nothing is said [s]", EN_50131, LONGEST_ENTRY_S, Programme().entry_time_s, 0.0,
        "the standard's limit", "from memory", "at most",
    )  # fmt: skip


def _limits() -> Iterator[Row]:
    """Limits as the standards write them, in feet, inches and degrees Fahrenheit, beside the rows in metres."""
    limits = {(limit.pack, limit.id): limit.value for limit in load_catalogue().limits}
    for name, (feet, source) in FEET.items():
        yield Row(
            f"{name.replace('-', ' ')}, American pack, {feet:g} ft there [m]", source, feet * 0.3048,
            limits["us", name], 0.05, "metres are written to 0.1 m at the coarsest", "published",
        )  # fmt: skip
    for name, fahrenheit in FAHRENHEIT.items():
        yield Row(
            f"{name.replace('-', ' ')}, American pack, {fahrenheit:g} deg F there [deg C]", NFPA_72,
            (fahrenheit - 32.0) / 1.8, limits["us", name], 0.05, "written to 0.1 deg C", "published",
        )  # fmt: skip
    for name, (seconds, clause) in EN_SECONDS.items():
        yield Row(
            f"{name.replace('-', ' ')}, European pack [s]", f"EN 50131-1, {clause}", seconds,
            limits["uk-eu", name], 0.0, "the standard's figure", "from memory",
        )  # fmt: skip

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
    yield Row(
        "entry time where nothing is said [s]", EN_50131, LONGEST_ENTRY_S, Programme().entry_time_s, 0.0,
        "the standard's limit", "from memory", "at most",
    )  # fmt: skip

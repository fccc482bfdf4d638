"""The radio model held against levels measured in a furnished flat: calibrated and not, with walls and without."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from accuracy.rows import GIVEN, Row
from common.measured_flat import (
    Z_90,
    Flat,
    few_of,
    fitted,
    forecast,
    misses,
    read_flat,
    receiver_left_out,
    rmse,
)

FOLDER = GIVEN / "radio" / "flat_ble_2g4"
DATA = "M. Kolakowski's readings in a flat, doi 10.5281/zenodo.5457591 (CC BY 4.0)"
OTHER = f"{DATA}, worked out by another program"
LINKS = 22_277
MEANS = (-53.10, -63.63, -67.26, -66.42)
FITTED = {"no walls": (6.97, 7.09), "walls counted": (6.23, 6.41)}
GUARD = "a guard set after these results were seen: it shows slips, and proves no truth"


def accuracy_rows() -> Iterator[Row]:
    """The rows for docs/accuracy.md: what the flat says of the model, also where that is poor."""
    flat = read_flat(FOLDER)
    cells = flat.cells()
    yield Row(
        "readings in the flat [-]", DATA, LINKS, len(flat.level_dbm), 0.0, "they are counted", "outside fact"
    )
    for walls, expected in enumerate(MEANS):
        mean = float(flat.level_dbm[flat.walls == walls].mean())
        yield Row(
            f"mean level through {walls} walls of the flat [dB re 1 mW]", OTHER, expected, mean, 0.0051,
            "the last digit printed", "prototype",
        )  # fmt: skip
    yield from _fits(flat, cells)
    yield from _forecasts(flat, cells)


def _fits(flat: Flat, cells: Flat) -> Iterator[Row]:
    """One constant fitted, and the loss of a wall: the form of the model, its figures taken from the flat itself."""
    left_out = {}
    for words, (of_all, without) in FITTED.items():
        walls = words == "walls counted"
        held = rmse(receiver_left_out(flat, walls=walls))
        left_out[words] = held
        yield Row(
            f"flat, {words}, fitted: miss of a point [dB]", OTHER, of_all,
            rmse(misses(flat, fitted(flat, walls=walls))), 0.0051, "the last digit printed", "prototype",
        )  # fmt: skip
        yield Row(
            f"flat, {words}, one receiver left out each time: miss of a point [dB]", OTHER, without, held, 0.0051,
            "the last digit printed", "prototype",
        )  # fmt: skip
    of_cells = {words: rmse(misses(cells, fitted(flat, walls=words == "walls counted"))) for words in FITTED}
    yield Row(
        "flat, walls counted: miss of the mean of a 0.5 m cell [dB]", DATA, 5.2, of_cells["walls counted"], 0.0,
        GUARD, "outside fact", bound="at most",
    )  # fmt: skip
    yield Row(
        "flat, cells: walls counted beside no walls [dB]", DATA, of_cells["no walls"], of_cells["walls counted"], 0.0,
        "walls have to help", "outside fact", bound="at most",
    )  # fmt: skip
    yield Row(
        "flat, one receiver left out: walls counted beside no walls [dB]", DATA, left_out["no walls"],
        left_out["walls counted"], 0.0, "walls have to help", "outside fact", bound="at most",
    )  # fmt: skip


def _forecasts(flat: Flat, cells: Flat) -> Iterator[Row]:
    """The program's own forecast for each receiver: nothing read, and 15 cells read by the other five."""
    before, before_cells = forecast(flat, read=None), forecast(cells, read=None, spot=False)
    yield Row(
        "flat, nothing read: miss of a point [dB]", DATA, 11.0, rmse(before.misses(flat)), 0.0,
        "poor: the tag's power is not stated and nothing is known of the flat", "outside fact", bound="at most",
    )  # fmt: skip
    yield Row(
        "flat, nothing read: miss of a cell's mean [dB]", DATA, 11.0, rmse(before_cells.misses(cells)), 0.0,
        "poor, for the same reason", "outside fact", bound="at most",
    )  # fmt: skip
    yield Row(
        "flat, nothing read: share of the points within the stated 90 % [-]", DATA, 0.90, before.share_inside(flat),
        0.05, "a range that is stated as 90 % has to hold 85 to 95 %", "outside fact",
    )  # fmt: skip
    points, means, inside, inside_cells = [], [], [], []
    for one in range(6):
        held, held_cells = flat.of(flat.receiver == one), cells.of(cells.receiver == one)
        read = few_of(cells, without=one)
        after, after_cells = forecast(held, read=read), forecast(held_cells, read=read, spot=False)
        points.append(after.misses(held))
        means.append(after_cells.misses(held_cells))
        inside.append(np.abs(points[-1]) <= Z_90 * after.spread)
        inside_cells.append(np.abs(means[-1]) <= Z_90 * after_cells.spread)
    yield Row(
        "flat, 15 cells read by the other receivers: miss of a point [dB]", DATA, 7.0,
        rmse(np.concatenate(points)), 0.0, GUARD, "outside fact", bound="at most",
    )  # fmt: skip
    yield Row(
        "flat, 15 cells read by the other receivers: miss of a cell's mean [dB]", DATA, 5.5,
        rmse(np.concatenate(means)), 0.0, GUARD, "outside fact", bound="at most",
    )  # fmt: skip
    yield Row(
        "flat, 15 cells read: share of the points within the stated 90 % [-]", DATA, 0.90,
        float(np.concatenate(inside).mean()), 0.05, "a range that is stated as 90 % has to hold 85 to 95 %",
        "outside fact",
    )  # fmt: skip
    yield Row(
        "flat, 15 cells read: share of the cells' means within the stated 90 % [-]", DATA, 0.90,
        float(np.concatenate(inside_cells).mean()), 0.05, "a range that is stated as 90 % has to hold 85 to 95 %",
        "outside fact",
    )  # fmt: skip

"""Movement detection held against laws of physics, hand arithmetic and a prototype."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import numpy as np

from accuracy.rows import Row
from wardwright.physics.detection.contrast import (
    ZERO_C_K,
    _radiance,
    band_share,
    contrast_factor,
    peak_wavelength,
    relative_contrast,
)
from wardwright.physics.detection.noticing import Detector, Needs, Walk, filled_halves, noticed_at
from wardwright.physics.detection.walkers import PET_RADIUS_M, Body, body_of
from wardwright.physics.detection.walks import walks_of
from wardwright.physics.detection.zones import Halves, pair_rate, zone_halves

PLANCK = "Planck's law summed by another program"
PROTOTYPE = "a prototype of the same model, run before this program was written"
SPLIT = np.radians(1.6)
# Row, pairs, depression [deg], reach in the prototype [m], where it meets the floor from 2.2 m [m].
LAYOUT = (
    ("far", 11, 5.71, 14.0, 22.0),
    ("middle", 9, 13.13, 9.43, 9.43),
    ("near", 5, 29.54, 3.88, 3.88),
    ("creep", 3, 61.39, 1.20, 1.20),
)
CONTRAST = {10.0: 1.61, 15.0: 1.31, 25.0: 0.66, 28.0: 0.45, 30.0: 0.30, 33.0: 0.08}
PEAKS_UM = {37.0: 9.34, 34.0: 9.43, 20.0: 9.89}
SHARES = {(8.0, 14.0): 38.0, (7.0, 14.0): 44.1, (5.5, 14.0): 50.5}
RATES = {(0.1, 12.0): 0.15, (3.0, 12.0): 4.5, (0.1, 2.0): 0.9, (3.0, 2.0): 27.0}
ACROSS_M = {2: 1.10, 4: 0.10, 6: 0.42, 8: 0.30, 10: 0.46, 12: 1.24}
TOWARD_M = {0.0: 2.58, 4.1: 8.19, 8.2: 7.16, 12.0: 7.50}
ANIMAL_IN_ZONES = {1.5: 0.0, 3.0: 1.0, 5.0: 0.0, 8.0: 1.0, 11.0: 0.0}
TWO_DIGITS = "half of the last digit that is given, and a little"


def accuracy_rows() -> list[Row]:
    """The rows for docs/accuracy.md."""
    return [*_radiation(), *_zones(), *_walks(), *_animals()]


def _row(quantity: str, source: str, expected: float, computed: float, **rest: Any) -> Row:
    mark = "prototype" if source == PROTOTYPE else "derived"
    return Row(
        **{
            "mark": mark,
            **rest,
            "quantity": quantity,
            "source": source,
            "expected": expected,
            "computed": float(computed),
        }
    )


def _radiation() -> Iterator[Row]:
    for air_c, expected in CONTRAST.items():
        yield _row(
            f"a person's contrast at {air_c:.0f} deg C against 20 deg C, 8-14 um [-]", PLANCK, expected,
            relative_contrast(air_c), tolerance=0.006, why=TWO_DIGITS,
        )  # fmt: skip
    for celsius, expected in PEAKS_UM.items():
        yield _row(
            f"wavelength of the most radiation at {celsius:.0f} deg C [um]", "Wien: 2897.77 um K / T", expected,
            peak_wavelength(celsius + ZERO_C_K) * 1e6, tolerance=0.006, why=TWO_DIGITS,
        )  # fmt: skip
    for (low, high), expected in SHARES.items():
        share = band_share(34.0 + ZERO_C_K, (low * 1e-6, high * 1e-6))
        yield _row(
            f"share of a black body's output at 34 deg C within {low:g}-{high:g} um [%]", PLANCK, expected,
            100.0 * share, tolerance=0.06, why=TWO_DIGITS,
        )  # fmt: skip
    slope = float(_radiance(20.5 + ZERO_C_K) - _radiance(19.5 + ZERO_C_K))
    yield _row(
        "slope of radiance at 20 deg C, 8-14 um [W/m2/sr/K]", PLANCK, 0.786, slope,
        tolerance=0.0006, why=TWO_DIGITS,
    )  # fmt: skip
    yield _row(
        "contrast at 30 deg C against a least contrast of 1.7 K [-]", PLANCK, 1.68,
        contrast_factor(30.0, 1.7), tolerance=0.006, why=TWO_DIGITS,
    )  # fmt: skip


def _zones() -> Iterator[Row]:
    for name, pairs, depression, _, floor in LAYOUT:
        halves = zone_halves([(pairs, np.radians(depression))], heading=0.0, angle=np.pi / 2, split=SPLIT)
        yield _row(
            f"where the {name} row meets the floor from 2.2 m [m]", "2.2 / tan(depression), by hand", floor,
            float(2.2 / -halves.rise[0]), tolerance=0.003 * floor, why="the depression is given to 0.01 deg",
        )  # fmt: skip
    for (speed, distance), expected in RATES.items():
        yield _row(
            f"pairs a second, crossing at {speed:g} m/s, {distance:g} m off [Hz]", "v / (r x 3.2 deg), by hand",
            expected, float(pair_rate(speed, distance, split=SPLIT)), tolerance=0.02 * expected, why=TWO_DIGITS,
        )  # fmt: skip


def _walks() -> Iterator[Row]:
    across = {radius: _noticed((radius, -3.0), (radius, 3.0)) for radius in ACROSS_M}
    ways = {b: np.array([np.cos(np.radians(b)), np.sin(np.radians(b))]) for b in TOWARD_M}
    toward = {b: _noticed(12.0 * way, 0.1 * way) for b, way in ways.items()}
    why = {"tolerance": 0.021, "why": "both walk in steps of 0.02 m"}
    for radius, expected in ACROSS_M.items():
        yield _row(
            f"walked before being noticed, crossing {radius} m off at 1 m/s [m]", PROTOTYPE, expected,
            across[radius], **why,
        )  # fmt: skip
    for bearing, expected in TOWARD_M.items():
        yield _row(
            f"walked before being noticed, straight in from 12 m at {bearing:g} deg [m]", PROTOTYPE, expected,
            toward[bearing], **why,
        )  # fmt: skip
    slowest, quickest = max(across.values()), min(toward.values())
    yield _row(
        "walked before being noticed: slowest crossing less quickest approach [m]",
        "UFC 4-021-02NF: far more sensitive across than toward", 0.0, slowest - quickest, tolerance=0.0,
        why="an ordering: only the sign counts", mark="published", bound="at most",
    )  # fmt: skip


def _animals() -> Iterator[Row]:
    """Whether any zone is filled by an animal that walks round the detector at a distance, all across its fan."""
    turn = np.linspace(-np.pi / 4, np.pi / 4, 800)
    ends = np.concatenate([np.full(2 * pairs, reach) for _, pairs, _, reach, _ in LAYOUT])
    detector = Detector(np.array([0.0, 0.0, 2.2]), _halves(), ends, Needs(2, 5.0, SPLIT, 1.0))
    for away, expected in ANIMAL_IN_ZONES.items():
        places = away * np.stack([np.cos(turn), np.sin(turn)], axis=1)
        walk = Walk(places, np.zeros(len(turn)), np.arange(len(turn), dtype=float))
        filled, _, _ = filled_halves(walk, detector, body=Body(PET_RADIUS_M, 0.6))
        yield _row(
            f"an animal 0.6 m high walks in a zone {away:g} m off [1: yes]", PROTOTYPE, expected, filled.any(),
            tolerance=0.0, why="yes or no",
        )  # fmt: skip


def _halves() -> Halves:
    return zone_halves(
        [(pairs, np.radians(depression)) for _, pairs, depression, _, _ in LAYOUT],
        heading=0.0, angle=np.pi / 2, split=SPLIT,
    )  # fmt: skip


def _noticed(start: Any, end: Any) -> float:
    a, b = np.asarray(start, dtype=float), np.asarray(end, dtype=float)
    length = float(np.hypot(*(b - a)))
    share = np.linspace(0.0, 1.0, int(length / 0.02) + 1)[:, None]
    walk = Walk(a + share * (b - a), np.zeros(len(share)), share[:, 0] * length)
    halves = _halves()
    ends = np.concatenate([np.full(2 * pairs, reach) for _, pairs, _, reach, _ in LAYOUT])
    needs = Needs(2, 5.0, SPLIT, contrast_factor(20.0, 1.7))
    detector = Detector(np.array([0.0, 0.0, 2.2]), halves, ends, needs)
    walks = walks_of([(walk.places, ("ground",) * len(walk.places), walk.clock)])
    return float(
        noticed_at(walks, walk.floors[None], [detector], reaches=[99.0], body=body_of("upright"))[0, 0, 0]
    )

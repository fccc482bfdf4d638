"""Radio held against the worked examples and tables of ITU-R P.2040, ITU-R P.1238 and COST 231."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from accuracy.rows import Row
from wardwright.model.radio_rows import RadioLaw, RadioMaterial
from wardwright.physics.radio.distance_laws import LAWS, LawFigures, cost_231, floor_factor
from wardwright.physics.radio.free_space import free_space_loss
from wardwright.physics.radio.slab import (
    Layer,
    Polarisation,
    at_frequency,
    layered_loss,
    layered_reflection,
    smoothed_loss,
)
from wardwright.store.catalogue import load_catalogue

FRIIS = "H. T. Friis, 1946: 20 log(4 pi d f / c), by hand"
SLAB = "the slab formula of ITU-R P.2040-4, worked out in a public ray-tracing library"
LAYERS = "transfer matrix of flat layers, worked out by another program"
COST = "COST 231 multi-wall law, by hand"
P1238 = "ITU-R P.1238, older editions, by hand"
P1238_11 = "ITU-R P.1238-11, site-general, by hand"
STUDENT = "COST 231, a public student's exercise (37 dB constant, speed of light rounded)"
LAST = "the last digit printed"

FREE_SPACE = {
    433.92: (25.20, 34.74, 39.18, 45.20, 51.22, 54.74, 59.18, 65.20),
    868.3: (31.22, 40.76, 45.20, 51.22, 57.24, 60.76, 65.20, 71.22),
    915.0: (31.68, 41.22, 45.66, 51.68, 57.70, 61.22, 65.66, 71.68),
    2400.0: (40.05, 49.59, 54.03, 60.05, 66.07, 69.59, 74.03, 80.05),
    2440.0: (40.20, 49.74, 54.17, 60.20, 66.22, 69.74, 74.17, 80.20),
}
DISTANCES = (1.0, 3.0, 5.0, 10.0, 20.0, 30.0, 50.0, 100.0)
SLAB_MHZ = (433.92, 868.0, 915.0, 2400.0)
SLABS: dict[tuple[str, float], tuple[float, ...]] = {
    ("brick", 0.102): (3.195, 2.771, 3.023, 3.290),
    ("brick", 0.215): (4.783, 5.486, 5.419, 5.732),
    ("concrete", 0.1): (3.512, 4.844, 5.121, 8.096),
    ("concrete", 0.2): (5.296, 7.491, 7.442, 14.571),
    ("plasterboard", 0.0125): (0.119, 0.299, 0.321, 1.072),
    ("timber", 0.04): (0.243, 0.582, 0.613, 0.612),
    ("chipboard", 0.018): (0.388, 0.755, 0.795, 1.665),
    ("glass", 0.004): (0.048, 0.176, 0.194, 1.066),
    ("glass", 0.006): (0.101, 0.368, 0.405, 1.905),
    ("metal", 0.001): (1211.0, 1679.0, 1722.0, 2740.0),
}
ASLANT: dict[tuple[str, float, float], tuple[float, float]] = {
    ("brick", 0.102, 868.0): (3.210, 2.301), ("concrete", 0.2, 868.0): (9.336, 6.929),
    ("glass", 0.006, 868.0): (0.695, 0.145), ("brick", 0.102, 2400.0): (3.379, 2.631),
    ("concrete", 0.2, 2400.0): (16.267, 14.319), ("glass", 0.006, 2400.0): (3.233, 0.818),
}  # fmt: skip
REFLECTED = {("brick", 0.102): 10.419, ("concrete", 0.2): 6.890, ("glass", 0.006): 11.235}
LAYER_MHZ = (433.92, 868.3, 915.0, 2440.0)
LAYERED: dict[str, tuple[Sequence[tuple[str, float]], tuple[float, ...]]] = {
    "plasterboard on studs": (
        [("plasterboard", 0.0125), ("air", 0.075), ("plasterboard", 0.0125)], (0.21, 0.35, 0.41, 0.95)
    ),
    "glazing 4-16-4": ([("glass", 0.004), ("air", 0.016), ("glass", 0.004)], (0.16, 0.49, 0.52, 0.16)),
    "cavity brick 102-75-102": (
        [("brick", 0.102), ("air", 0.075), ("brick", 0.102)], (7.47, 5.66, 6.57, 5.76)
    ),
}  # fmt: skip
SMOOTHED: dict[tuple[str, float], tuple[float, ...]] = {
    ("brick", 0.102): (3.33, 2.78, 2.96, 3.41), ("brick", 0.215): (4.81, 5.38, 5.45, 6.09),
    ("concrete", 0.1): (3.63, 4.67, 4.95, 8.27), ("concrete", 0.2): (5.16, 7.61, 7.82, 14.95),
    ("plasterboard", 0.0125): (0.13, 0.32, 0.35, 1.13), ("glass", 0.004): (0.05, 0.20, 0.22, 1.13),
}  # fmt: skip
RAY_TRACED = {868.0: 45.198, 2400.0: 54.031}
FLOORS = {1: (1.0, 18.3), 2: (1.83189, 33.52), 3: (2.38191, 43.59), 4: (2.78949, 51.05)}
LIGHT_DB, HEAVY_DB = 3.4, 6.9
MULTI_WALL = {
    (10.0, 1, 1, 1): (73.80, 79.82, 88.80), (15.0, 3, 1, 0): (65.82, 71.84, 80.82),
    (12.0, 2, 2, 2): (100.90, 106.93, 115.90),
}  # fmt: skip
MULTI_WALL_MHZ = (433.92, 868.3, 2440.0)
GENERAL = {
    "general-office-los": (41.86, 47.97, 48.44, 57.08), "general-office-nlos": (45.50, 52.67, 53.21, 63.35),
    "general-corridor-los": (36.26, 43.04, 43.55, 53.14), "general-corridor-nlos": (47.98, 55.45, 56.01, 66.58),
}  # fmt: skip
NOT_NAMED = RadioMaterial(id="air", name="air", source="own", mark="assumption", permittivity=1.0)


def accuracy_rows() -> Iterator[Row]:
    """The rows for docs/accuracy.md: free space, slabs, layers, laws of distance."""
    yield from _free_space()
    yield from _slabs()
    yield from _laws()


def layers_of(build: Sequence[tuple[str, float]], hertz: float) -> list[Layer]:
    """Layers of the catalogue's materials at one frequency."""
    rows = {row.id: row for row in load_catalogue().radio_materials}
    found = []
    for name, thickness in build:
        row = rows.get(name, NOT_NAMED)
        real = at_frequency(row.permittivity, row.permittivity_power, frequency=hertz)
        lossy = at_frequency(row.conductivity_s_m, row.conductivity_power, frequency=hertz)
        found.append(Layer(thickness, float(real), float(lossy)))
    return found


def figures_of(name: str) -> tuple[RadioLaw, LawFigures]:
    """A law of the catalogue with its figures."""
    row = next(row for row in load_catalogue().radio_laws if row.id == name)
    return row, LawFigures(row.slope_db, row.at_one_db, row.by_frequency_db, row.floors_db, row.bend)


def _free_space() -> Iterator[Row]:
    for mhz, losses in FREE_SPACE.items():
        for distance, expected in zip(DISTANCES, losses, strict=True):
            computed = float(free_space_loss(distance, mhz * 1e6))
            yield Row(
                f"free space, {distance:g} m at {mhz:g} MHz [dB]", FRIIS, expected, computed, 0.0051, LAST,
                "derived",
            )  # fmt: skip
    for mhz, expected in RAY_TRACED.items():
        source = "a public ray tracer's own path of 5 m"
        yield Row(
            f"free space beside a ray tracer, 5 m at {mhz:g} MHz [dB]", source, expected,
            float(free_space_loss(5.0, mhz * 1e6)), 0.001, LAST, "reference tool",
        )  # fmt: skip


def _slabs() -> Iterator[Row]:
    for (name, thickness), losses in SLABS.items():
        for mhz, expected in zip(SLAB_MHZ, losses, strict=True):
            loss = float(layered_loss(layers_of([(name, thickness)], mhz * 1e6), mhz * 1e6))
            digit = 0.51 if name == "metal" else 0.00051
            yield Row(
                f"through {name} of {thickness * 1e3:g} mm, {mhz:g} MHz [dB]", SLAB, expected, loss, digit, LAST,
                "reference tool",
            )  # fmt: skip
    waves: tuple[Polarisation, Polarisation] = ("electric", "magnetic")
    for (name, thickness, mhz), both in ASLANT.items():
        for polarisation, expected in zip(waves, both, strict=True):
            layers = layers_of([(name, thickness)], mhz * 1e6)
            loss = float(layered_loss(layers, mhz * 1e6, incidence=math.pi / 4, polarisation=polarisation))
            yield Row(
                f"through {name} of {thickness * 1e3:g} mm at 45 deg, {polarisation} field level, {mhz:g} MHz [dB]",
                SLAB, expected, loss, 0.00051, LAST, "reference tool",
            )  # fmt: skip
    for (name, thickness), expected in REFLECTED.items():
        back = float(layered_reflection(layers_of([(name, thickness)], 868e6), 868e6))
        yield Row(
            f"thrown back by {name} of {thickness * 1e3:g} mm, 868 MHz [dB]", SLAB, expected, back, 0.00051, LAST,
            "reference tool",
        )  # fmt: skip
    for words, (build, losses) in LAYERED.items():
        for mhz, expected in zip(LAYER_MHZ, losses, strict=True):
            loss = float(layered_loss(layers_of(build, mhz * 1e6), mhz * 1e6))
            yield Row(
                f"through {words}, {mhz:g} MHz [dB]", LAYERS, expected, loss, 0.0051, LAST, "reference tool"
            )
    for (name, thickness), losses in SMOOTHED.items():
        for mhz, expected in zip(LAYER_MHZ, losses, strict=True):
            loss = float(smoothed_loss(layers_of([(name, thickness)], mhz * 1e6), mhz * 1e6))
            yield Row(
                f"smoothed, {name} of {thickness * 1e3:g} mm, {mhz:g} MHz [dB]",
                "mean power over 15 % of thickness, 0 to 60 deg and both polarisations, by another program", expected,
                loss, 0.02, "the two take their means at other points", "prototype",
            )  # fmt: skip


def _laws() -> Iterator[Row]:
    _, figures = figures_of("multi-wall")
    for count, (factor, loss) in FLOORS.items():
        yield Row(
            f"floors' factor, {count} floors [-]", COST, factor, float(floor_factor(count)), 0.000051, LAST, "derived"
        )  # fmt: skip
        computed = float(floor_factor(count)) * figures.floors[0]
        yield Row(f"through {count} floors [dB]", COST, loss, computed, 0.0051, LAST, "derived")
    for (distance, light, heavy, floors), losses in MULTI_WALL.items():
        for mhz, expected in zip(MULTI_WALL_MHZ, losses, strict=True):
            walls = light * LIGHT_DB + heavy * HEAVY_DB
            computed = float(cost_231(distance, mhz * 1e6, walls=walls, floors=floors, figures=figures))
            yield Row(
                f"multi-wall, {distance:g} m, {light} light, {heavy} heavy, {floors} floors, {mhz:g} MHz [dB]", COST,
                expected, computed, 0.0101, "two rounded terms", "derived",
            )  # fmt: skip
    for mhz, expected in ((2400.0, 140.870), (5000.0, 147.245)):
        told = figures._replace(at_one=37.0)
        computed = float(cost_231(10.0, mhz * 1e6, walls=LIGHT_DB + HEAVY_DB, floors=2, figures=told))
        yield Row(
            f"multi-wall with a constant of 37 dB, {mhz:g} MHz [dB]", STUDENT, expected, computed, 0.008,
            "its speed of light is 0.07 % higher, which is 0.006 dB", "published",
        )  # fmt: skip
    for name, floors, expected in (("office-2400", 1, 83.60), ("residential-2400-flat", 0, 67.60)):
        row, figures = figures_of(name)
        computed = float(LAWS[row.law](10.0, 2.4e9, walls=0.0, floors=floors, figures=figures))
        yield Row(
            f"P.1238, {row.name}, 10 m, {floors} floors [dB]",
            P1238,
            expected,
            computed,
            0.0051,
            LAST,
            "derived",
        )
    for name, losses in GENERAL.items():
        row, figures = figures_of(name)
        for mhz, expected in zip(LAYER_MHZ, losses, strict=True):
            computed = float(LAWS[row.law](10.0, mhz * 1e6, walls=0.0, floors=0, figures=figures))
            yield Row(
                f"P.1238-11, {row.name}, 10 m, {mhz:g} MHz [dB]", P1238_11, expected, computed, 0.0051, LAST,
                "derived",
            )  # fmt: skip

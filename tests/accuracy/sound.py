"""Sound held against published tables and worked examples: air, the ear, reverberation, walls, sheets' levels."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from accuracy.rows import Row
from wardwright.physics.sound.air import air_absorption
from wardwright.physics.sound.bands import a_weighting, exact_middles, level_sum
from wardwright.physics.sound.from_site import balance, leaf_states, sound_house
from wardwright.physics.sound.network import answering, diffuse_energy, level_of
from wardwright.physics.sound.power import direct_level, power_level
from wardwright.physics.sound.reverberation import absorption_area, sabine_time
from wardwright.physics.sound.room_level import level_in_room, room_constant
from wardwright.physics.sound.transmission import composite_loss, level_through, massive_loss
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

EIGHT_HZ = (63.0, 125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0, 8000.0)
# ISO 9613-1 at exact middles, by the package `acoustics` 0.2.6 and by a separate program, which agree. [dB/km]
AIR = {
    (10.0, 70.0): (0.12, 0.41, 1.04, 1.93, 3.66, 9.66, 32.77, 116.88),
    (20.0, 70.0): (0.09, 0.34, 1.13, 2.80, 4.98, 9.02, 22.91, 76.62),
    (30.0, 70.0): (0.07, 0.26, 0.96, 3.14, 7.41, 12.75, 23.06, 59.26),
    (15.0, 20.0): (0.27, 0.65, 1.22, 2.70, 8.17, 28.19, 88.79, 201.76),
    (15.0, 50.0): (0.14, 0.48, 1.22, 2.24, 4.16, 10.79, 36.22, 128.57),
    (15.0, 80.0): (0.09, 0.34, 1.07, 2.40, 4.15, 8.31, 23.67, 82.83),
}
# The standard's own table, rounded as it prints it. [dB/km]
AIR_PRINTED = {
    (10.0, 70.0): (0.1, 0.4, 1.0, 1.9, 3.7, 9.7, 32.8, 117.0),
    (20.0, 70.0): (0.1, 0.3, 1.1, 2.8, 5.0, 9.0, 22.9, 76.6),
}
A_WEIGHTS = (-26.2, -16.1, -8.6, -3.2, 0.0, 1.2, 1.0, -1.1)
FOOT_M = 0.3048
# A studio of 23.3 x 16 x 10 ft, as the book lays it out: square feet, coefficients at 125 Hz to 4 kHz.
STUDIO_FT2 = (373.0, 1159.0, 340.0)
STUDIO = (
    (0.01, 0.01, 0.015, 0.02, 0.02, 0.02),
    (0.29, 0.10, 0.05, 0.04, 0.07, 0.09),
    (0.09, 0.28, 0.78, 0.84, 0.73, 0.64),
)
STUDIO_S = (0.49, 0.85, 0.56, 0.54, 0.54, 0.55)
HANDBOOK = "Master Handbook of Acoustics, studio of 23.3 x 16 x 10 ft, reverberation time printed"
TEXTBOOK = "Crocker and Arenas, Engineering acoustics, worked example 12.13"
EXERCISE = "a solved exercise on a wall with a window and a door"
TWO_ROOMS = "textbook example of two rooms: 45 dB, 15 m2, 30 m2"
BY_HAND = "inverse square, by hand"
CHAIN = "a chain worked out apart from this program: 100 dB at 1 m on a wall, 5 x 4 x 2.5 m, 0.1"


def accuracy_rows() -> Iterator[Row]:
    """The rows for docs/accuracy.md."""
    yield from _air()
    yield from _ear()
    yield from _ringing()
    yield from _walls()
    yield from _sheets()
    yield from _chain()
    yield from _doors()


def _air() -> Iterator[Row]:
    middles = exact_middles(EIGHT_HZ)
    for (celsius, humidity), expected in AIR.items():
        found = 1000.0 * air_absorption(middles, celsius=celsius, humidity=humidity)
        for nominal, ours, theirs in zip(EIGHT_HZ, found, expected, strict=True):
            yield Row(
                f"air, {celsius:g} deg C, {humidity:g} %, {nominal:g} Hz [dB/km]",
                "ISO 9613-1 by the package acoustics 0.2.6", theirs, float(ours), 0.0051,
                "given to two decimals", "reference tool",
            )  # fmt: skip
    for (celsius, humidity), expected in AIR_PRINTED.items():
        found = 1000.0 * air_absorption(middles, celsius=celsius, humidity=humidity)
        for nominal, ours, theirs in zip(EIGHT_HZ, found, expected, strict=True):
            yield Row(
                f"air, {celsius:g} deg C, {humidity:g} %, {nominal:g} Hz, as the table prints it [dB/km]",
                "ISO 9613-1:1993, table 1", theirs, float(ours), max(0.0501, 0.005 * theirs),
                "printed to one decimal, or three figures", "from memory",
            )  # fmt: skip
    yield Row(
        "air, 20 deg C, 50 %, 3162.28 Hz [dB/km]", "ISO 9613-1 by the package acoustics 0.2.6", 19.838,
        float(1000.0 * air_absorption(3162.28)), 0.00051, "given to three decimals", "reference tool",
    )  # fmt: skip


def _ear() -> Iterator[Row]:
    found = a_weighting(exact_middles(EIGHT_HZ))
    for nominal, ours, theirs in zip(EIGHT_HZ, found, A_WEIGHTS, strict=True):
        yield Row(
            f"A-weighting at {nominal:g} Hz [dB]", "IEC 61672-1, table of the weighting", theirs, float(ours), 0.051,
            "printed to one decimal", "published",
        )  # fmt: skip
    yield Row(
        "two equal sources together, above one [dB]", "10 log 2, by hand", 3.0103,
        float(level_sum([60.0, 60.0])) - 60.0, 1e-4, "four decimals", "derived",
    )  # fmt: skip


def _ringing() -> Iterator[Row]:
    areas = np.asarray(STUDIO_FT2) * FOOT_M**2
    found = sabine_time(3728.0 * FOOT_M**3, absorption_area(areas, STUDIO))
    for nominal, ours, theirs in zip(EIGHT_HZ[1:7], found, STUDIO_S, strict=True):
        yield Row(
            f"reverberation time at {nominal:g} Hz [s]", HANDBOOK, theirs, float(ours), 0.0075,
            "printed to two decimals; its constant in feet is 0.5 % less than ours", "published",
        )  # fmt: skip


def _walls() -> Iterator[Row]:
    yield Row(
        "a wall of 9.5 m2 at 59 dB with 1.08 m2 at 35 dB [dB]", TEXTBOOK, 44.8,
        float(composite_loss([59.0, 35.0], [9.5, 1.08])), 0.051, "printed to one decimal", "published",
    )  # fmt: skip
    yield Row(
        "7.54 m2 at 53 dB, 0.96 m2 at 25 dB and 1.5 m2 at 20 dB together [dB]", EXERCISE, 27.43,
        float(composite_loss([53.0, 25.0, 20.0], [7.54, 0.96, 1.5])), 0.0051, "printed to two decimals", "published",
    )  # fmt: skip
    yield Row(
        "from one room to the next [dB]", TWO_ROOMS, 48.01,
        -float(level_through(0.0, loss=45.0, area=15.0, absorption_area=30.0)), 0.0051, "printed to two decimals",
        "published",
    )  # fmt: skip
    found = massive_loss(2300.0 * 0.2)
    table = "an engineering table of massive floors: 0.2 m of concrete, 460 kg/m2"
    for words, printed, ours in (
        ("at 250 Hz", 47.0, float(found[1])), ("at 2 kHz", 59.0, float(found[4])),
    ):  # fmt: skip
        yield Row(
            f"a massive floor, {words} [dB]", table, printed, ours, 0.5, "printed in whole decibels", "published",
        )  # fmt: skip


def _sheets() -> Iterator[Row]:
    yield Row(
        "a sheet's 70 dBA at 3 m, at 1 m [dBA]", BY_HAND, 79.5,
        float(direct_level(power_level(70.0, distance=3.0), 1.0)), 0.051, "one decimal", "derived",
    )  # fmt: skip
    yield Row(
        "a sheet's 85 dBA at 3 m, at 1 m [dBA]", BY_HAND, 94.5,
        float(direct_level(power_level(85.0, distance=3.0), 1.0)), 0.051, "one decimal", "derived",
    )  # fmt: skip
    yield Row(
        "the same, at 9.5 m [dBA]", BY_HAND, 75.0, float(direct_level(power_level(85.0, distance=3.0), 9.5)), 0.051,
        "one decimal", "derived",
    )  # fmt: skip
    yield Row(
        "100 dBA at 1 m, at 31.6 m [dBA]", BY_HAND, 70.0, float(direct_level(power_level(100.0, distance=1.0), 31.6)),
        0.051, "one decimal", "derived",
    )  # fmt: skip
    for words, directivity, more in (("in the free field", 1.0, 10.99), ("on a baffle", 2.0, 7.98)):
        yield Row(
            f"power above the level at 1 m {words} [dB]", "10 log(4 pi / Q), by hand", more,
            float(power_level(0.0, distance=1.0, directivity=directivity)), 0.0051, "two decimals", "derived",
        )  # fmt: skip


def _chain() -> Iterator[Row]:
    power = power_level(100.0, distance=1.0, directivity=2.0)
    why = "two decimals"
    yield Row("power of the source [dB]", CHAIN, 107.98, float(power), 0.0051, why, "derived")
    constant = float(room_constant(85.0, [0.1])[0])
    yield Row("room constant [m2]", CHAIN, 9.444, constant, 0.00051, "three decimals", "derived")
    near = level_in_room([float(power)], [3.0], surface=85.0, absorption=[0.1], directivity=2.0)
    yield Row("level at 3 m [dB]", CHAIN, 104.43, float(near[0, 0]), 0.0051, why, "derived")
    # What goes into the diffuse field is what the walls left over at the first meeting.
    into = float(10.0 ** (power / 10.0)) * 0.9
    alone = float(level_of(diffuse_energy(answering([8.5], [[0.0]]), [into]))[0])
    yield Row("diffuse level [dB]", CHAIN, 104.25, alone, 0.0051, why, "derived")
    walls = (
        ("a wall of 38 dB", 67.22, [38.0], [12.5]),
        ("with a shut hollow door of 17 dB", 79.52, [38.0, 17.0], [10.9, 1.6]),
        ("with a gap under it of 0.008 m2 as well", 80.43, [38.0, 17.0, 0.0], [10.9, 1.6 - 0.008, 0.008]),
        ("with the door open", 96.30, [38.0, 0.0], [10.9, 1.6]),
    )
    for words, expected, losses, areas in walls:
        loss = composite_loss(losses, areas)
        found = float(level_through(alone, loss=loss, area=12.5, absorption_area=10.0))
        yield Row(f"next room, {words} [dB]", CHAIN, expected, found, 0.0051, why, "derived")
        # The network gives back less than the formula takes: the next room also swallows by the wall itself.
        through = 12.5 * 10.0 ** (-float(loss) / 10.0)
        heard = answering([8.5, 10.0], [[0.0, through], [through, 0.0]])
        both = level_of(diffuse_energy(heard, [into, 0.0]))
        given_back = 10.0 * math.log10(10.0 / (10.0 + through))
        yield Row(
            f"the same by the balance of both rooms, below the first: {words} [dB]",
            "S t / (A + S t), by hand", -float(loss) + 10.0 * math.log10(12.5 / 10.0) + given_back,
            float(both[1] - both[0]), 1e-9, "exact", "derived",
        )  # fmt: skip


def _doors() -> Iterator[Row]:
    """The sample house's bedrooms behind their shut doors, a sounder on the landing's wall."""
    catalogue, site = load_catalogue(), read_sample("terrace")
    house = sound_house(site, catalogue)
    shut = leaf_states(house, "shut")
    landing = house.room("landing")
    figure = catalogue.figure("sound-bedroom-door")
    source = "five flats, shut bedroom doors 18 to 23 dB, journal paper of 2018"
    for name in ("bedroom-1", "bedroom-2", "bedroom-3"):
        behind = house.room(name)
        heard = balance(house, shut).heard[0, 4, :, landing]
        yield Row(
            f"a hollow door, from the landing to {name} behind it, 2 kHz [dB]", source, figure.value,
            10.0 * math.log10(heard[landing] / heard[behind]), 5.0,
            "half the published spread, and 2.5 dB for a house that is not those flats", "published",
        )  # fmt: skip
    opened = house.with_leaf(shut, opening_id="landing-bedroom-1-door", state="open")
    room = house.room("bedroom-1")
    gained = (
        balance(house, opened).heard[0, 4, room, landing] / balance(house, shut).heard[0, 4, room, landing]
    )
    yield Row(
        "what opening the bedroom's door brings in the bedroom, 2 kHz [dB]",
        "a fire laboratory's house, smoke alarm outside: 95 dBA open, 78 dBA shut", 17.0, 10.0 * math.log10(gained),
        0.0, "no more is promised: sound straight through the doorway is left out", "published", "at most",
    )  # fmt: skip

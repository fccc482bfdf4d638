"""Scenes, densities and edges of pictures held against worked examples, and a general projection matrix."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from accuracy.rows import Row
from wardwright.physics.video.density import (
    distance_of,
    floor_band,
    lamp_reach,
    lens_angle,
    pixels_per_metre,
    scene_size,
)
from wardwright.physics.video.projection import Lens, drawn
from wardwright.store.catalogue import load_catalogue

BY_HAND = "similar triangles, by hand"
TABLE = "worked example of a lens table in public"
SENSOR, ACROSS = 5.37e-3, 1920
# Focal length [mm]; angle [deg]; distances to identify, recognise, observe and detect [m].
LENSES = (
    (2.8, 87.60, (4.00, 8.01, 16.02, 40.04)),
    (4.0, 67.74, (5.72, 11.44, 22.88, 57.21)),
    (6.0, 48.22, (8.58, 17.16, 34.32, 85.81)),
)
WORDS = {"identify": 250.0, "recognise": 125.0, "observe": 62.5, "detect": 25.0}
# Height [m], tilt and vertical angle [deg], near and far edge [m]; None: without limit.
BANDS = ((2.7, 35.0, 40.0, 1.891, 10.077), (2.7, 15.0, 40.0, 3.856, None))
# Distances at 90 degrees and 1920 px: 960 / density. [m]
AT_90 = {250.0: 3.84, 125.0: 7.68, 62.5: 15.36, 25.0: 38.4, 12.5: 76.8}
EDITIONS = {
    "2014": ({"monitor": 12.5, "detect": 25.0, "observe": 62.5, "recognise": 125.0, "identify": 250.0}, "published"),
    "2025": (
        {
            "overview": 20.0, "outline": 40.0, "discern": 80.0, "perceive": 125.0, "characterise": 250.0,
            "validate": 500.0,
        },
        "from memory",
    ),
}  # fmt: skip


def accuracy_rows() -> Iterator[Row]:
    """The rows for docs/accuracy.md."""
    for distance, sensor, focal, size in (
        (16.0, (8.8, 6.6), 25.0, (5.63, 4.22)),
        (16.0, (4.8, 3.6), 35.0, (2.19, 1.65)),
    ):
        found = scene_size(distance, np.asarray(sensor) * 1e-3, focal * 1e-3)
        for what, expected, computed in zip(("width", "height"), size, found.tolist(), strict=True):
            yield Row(
                f"{what} of a scene {distance:g} m away, sensor {sensor[0]:g} mm wide, lens {focal:g} mm [m]",
                TABLE, expected, computed, 0.005, "given to 0.01 m", "published",
            )  # fmt: skip
    for focal, degrees, distances in LENSES:
        angle = lens_angle(SENSOR, focal * 1e-3)
        yield Row(
            f"angle of a {focal:g} mm lens on a sensor 5.37 mm wide [deg]", BY_HAND, degrees, math.degrees(angle),
            0.005, "given to 0.01 deg", "derived",
        )  # fmt: skip
        for (word, density), far in zip(WORDS.items(), distances, strict=True):
            yield Row(
                f"distance to {word}, 1920 px, {focal:g} mm lens [m]", BY_HAND, far,
                float(distance_of(density, ACROSS, angle)), 0.0051, "given to 0.01 m", "derived",
            )  # fmt: skip
    for height, tilt, angle, near, far in BANDS:
        found_near, found_far = floor_band(height, math.radians(tilt), math.radians(angle))
        of = f"picture of a camera {height:g} m up, {tilt:g} deg down, {angle:g} deg from top to bottom"
        yield Row(f"near edge of the {of} [m]", BY_HAND, near, found_near, 0.0005, "given to 1 mm", "derived")
        if far is None:
            yield Row(
                f"share of floor to the horizon in the {of}, 1: without limit [-]", BY_HAND, 1.0,
                float(math.isinf(found_far)), 0.0, "the upper edge looks up", "derived",
            )  # fmt: skip
        else:
            yield Row(
                f"far edge of the {of} [m]", BY_HAND, far, found_far, 0.0005, "given to 1 mm", "derived"
            )
    for across, times in ((1920, 1.0), (3840, 2.0)):
        for density, far in AT_90.items():
            yield Row(
                f"distance to {density:g} px/m, {across} px over 90 deg [m]", BY_HAND, far * times,
                float(distance_of(density, across, math.radians(90.0))), 1e-9, "exact", "derived",
            )  # fmt: skip
    yield Row(
        "density 3.84 m away, 3840 px over 90 deg [px/m]", BY_HAND, 500.0,
        float(pixels_per_metre(3.84, 3840, math.radians(90.0))), 1e-9, "exact", "derived",
    )  # fmt: skip
    law = "light falls with the square of the distance"
    yield Row(
        "reach of a lamp of four times the power [-]",
        law,
        2.0,
        float(lamp_reach(1.0, 4.0)),
        1e-12,
        "exact",
        "derived",
    )
    yield Row(
        "reach of a lamp at half its power [-]",
        law,
        0.71,
        float(lamp_reach(1.0, 0.5)),
        0.005,
        "given to 1 %",
        "derived",
    )
    yield from _tables()
    yield from _matrix()


def _tables() -> Iterator[Row]:
    catalogue = load_catalogue()
    for edition, (words, mark) in EDITIONS.items():
        known = {task.name: task.density_px_m for task in catalogue.tasks if task.edition == edition}
        for word, density in words.items():
            yield Row(
                f"density to {word}, edition of {edition} [px/m]", f"IEC 62676-4:{edition}, as restated", density,
                known[word], 0.0, "the standard's figure", mark,
            )  # fmt: skip
    yield Row(
        "density to inspect, edition of 2014 [px/m]", "IEC 62676-4:2014", 1000.0,
        next(task.density_px_m for task in catalogue.tasks if task.name == "inspect"), 0.0, "the standard's figure",
        "from memory",
    )  # fmt: skip
    yield Row(
        "density to scrutinise, edition of 2025 [px/m]", "IEC 62676-4:2025, as an association says", 1500.0,
        next(task.density_px_m for task in catalogue.tasks if task.name == "scrutinise"), 0.0,
        "the standard's figure", "published",
    )  # fmt: skip


def general_matrix(lens: Lens) -> np.ndarray:
    """A 3 x 4 camera matrix K [R | -R c] of homogeneous coordinates, built of rotations about fixed axes."""
    yaw, pitch = lens.heading, -lens.tilt
    about_z = np.array([[math.cos(yaw), -math.sin(yaw), 0], [math.sin(yaw), math.cos(yaw), 0], [0, 0, 1]])
    about_y = np.array(
        [[math.cos(pitch), 0, -math.sin(pitch)], [0, 1, 0], [math.sin(pitch), 0, math.cos(pitch)]]
    )
    # The camera looks along its x; a picture has x to the right, y down, z ahead.
    turned = np.array([[0, -1, 0], [0, 0, -1], [1, 0, 0]]) @ (about_z @ about_y).T
    focal = lens.across / 2 / math.tan(lens.angle / 2)
    inner = np.array([[focal, 0, lens.across / 2], [0, focal, lens.down / 2], [0, 0, 1]])
    return inner @ np.hstack([turned, -turned @ np.asarray(lens.eye)[:, None]])


def _matrix() -> Iterator[Row]:
    draw = np.random.default_rng(5)
    lens = Lens((1.0, -2.0, 3.1), math.radians(37.0), math.radians(21.0), 2688, 1520, math.radians(84.0))
    points = draw.uniform(-12.0, 12.0, size=(4000, 3))
    picture = drawn(lens, points)
    u, v, w = general_matrix(lens) @ np.column_stack([points, np.ones(len(points))]).T
    is_before = w > 0.05
    off = np.hypot(
        picture.across[is_before] * lens.across - u[is_before] / w[is_before],
        picture.down[is_before] * lens.down - v[is_before] / w[is_before],
    )
    source = "a 3 x 4 matrix of homogeneous coordinates, 4000 points about a camera that looks down"
    yield Row(
        "largest distance in the picture from where a general matrix draws a point [-]", source, 0.0,
        float(off.max()) / lens.across, 1e-9, "both are exact, but for rounding", "reference tool",
    )  # fmt: skip
    inside = (w > 0) & (u / w >= 0) & (u / w <= lens.across) & (v / w >= 0) & (v / w <= lens.down)
    yield Row(
        "share of those points that both or neither have in the picture [-]", source, 1.0,
        float((inside == picture.is_in).mean()), 1e-9, "both are exact", "reference tool",
    )  # fmt: skip

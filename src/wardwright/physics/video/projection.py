"""Where points of a scene come to lie in a picture, and how densely they are drawn there."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.physics.video.density import WIDEST_PINHOLE, focal_px

HAIR = 1e-9
"""What lies on the very edge of a picture is in it, whatever rounding makes of it. [-]"""


class Lens(NamedTuple):
    """A camera as it hangs."""

    eye: tuple[float, float, float]
    """x, y and height above the house's zero. [m]"""
    heading: float
    """Anticlockwise from the plan's x axis. [rad]"""
    tilt: float
    """Below level. [rad]"""
    across: int
    """Picture elements across. [px]"""
    down: int
    """Picture elements from top to bottom. [px]"""
    angle: float
    """The whole angle across. [rad]"""


class Drawn(NamedTuple):
    """Points in a picture."""

    across: FloatArray
    """From the picture's left edge as a share of its width; nan behind the camera. [-]"""
    down: FloatArray
    """From its upper edge as a share of its height. [-]"""
    is_in: BoolArray
    """Whether a point lies within the picture."""
    width_density: FloatArray
    """On a thing square to the view. [px/m]"""
    height_density: FloatArray
    """On an upright thing, from its head to its foot. [px/m]"""
    depression: FloatArray
    """Of the ray to each point below level. [rad]"""


def axes_of(lens: Lens) -> FloatArray:
    """The camera's own axes: to the right, down, and along the view.

    Parameters
    ----------
    lens : Lens
        The camera.

    Returns
    -------
    ndarray, shape (3, 3)
        One unit vector a row. [-]
    """
    turn, lift = (math.cos(lens.heading), math.sin(lens.heading)), (math.cos(lens.tilt), math.sin(lens.tilt))
    along = np.array([turn[0] * lift[0], turn[1] * lift[0], -lift[1]])
    right = np.array([turn[1], -turn[0], 0.0])
    return np.stack([right, np.cross(along, right), along])


def drawn(lens: Lens, points: ArrayLike) -> Drawn:
    """Draw points as a camera does.

    Parameters
    ----------
    lens : Lens
        The camera: a pinhole up to 90 degrees across, beyond that a lens that draws angles evenly.
    points : array_like, shape (n, 3)
        Of the scene, above the house's zero. [m]

    Returns
    -------
    Drawn
        Nothing is asked about what stands in the way.
    """
    rays = np.asarray(points, dtype=np.float64).reshape(-1, 3) - np.asarray(lens.eye)
    own = rays @ axes_of(lens).T
    depth, length = own[:, 2], np.maximum(np.linalg.norm(rays, axis=1), 1e-9)
    focal = focal_px(lens.across, lens.angle)
    aside = np.hypot(own[:, 0], own[:, 1])
    with np.errstate(divide="ignore", invalid="ignore"):
        if lens.angle <= WIDEST_PINHOLE:
            is_before = depth > 1e-9
            spread = np.where(is_before, focal / depth, np.nan)
            width = spread
        else:
            off = np.arctan2(aside, depth)
            is_before = off < math.pi - 1e-6
            spread = np.where(aside > 1e-12, focal * off / aside, focal / length)
            width = focal / length
    u = 0.5 + spread * own[:, 0] / lens.across
    v = 0.5 + spread * own[:, 1] / lens.down
    depression = np.arcsin(np.clip(-rays[:, 2] / length, -1.0, 1.0))
    with np.errstate(invalid="ignore"):
        is_in = is_before & (np.abs(u - 0.5) <= 0.5 + HAIR) & (np.abs(v - 0.5) <= 0.5 + HAIR)
    return Drawn(u, v, is_in, width, width * np.cos(depression), depression)

"""How many picture elements there are to a metre, and how wide a scene is."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray

WIDEST_PINHOLE = math.radians(90.0)
"""Up to this angle a lens draws straight lines straight; wider ones are taken to draw angles evenly. [rad]"""


def scene_size(distance: ArrayLike, chip: ArrayLike, focal: float) -> FloatArray:
    """Width or height of a scene square to the view.

    Parameters
    ----------
    distance : array_like, shape (...)
        Along the view. [m]
    chip : array_like, shape (...)
        Width or height of the chip. [m]
    focal : float
        Focal length. [m]

    Returns
    -------
    ndarray, shape (...)
        Of the scene. [m]

    Examples
    --------
    >>> scene_size(16.0, [8.8e-3, 6.6e-3], 25e-3).round(2).tolist()
    [5.63, 4.22]
    """
    found: FloatArray = np.asarray(distance, dtype=np.float64) * np.asarray(chip) / focal
    return found


def lens_angle(chip: float, focal: float) -> float:
    """The whole angle that a lens sees across a chip.

    Parameters
    ----------
    chip : float
        Its width or height. [m]
    focal : float
        Focal length. [m]

    Returns
    -------
    float
        The whole angle. [rad]

    Examples
    --------
    >>> round(math.degrees(lens_angle(5.37e-3, 2.8e-3)), 2)
    87.6
    """
    return 2.0 * math.atan(chip / (2.0 * focal))


def focal_px(across: int, angle: float) -> float:
    """Focal length in picture elements.

    Parameters
    ----------
    across : int
        Picture elements across. [px]
    angle : float
        The whole angle across. [rad]

    Returns
    -------
    float
        Of a pinhole up to 90 degrees, beyond that of a lens that draws angles evenly. [px]
    """
    return across / (2.0 * math.tan(angle / 2.0)) if angle <= WIDEST_PINHOLE else across / angle


def pixels_per_metre(distance: ArrayLike, across: int, angle: float) -> FloatArray:
    """Density at a distance along the view.

    Parameters
    ----------
    distance : array_like, shape (...)
        Along the view axis. [m]
    across : int
        Picture elements across. [px]
    angle : float
        The whole angle across. [rad]

    Returns
    -------
    ndarray, shape (...)
        On a thing square to the view. [px/m]

    Examples
    --------
    >>> round(float(pixels_per_metre(3.84, 1920, math.radians(90.0))), 1)
    250.0
    """
    found: FloatArray = focal_px(across, angle) / np.asarray(distance, dtype=np.float64)
    return found


def distance_of(density: ArrayLike, across: int, angle: float) -> FloatArray:
    """How far along the view a density reaches.

    Parameters
    ----------
    density : array_like, shape (...)
        Asked for. [px/m]
    across : int
        Picture elements across. [px]
    angle : float
        The whole angle across. [rad]

    Returns
    -------
    ndarray, shape (...)
        Along the view axis. [m]

    Examples
    --------
    >>> distance_of([250.0, 125.0], 1920, lens_angle(5.37e-3, 4e-3)).round(2).tolist()
    [5.72, 11.44]
    """
    found: FloatArray = focal_px(across, angle) / np.asarray(density, dtype=np.float64)
    return found


def lamp_reach(reach: ArrayLike, power: ArrayLike) -> FloatArray:
    """How far a lamp of the camera carries when its power is changed.

    Its light on a thing falls with the square of the distance.

    Parameters
    ----------
    reach : array_like, shape (...)
        As it is. [m]
    power : array_like, shape (...)
        The new power as a share of the old. [-]

    Returns
    -------
    ndarray, shape (...)
        With the new power. [m]

    Examples
    --------
    >>> lamp_reach(10.0, [4.0, 0.5]).round(2).tolist()
    [20.0, 7.07]
    """
    found: FloatArray = np.asarray(reach, dtype=np.float64) * np.sqrt(power)
    return found


def floor_band(height: float, tilt: float, angle: float) -> tuple[float, float]:
    """From where to where a camera sees the floor on its middle line.

    Parameters
    ----------
    height : float
        Of the camera above the floor. [m]
    tilt : float
        Of its view below level. [rad]
    angle : float
        The whole angle from top to bottom. [rad]

    Returns
    -------
    near, far : tuple of float
        On the floor from below the camera; `far` is infinite where the upper edge does not look down. [m]

    Examples
    --------
    >>> [round(one, 3) for one in floor_band(2.7, math.radians(35.0), math.radians(40.0))]
    [1.891, 10.077]
    """
    low, high = tilt + angle / 2.0, tilt - angle / 2.0
    near = 0.0 if low >= math.pi / 2.0 else math.inf if low <= 0.0 else height / math.tan(low)
    far = height / math.tan(high) if high > 1e-12 else math.inf
    return near, far

"""One beam through one opening: incidence, profile angle, the lit patch of a level floor."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike

from wardwright.errors import GeometryError
from wardwright.geometry.raster import FloatArray


def incidence(elevation: ArrayLike, azimuth: ArrayLike, *, tilt: float, facing: float) -> FloatArray:
    """The angle between the sun and the normal of a plane.

    Parameters
    ----------
    elevation : array_like
        Of the sun. [rad]
    azimuth : array_like
        Of the sun, from true north, clockwise. [rad]
    tilt : float
        Of the plane from level; pi / 2 for a wall. [rad]
    facing : float
        Azimuth of its normal, from true north, clockwise. [rad]

    Returns
    -------
    ndarray
        0 straight on, above pi / 2 from behind. [rad]

    Examples
    --------
    >>> round(float(incidence(math.pi / 6, math.pi, tilt=math.pi / 2, facing=math.pi)), 4)
    0.5236
    """
    high, turn = np.asarray(elevation), np.asarray(azimuth) - facing
    cosine = np.sin(high) * math.cos(tilt) + np.cos(high) * math.sin(tilt) * np.cos(turn)
    return np.asarray(np.arccos(np.clip(cosine, -1.0, 1.0)))


def profile_angle(elevation: ArrayLike, azimuth: ArrayLike, *, facing: float) -> FloatArray:
    """How steeply the sun seems to stand in a cut straight through a wall.

    Parameters
    ----------
    elevation : array_like
        Of the sun. [rad]
    azimuth : array_like
        Of the sun, from true north, clockwise. [rad]
    facing : float
        Azimuth of the wall's normal, from true north, clockwise. [rad]

    Returns
    -------
    ndarray
        nan where the sun is behind the wall. [rad]

    Examples
    --------
    >>> round(math.degrees(profile_angle(math.pi / 6, math.pi, facing=math.pi)), 3)
    30.0
    """
    toward = np.cos(np.asarray(azimuth) - facing)
    with np.errstate(divide="ignore", invalid="ignore"):
        steep = np.arctan2(np.tan(np.asarray(elevation)), toward)
    return np.where(toward > 1e-12, steep, np.nan)


def lit_band(profile: ArrayLike, *, sill: float, head: float) -> tuple[FloatArray, FloatArray]:
    """From where to where the floor behind a window is lit, measured from the wall.

    Parameters
    ----------
    profile : array_like
        From `profile_angle`. [rad]
    sill : float
        Lower edge of the glass above the floor. [m]
    head : float
        Upper edge of the glass above the floor. [m]

    Returns
    -------
    tuple of ndarray
        Nearest and farthest. [m]

    Examples
    --------
    >>> [round(float(edge), 2) for edge in lit_band(math.radians(30.0), sill=0.9, head=2.1)]
    [1.56, 3.64]
    """
    flat = 1.0 / np.tan(np.asarray(profile, dtype=np.float64))
    return sill * flat, head * flat


def sunlit_patch(opening: ArrayLike, to_sun: ArrayLike, *, floor_z: float) -> FloatArray | None:
    """Where the sun through one opening lands on one level floor.

    Parallel light: the patch is the opening moved along the beam. Only this opening is considered.

    Parameters
    ----------
    opening : array_like, shape (N, 3)
        Corners of the glass, anticlockwise seen from outside, N >= 3. [m]
    to_sun : array_like, shape (3,)
        Unit vector from the house to the sun; x, y, up. [-]
    floor_z : float
        Height of the floor, below every corner of the glass. [m]

    Returns
    -------
    ndarray, shape (N, 3), or None
        Corners of the patch in the order of `opening`. [m]
        None when the sun is below the horizon or behind the wall: no patch is not a patch of no area.

    Raises
    ------
    GeometryError
        If a corner of the glass is not above `floor_z`.

    Notes
    -----
    Derived here.

    Examples
    --------
    A south window, sill 0.9 m, head 2.1 m, sun due south at 30 degrees:

    >>> glass = [(0, 0, 0.9), (1.2, 0, 0.9), (1.2, 0, 2.1), (0, 0, 2.1)]
    >>> patch = sunlit_patch(glass, (0.0, -0.8660254, 0.5), floor_z=0.0)
    >>> patch[:, 1].round(2).tolist()
    [1.56, 1.56, 3.64, 3.64]
    """
    corners = np.asarray(opening, dtype=np.float64)
    sun = np.asarray(to_sun, dtype=np.float64)
    if (corners[:, 2] <= floor_z).any():
        raise GeometryError(f"a corner of the glass is not above the floor at {floor_z:g} m")
    outward = np.cross(corners[1] - corners[0], corners[2] - corners[1])
    if sun[2] <= 0.0 or float(outward @ sun) <= 0.0:
        return None
    drop = (corners[:, 2] - floor_z) / sun[2]
    return np.asarray(corners - drop[:, None] * sun)

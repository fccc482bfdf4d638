"""What a wall of one layer or several takes from a radio level that goes through it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from wardwright.geometry.raster import FloatArray
from wardwright.physics.constants import LIGHT_M_S, VACUUM_F_M

Polarisation = Literal["electric", "magnetic"]
POLARISATIONS: tuple[Polarisation, Polarisation] = ("electric", "magnetic")
SPREAD = 0.15
"""Thickness is never known closer than this share of itself. [-] (assumption)"""
THICKNESSES, ANGLES = 61, 31
"""How many thicknesses and angles a smoothed loss is the mean over. [-]"""
WIDEST_RAD = np.pi / 3.0
"""Beyond 60 degrees off the wall's normal, real paths go another way. [rad] (assumption)"""
DB_PER_NEPER = 20.0 / np.log(10.0)

ComplexArray = NDArray[np.complex128]


class Layer(NamedTuple):
    """One layer of a wall: real permittivity and conductivity at the frequency in hand, and thickness."""

    thickness: float
    permittivity: float
    conductivity: float


def at_frequency(first: ArrayLike, power: ArrayLike, *, frequency: float) -> FloatArray:
    """A property of a material that follows a power of the frequency.

    Parameters
    ----------
    first : array_like, shape (...)
        Its value at 1 GHz, in its own unit. [-]
    power : array_like, shape (...)
        The power of the frequency in GHz. [-]
    frequency : float
        Carrier frequency. [Hz]

    Returns
    -------
    ndarray, shape (...)
        The property, in its own unit. [-]

    References
    ----------
    .. [1] Recommendation ITU-R P.2040, "Effects of building materials and structures on radiowave propagation above
       about 100 MHz", section on material parameters.
    """
    return np.asarray(np.asarray(first) * (frequency / 1e9) ** np.asarray(power), dtype=np.float64)


def layered_loss(
    layers: Sequence[Layer],
    frequency: float,
    *,
    incidence: ArrayLike = 0.0,
    stretch: ArrayLike = 1.0,
    polarisation: Polarisation = "electric",
) -> FloatArray:
    """Loss of a plane wave through flat layers with air on both sides.

    One layer gives the slab formula of the Recommendation; several are joined from the far side to the near one, so
    that a layer of metal only adds a large number and nothing overflows.

    Parameters
    ----------
    layers : sequence of Layer
        First met first. Their order does not matter for the loss through them all. [m]
    frequency : float
        Carrier frequency. [Hz]
    incidence : array_like, shape (...), default 0
        Off the wall's normal, below a right angle. [rad]
    stretch : array_like, shape (...), default 1
        All thicknesses are multiplied by it. [-]
    polarisation : {"electric", "magnetic"}, default "electric"
        Which of the fields lies in the wall's plane.

    Returns
    -------
    ndarray, shape (...)
        Transmission loss; a little below zero is possible where layers resonate. [dB]

    References
    ----------
    .. [1] Recommendation ITU-R P.2040-4, sections on the single-layer slab and on multi-layer slabs.

    Examples
    --------
    >>> brick = Layer(0.102, 3.91, 0.0238 * 0.868**0.16)
    >>> round(float(layered_loss([brick], 868.0e6)), 3)
    2.771
    """
    return _waves(layers, frequency, incidence=incidence, stretch=stretch, polarisation=polarisation)[0]


def layered_reflection(
    layers: Sequence[Layer],
    frequency: float,
    *,
    incidence: ArrayLike = 0.0,
    polarisation: Polarisation = "electric",
) -> FloatArray:
    """How far below the wave that arrives is the one that is thrown back by flat layers.

    Parameters
    ----------
    layers : sequence of Layer
        First met first. [m]
    frequency : float
        Carrier frequency. [Hz]
    incidence : array_like, shape (...), default 0
        Off the wall's normal, below a right angle. [rad]
    polarisation : {"electric", "magnetic"}, default "electric"
        Which of the fields lies in the wall's plane.

    Returns
    -------
    ndarray, shape (...)
        Reflection loss, never below zero. [dB]
    """
    _, back = _waves(layers, frequency, incidence=incidence, stretch=1.0, polarisation=polarisation)
    return np.asarray(-DB_PER_NEPER * np.log(np.abs(back)), dtype=np.float64)


def _waves(
    layers: Sequence[Layer],
    frequency: float,
    *,
    incidence: ArrayLike,
    stretch: ArrayLike,
    polarisation: Polarisation,
) -> tuple[FloatArray, ComplexArray]:
    """Loss of what goes through, and the share of the field that comes back."""
    angle, more = np.broadcast_arrays(
        np.asarray(incidence, dtype=np.float64), np.asarray(stretch, dtype=np.float64)
    )
    sine = np.sin(angle) ** 2
    eta = [
        one.permittivity - 1j * one.conductivity / (2.0 * np.pi * frequency * VACUUM_F_M) for one in layers
    ]
    media: list[tuple[complex, float]] = [(1.0 + 0j, 0.0)]
    media += [(complex(e), one.thickness) for e, one in zip(eta, layers, strict=True)]
    media.append((1.0 + 0j, 0.0))
    across = [np.sqrt(e - sine + 0j) for e, _ in media]
    admittance = [s if polarisation == "electric" else e / s for (e, _), s in zip(media, across, strict=True)]
    loss = np.zeros(angle.shape)
    beyond: ComplexArray = np.zeros(angle.shape, dtype=np.complex128)
    for j in range(len(media) - 2, -1, -1):
        r = (admittance[j] - admittance[j + 1]) / (admittance[j] + admittance[j + 1])
        q = 2.0 * np.pi * frequency / LIGHT_M_S * media[j + 1][1] * more * across[j + 1]
        there_and_back = np.exp(-2j * q)
        whole = 1.0 + r * beyond * there_and_back
        loss += DB_PER_NEPER * (-q.imag - np.log(np.abs(1.0 + r)) + np.log(np.abs(whole)))
        beyond = (r + beyond * there_and_back) / whole
    return loss, beyond


def smoothed_loss(
    layers: Sequence[Layer], frequency: float, *, incidence: ArrayLike | None = None
) -> FloatArray:
    """Loss through layers whose thickness is known to a share only: the mean power of both polarisations.

    Parameters
    ----------
    layers : sequence of Layer
        First met first. [m]
    frequency : float
        Carrier frequency. [Hz]
    incidence : array_like, shape (N,), optional
        Off the wall's normal, taken as 60 degrees beyond it; left out: the mean over 0 to 60 degrees. [rad]

    Returns
    -------
    ndarray, shape (N,) or ()
        Transmission loss of the mean power over thicknesses 15 % either way. [dB]

    Notes
    -----
    Derived here: the mean is over power, since a level on site is one too.
    """
    stretch = np.linspace(1.0 - SPREAD, 1.0 + SPREAD, THICKNESSES)
    if incidence is None:
        angles = np.linspace(0.0, WIDEST_RAD, ANGLES)
    else:
        angles = np.minimum(np.abs(np.asarray(incidence, dtype=np.float64)), WIDEST_RAD)
    losses = np.stack(
        [
            layered_loss(
                layers, frequency, incidence=angles[..., None], stretch=stretch, polarisation=polarisation
            )
            for polarisation in POLARISATIONS
        ]
    )
    over = (0, -2, -1) if incidence is None else (0, -1)
    return np.asarray(-10.0 * np.log10(np.mean(10.0 ** (-losses / 10.0), axis=over)), dtype=np.float64)

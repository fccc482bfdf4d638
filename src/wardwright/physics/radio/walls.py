"""What a wall takes: judged for its class, put right by the slab formula for its build, the band and the angle."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.physics.radio.paths import ANGLES_RAD
from wardwright.physics.radio.slab import Layer, at_frequency, smoothed_loss

JUDGED_AT_HZ = 868.3e6
"""The carrier that the losses of the catalogue are judged for. [Hz]"""
LEAST_SHARE = 0.3
"""However thin a wall is, it takes this share of what its class takes. [-] (assumption)"""
MOST_DB = 40.0
"""Beyond this, real paths go round. [dB] (common practice: 30 to 40 dB)"""

LayersAt = Callable[[float], Sequence[Layer]]
"""The layers of a build at a frequency."""

Properties = Mapping[str, tuple[tuple[float, float], tuple[float, float]]]
"""Of each material, permittivity and conductivity: each at 1 GHz, and the power of the frequency that it follows."""


def layers_by(properties: Properties) -> Callable[[tuple[tuple[str, float], ...]], LayersAt]:
    """A maker of layers at any frequency.

    Parameters
    ----------
    properties : mapping
        Of each material; what has none counts as air.

    Returns
    -------
    callable
        Takes materials and thicknesses [m], and gives the layers at a frequency.
    """

    def layer(name: str, thickness: float, *, frequency: float) -> Layer:
        real, lossy = (
            float(at_frequency(first, power, frequency=frequency))
            for first, power in properties.get(name, ((1.0, 0.0), (0.0, 0.0)))
        )
        return Layer(thickness, real, lossy)

    def of(build: tuple[tuple[str, float], ...]) -> LayersAt:
        return lambda frequency: [layer(name, thick, frequency=frequency) for name, thick in build]

    return of


def wall_losses(
    judged: float, build: LayersAt | None, usual: LayersAt | None, *, frequency: float
) -> FloatArray:
    """What one wall of a class takes, at each of the angles of `ANGLES_RAD`.

    Published figures lie far apart: what the slab formula gives is too little for whole walls, what a few houses gave
    differs by ten decibels. So the level of the loss is judged, and only the difference that the build, the band and
    the angle make is taken from the formula.

    Parameters
    ----------
    judged : float
        What a wall of the class takes at 868 MHz. [dB]
    build : callable or None
        Its own layers at a frequency; None: not known, so that the class alone counts.
    usual : callable or None
        The layers that the class was judged for; None: neither build nor band is told apart.
    frequency : float
        Carrier frequency. [Hz]

    Returns
    -------
    ndarray, shape (5,)
        Never below a third of what was judged, nor above what paths round it would take. [dB]

    Notes
    -----
    Derived here.
    """
    own = build or usual
    if own is None or usual is None:
        return np.full(len(ANGLES_RAD), min(judged, MOST_DB))
    here = smoothed_loss(own(frequency), frequency, incidence=ANGLES_RAD)
    there = float(smoothed_loss(usual(JUDGED_AT_HZ), JUDGED_AT_HZ))
    return np.clip(judged + here - there, LEAST_SHARE * judged, MOST_DB)

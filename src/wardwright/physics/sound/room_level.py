"""The level in the room that a sounder is in."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

from wardwright.geometry.raster import FloatArray


def room_constant(surface: float, absorption: ArrayLike) -> FloatArray:
    """How readily a room swallows sound that has met its walls once.

    Parameters
    ----------
    surface : float
        Total inner surface of the room. [m2]
    absorption : array_like, shape (F,)
        Mean absorption coefficient, in (0, 1). [-]

    Returns
    -------
    ndarray, shape (F,)
        Room constant. [m2]

    Raises
    ------
    ValueError
        If a coefficient is not inside (0, 1).

    References
    ----------
    .. [1] L. L. Beranek, "Acoustics", McGraw-Hill, 1954: the room constant.

    Examples
    --------
    >>> room_constant(85.0, [0.1]).round(3).tolist()
    [9.444]
    """
    mean = np.asarray(absorption, dtype=np.float64)
    if not ((mean > 0.0) & (mean < 1.0)).all():
        raise ValueError(
            f"an absorption coefficient of {mean.min():g} to {mean.max():g} is not inside (0, 1)"
        )
    return np.asarray(surface * mean / (1.0 - mean), dtype=np.float64)


def level_in_room(
    power_level: ArrayLike,
    distance: ArrayLike,
    *,
    surface: float,
    absorption: ArrayLike,
    directivity: float = 1.0,
) -> FloatArray:
    """Steady sound level in one room from one sounder in that room.

    Adds the direct sound, which falls with distance, to the diffuse sound, which does not. Fits ordinary furnished
    rooms. It is too high in long corridors and says nothing about the next room: use `level_through` or a network.

    Parameters
    ----------
    power_level : array_like, shape (F,)
        Sound power level of the sounder per octave band. [dB re 1 pW]
    distance : array_like, shape (P,)
        From the sounder to each listening point. [m]
    surface : float
        Total inner surface of the room: walls, floor and ceiling. [m2]
    absorption : array_like, shape (F,)
        Mean absorption coefficient per octave band, in (0, 1). [-]
    directivity : float, default 1.0
        2 on a wall, 4 in an edge, 8 in a corner. [-]

    Returns
    -------
    ndarray, shape (P, F)
        Sound pressure level. [dB re 20 uPa]

    Raises
    ------
    ValueError
        If an absorption coefficient is not inside (0, 1), or the two band axes differ in length.

    References
    ----------
    .. [1] H. F. Hopkins and N. R. Stryker, "A proposed loudness-efficiency rating for loud-speakers and the
       determination of system power requirements for enclosures", Proc. IRE, vol. 36, no. 3, pp. 315-335, Mar. 1948.

    Examples
    --------
    >>> level_in_room([110.0], [0.5, 3.0], surface=83.2, absorption=[0.2]).round(1).tolist()
    [[107.1], [103.0]]
    """
    power = np.asarray(power_level, dtype=np.float64)
    constant = room_constant(surface, absorption)
    if power.shape != constant.shape:
        raise ValueError(f"{power.size} bands of power beside {constant.size} of absorption")
    away = np.asarray(distance, dtype=np.float64)[:, None]
    return np.asarray(power + 10.0 * np.log10(directivity / (4.0 * np.pi * away**2) + 4.0 / constant))


def equal_fields_distance(surface: float, absorption: ArrayLike, *, directivity: float = 1.0) -> FloatArray:
    """Where the direct sound is as strong as the diffuse sound.

    Parameters
    ----------
    surface : float
        Total inner surface of the room. [m2]
    absorption : array_like, shape (F,)
        Mean absorption coefficient, in (0, 1). [-]
    directivity : float, default 1.0
        2 on a wall, 4 in an edge, 8 in a corner. [-]

    Returns
    -------
    ndarray, shape (F,)
        Distance from the sounder. [m]

    Examples
    --------
    >>> equal_fields_distance(85.0, [0.1], directivity=2.0).round(3).tolist()
    [0.613]
    """
    return np.asarray(np.sqrt(directivity * room_constant(surface, absorption) / (16.0 * np.pi)))

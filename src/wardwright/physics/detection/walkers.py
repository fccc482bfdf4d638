"""Who walks: bodies by posture."""

from __future__ import annotations

from typing import Literal, NamedTuple

BODY_RADIUS_M = 0.22
"""Half a person's width. [m] (the figure `body-radius`)"""
HEIGHTS_M = {"upright": 1.75, "crouch": 1.1, "crawl": 0.6, "pet": 0.5}
"""Height by posture. [m] (the figures `body-height` and `crawl-height`; crouching and a middling dog: assumption)"""
PET_RADIUS_M = 0.15
"""Half a pet's width. [m] (assumption)"""

Posture = Literal["upright", "crouch", "crawl", "pet"]


class Body(NamedTuple):
    """A walker as an upright cylinder."""

    radius: float
    """[m]"""
    height: float
    """[m]"""


def body_of(posture: Posture) -> Body:
    """The body that goes in a posture.

    Parameters
    ----------
    posture : {"upright", "crouch", "crawl", "pet"}
        How it goes.

    Returns
    -------
    Body
        Its radius and height.
    """
    return Body(PET_RADIUS_M if posture == "pet" else BODY_RADIUS_M, HEIGHTS_M[posture])

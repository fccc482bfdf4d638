"""The time in hand of a race: of the message, of the sounder, and the lesser of both."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.trials.draws import estimate_of, percentiles
from wardwright.trials.likely_race import LikelyRace
from wardwright.trials.race import Race
from wardwright.trials.timely import Need


def time_in_hand(one: Race, catalogue: Catalogue) -> dict[Need, FloatArray]:
    """How much earlier the message leaves than the unit is broken, the sounder starts than it is reached. [s]

    What never comes counts as late by an intruder's stay.
    """
    stay = catalogue.figure("stay").value
    hand: dict[Need, FloatArray] = {"message": np.maximum(one.broken - one.message, -stay)}
    if one.sounder is not None:
        hand["sounder"] = np.maximum(one.reached - one.sounder, -stay)
    return hand


@lru_cache(maxsize=256)
def least_hand(one: Race, catalogue: Catalogue) -> FloatArray:
    """The lesser of both times in hand in every row: a design has to meet both needs; not to be written to. [s]"""
    least: FloatArray = np.minimum.reduce(list(time_in_hand(one, catalogue).values()))
    return least


@lru_cache(maxsize=256)
def hand_estimate(one: Race, catalogue: Catalogue) -> Estimate:
    """The lesser of both times in hand, summed up over all rows. [s]"""
    return estimate_of(least_hand(one, catalogue), one.cases, unit="s")


def likely_hand(one: LikelyRace, catalogue: Catalogue) -> float:
    """The lesser of both times in hand in the likely case. [s]"""
    hand = one.broken - one.message
    if one.sounder is not None:
        hand = min(hand, one.reached - one.sounder)
    return max(hand, -catalogue.figure("stay").value)


@lru_cache(maxsize=256)
def deciding(one: Race, catalogue: Catalogue) -> Need:
    """The need with less time in hand: in the likely case, and where that is equal, at the low end."""
    hand = time_in_hand(one, catalogue)
    return min(
        hand,
        key=lambda need: (round(float(hand[need][0]), 3), percentiles(np.sort(hand[need]), (0.05,)), need),
    )


def worst_of(races: Sequence[Race], catalogue: Catalogue) -> Race:
    """The race with the least time in hand in the likely case, of all manners of one way in."""
    return min(races, key=lambda one: (float(least_hand(one, catalogue)[0]), one.way.manner))

"""Whether an upper opening is out of reach, or noticed at once where it is not."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.opening import Opening
from wardwright.model.record import BASES
from wardwright.model.site import Site
from wardwright.questions.answer import Verdict
from wardwright.rules.at_the_opening import notices_at_the_opening
from wardwright.trials.alarm import Heard
from wardwright.trials.climbs import LIMIT_FIGURES, climb_to, short_in, usual_limits
from wardwright.trials.draws import Input, cases_of, estimate_of
from wardwright.trials.footholds import footholds
from wardwright.trials.ways_in import WayIn, ways_in


def judged(house: Site, catalogue: Catalogue, opening: Opening, *, heard: Heard) -> Verdict:
    """The verdict about one opening of a house that is changed, or with other devices."""
    ways = tuple(one for one in ways_in(house, catalogue)[0] if one.opening.id == opening.id)
    return verdict_of(house, catalogue, reach_estimate(house, catalogue, opening), ways=ways, heard=heard)


def verdict_of(
    house: Site, catalogue: Catalogue, out_of_reach: Estimate, *, ways: tuple[WayIn, ...], heard: Heard
) -> Verdict:
    """Whether an opening is out of reach, or noticed at once by all manners of coming in.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets.
    out_of_reach : Estimate
        The deciding number. [m]
    ways : tuple of WayIn
        The manners in which it is come through where it is reached.
    heard : tuple of (Device, Behaviour)
        The devices that alarm.

    Returns
    -------
    str
        `bad`: reached, and come through in a manner that nothing notices there. `thin`: reached by the nimble only,
        or noticed in some manners; or nobody has said what stands outside, so that nothing is known to be climbed.
    """
    if out_of_reach.value > 0.0:
        return "good" if out_of_reach.low > 0.0 and is_outside_told(house) else "thin"
    if not ways:
        return "good"
    noticed = [
        any(
            notices_at_the_opening(house, catalogue, device, opening=way.opening, manner=way.manner)
            for device, _ in heard
        )
        for way in ways
    ]
    return "good" if all(noticed) else "thin" if any(noticed) else "bad"


def is_outside_told(house: Site) -> bool:
    """Whether somebody has said what stands outside, if only that nothing does."""
    return house.ground.basis_of("things") != "default"


@lru_cache(maxsize=512)
def reach_estimate(house: Site, catalogue: Catalogue, opening: Opening) -> Estimate:
    """How far the hardest step of the easiest climb is out of reach; below zero it is made. [m]"""
    cases = cases_of(tuple(figure_input(catalogue, name) for name in LIMIT_FIGURES))
    limits: FloatArray = np.stack([cases.rows[name] for name in LIMIT_FIGURES], axis=1)
    found = estimate_of(short_in(house, opening, limits), cases, unit="m")
    names = {step.thing for step in climb_to(house, opening, usual_limits(catalogue)).steps if step.thing}
    known = [one.basis for one in footholds(house) if one.thing in names] + [opening.basis_of("sill_m")]
    return found.model_copy(update={"basis": max((found.basis, *known), key=BASES.index)})


def figure_input(catalogue: Catalogue, name: str) -> Input:
    """A figure of a climb as an input of draws."""
    figure = catalogue.figure(name)
    return Input(name, figure.name, figure, "default")

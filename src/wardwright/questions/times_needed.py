"""What entry and exit time a household needs at one door, and how that stands to what is programmed."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import Literal, NamedTuple

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.household import Person
from wardwright.model.limits import Limit
from wardwright.model.place import Place
from wardwright.questions.answer import Verdict
from wardwright.trials.draws import Cases, estimate_of, share_met
from wardwright.trials.trips import Legs, taken

SPARE = 0.3
"""What is to be left over, as a share of the time taken. [-] (common practice)"""
STEP_S = 5.0
"""Times are programmed in steps of this. [s] (common practice)"""

Which = Literal["entry", "exit"]


class Needed(NamedTuple):
    """One of the two times at one door."""

    which: Which
    slowest: Person
    estimate: Estimate
    """The time needed: what the slowest takes, and the spare. [s]"""
    each: tuple[tuple[Person, Estimate], ...]
    """What each person takes, without spare, by id. [s]"""
    programmed_s: float
    left: Estimate
    """What is left of the programmed time when the slowest is done. [s]"""
    chance: float
    """Share of the draws in which the slowest is done in time. [-]"""
    verdict: Verdict
    advised_s: float
    """The shortest time in steps that would be good, within the limits of the place. [s]"""
    beyond: Limit | None
    """The limit that the time needed goes beyond."""
    broken: Limit | None
    """The limit that the programmed time does not keep."""


@lru_cache(maxsize=512)
def needed(
    catalogue: Catalogue,
    legs: Legs,
    people: tuple[Person, ...],
    *,
    which: Which,
    programmed_s: float,
    place: Place,
) -> Needed:
    """Work out one of the two times.

    Parameters
    ----------
    catalogue : Catalogue
        Figures and limits.
    legs : Legs
        What is walked between the door and the keypad.
    people : tuple of Person
        Who uses the alarm; at least one.
    which : {"entry", "exit"}
        Coming or leaving.
    programmed_s : float
        What the control unit is told. [s]
    place : Place
        Says which limits hold.

    Returns
    -------
    Needed
        `good`: 95 in 100 draws of the slowest are done in time, and the likely one leaves the spare. `thin`: only
        the likely one does, or a limit is not kept.
    """
    all_taken = [taken(catalogue, legs, person) for person in people]

    def times(i: int) -> FloatArray:
        return all_taken[i].arriving if which == "entry" else all_taken[i].leaving

    worst = max(range(len(people)), key=lambda i: (float(times(i)[0]), people[i].id))
    cases: Cases = all_taken[worst].cases
    spared = estimate_of((1.0 + SPARE) * times(worst), cases, unit="s")
    late_s = spared.high / (1.0 + SPARE)
    most, least = (_limit(catalogue, f"{which}-time-{end}", place) for end in ("most", "least"))
    advised = STEP_S * math.ceil(max(spared.value, late_s) / STEP_S - 1e-9)
    if least is not None:
        advised = max(advised, least.value)
    beyond = most if most is not None and spared.value > most.value else None
    if most is not None:
        advised = min(advised, most.value)
    broken = next(
        (
            one
            for one, is_broken in (
                (most, most is not None and programmed_s > most.value),
                (least, least is not None and programmed_s < least.value),
            )
            if is_broken
        ),
        None,
    )
    verdict: Verdict = "good"
    if late_s > programmed_s or broken is not None:
        verdict = "thin"
    if spared.value > programmed_s or beyond is not None:
        verdict = "bad"
    hand = programmed_s - times(worst)
    return Needed(
        which=which,
        slowest=people[worst],
        estimate=spared,
        each=tuple(
            (person, estimate_of(times(i), all_taken[i].cases, unit="s")) for i, person in enumerate(people)
        ),
        programmed_s=programmed_s,
        left=estimate_of(hand, cases, unit="s"),
        chance=share_met(hand, cases),
        verdict=verdict,
        advised_s=advised,
        beyond=beyond,
        broken=broken,
    )


def _limit(catalogue: Catalogue, limit_id: str, place: Place) -> Limit | None:
    return next(iter(catalogue.limits_in(limit_id, place.rule_pack, place.country)), None)

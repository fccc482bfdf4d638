"""When something happens on a trip from bed, in every row of its uncertain inputs."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.household import Person
from wardwright.trials.draws import Cases, Input, cases_of
from wardwright.trials.paces import walking_pace
from wardwright.trials.trips import CODE, DOORS, ON_STAIRS, PACE


class Walked(NamedTuple):
    """What is walked up to a moment."""

    flat: float
    """[m]"""
    stairs: float
    """[m]"""
    doors: float
    """Leaves opened. [-]"""


@lru_cache(maxsize=512)
def night_cases(catalogue: Catalogue, person: Person) -> Cases:
    """The uncertain inputs of one person's trips from bed.

    Parameters
    ----------
    catalogue : Catalogue
        Figures.
    person : Person
        Who gets up.

    Returns
    -------
    Cases
        Pace, pace on stairs, opening inside doors, entering a code.
    """
    inputs = (
        Input(
            f"{PACE} of {person.id}",
            f"pace of {person.name}",
            walking_pace(catalogue, person.pace),
            person.basis_of("pace"),
        ),
        Input(ON_STAIRS, "pace on stairs", catalogue.figure("stairs-share"), "default"),
        Input(DOORS, "opening inside doors", catalogue.figure("pass-door"), "default"),
        Input(CODE, "entering the code", catalogue.figure("code-entry"), "default"),
    )
    return cases_of(inputs)


def walked_s(catalogue: Catalogue, person: Person, walked: Walked) -> FloatArray:
    """How long somebody takes for a walk, without hurry, in every row.

    Parameters
    ----------
    catalogue : Catalogue
        Figures.
    person : Person
        Who walks.
    walked : Walked
        What is walked.

    Returns
    -------
    ndarray, shape (rows,)
        [s]
    """
    rows = night_cases(catalogue, person).rows
    pace = rows[f"{PACE} of {person.id}"]
    return walked.flat / pace + walked.stairs / (pace * rows[ON_STAIRS]) + walked.doors * rows[DOORS]

"""What a level at a pillow does not promise, and who sleeps on through it."""

from __future__ import annotations

from collections.abc import Iterable

from wardwright.model.catalogue import Catalogue
from wardwright.model.household import Person
from wardwright.model.limits import Limit
from wardwright.rules.limits import cited

LOW_TONE_HZ = 700.0
"""A tone below this is a low one, as in the trials. [Hz] (derived here: over 520 Hz, under the next octave)"""


def no_promise(catalogue: Catalogue, limit: Limit) -> str:
    """Where the figure is from, and that nobody is promised to wake."""
    where = cited(catalogue, limit)
    return f"{limit.value:g} dBA is borrowed from fire practice ({where}): no promise of waking"


def who_sleeps_on(
    catalogue: Catalogue, people: Iterable[Person], *, is_low_tone: bool = False
) -> tuple[str, ...]:
    """Facts of the people who sleep there that no level mends.

    Parameters
    ----------
    catalogue : Catalogue
        What trials of waking found.
    people : iterable of Person
        Who sleeps there.
    is_low_tone : bool, default False
        Whether what sounds has a low tone.

    Returns
    -------
    tuple of str
        One for each person and fact, and what holds for everybody last.
    """
    tone = "low" if is_low_tone else "high"
    found = []
    for person in people:
        if person.hears_badly:
            found.append(_woke(catalogue, person, f"woke-hard-of-hearing-{tone}", fact="hears badly"))
        if person.is_child:
            found.append(_woke(catalogue, person, f"woke-child-{tone}", fact="is a child"))
        if person.sleeps_heavily:
            found.append(f"{person.name} sleeps heavily: drink, medicine or habit; somebody must wake them")
    found.append("drink and some medicines make anybody harder to wake")
    return tuple(found)


def _woke(catalogue: Catalogue, person: Person, figure_id: str, *, fact: str) -> str:
    figure = catalogue.figure(figure_id)
    tone = "a low tone" if figure_id.endswith("low") else "a high tone"
    return f"{person.name} {fact}: in trials {tone} woke {figure.value:.0%} of such sleepers"

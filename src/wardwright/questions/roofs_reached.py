"""Question 14, roofs and balconies: which are reached, whatever opens onto them."""

from __future__ import annotations

from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, PartAnswer
from wardwright.trials.climbs import onto_footholds
from wardwright.trials.footholds import footholds

ROOFS = ("flat-roof", "roof", "balcony")
"""Kinds of footholds that are roofs or like them."""
MEASURE = "how far the hardest step onto the roof or balcony that is reached most easily is out of reach"
NO_FAULT = "a roof that is reached is no fault in itself: the openings above it are answered one by one"


@lru_cache(maxsize=64)
def roofs_reached(house: Site, catalogue: Catalogue, *, question: int) -> Answer | None:
    """Which roofs and balconies somebody gets onto from the ground.

    Parameters
    ----------
    house : Site
        The bare house and the ground about it.
    catalogue : Catalogue
        What a person manages in one step.
    question : int
        Its number.

    Returns
    -------
    Answer or None
        A fact about the house, so never a fault; None where there is none, or none that any step leads onto.
    """
    onto = onto_footholds(house, catalogue)
    found = [
        (
            one.name,
            Estimate(value=float(likely), low=float(low), high=float(high), unit="m", basis=one.basis),
            one.height_m,
        )
        for one, likely, low, high in zip(footholds(house), *onto, strict=True)
        if one.kind in ROOFS and not one.is_start
    ]
    if not found:
        return None
    _, easiest, _ = min(found, key=lambda one: (one[1].value, one[0]))
    reached = [f"{name} ({height:.1f} m)" for name, estimate, height in found if estimate.value <= 0.0]
    nimble = [
        f"{name} ({height:.1f} m)" for name, estimate, height in found if estimate.low <= 0.0 < estimate.value
    ]
    notes = [
        f"reached from the ground: {', '.join(reached)}" if reached else "none is reached from the ground"
    ]
    if nimble:
        notes.append(f"reached by somebody nimble or tall: {', '.join(nimble)}")
    return Answer(
        question=question,
        subject="roofs and balconies",
        subject_id="roofs",
        measure=MEASURE,
        estimate=easiest,
        verdict="good",
        parts=tuple(PartAnswer(name=f"onto {name}", estimate=estimate) for name, estimate, _ in found),
        notes=(*notes, NO_FAULT),
    )

"""Question 14: which upper windows and roofs can be reached, and how?"""

from __future__ import annotations

from functools import lru_cache

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, PartAnswer, about_the_site
from wardwright.questions.climb_mends import climb_mends
from wardwright.questions.climb_sketches import climb_sketches
from wardwright.questions.climb_verdicts import (
    figure_input,
    is_outside_told,
    reach_estimate,
    verdict_of,
)
from wardwright.questions.roofs_reached import roofs_reached
from wardwright.rules.at_the_opening import notices_at_the_opening
from wardwright.trials.alarm import Heard, alarm_of
from wardwright.trials.climbs import (
    LIMIT_FIGURES,
    Climb,
    Step,
    climb_to,
    sill_above_ground,
    usual_limits,
)
from wardwright.trials.draws import Cases, cases_of, estimate_of
from wardwright.trials.ways_in import WayIn, is_too_small, leads_outside, ways_in

NUMBER = 14
MEASURE = "how far the hardest step of the climb is out of reach"
NONE_HIGH = "no opening is so high that it is not reached from the ground: question 1 is about each"
HEAVE, PACE = "climb-heave", "climb-pace"
CLIMB_FIGURES = frozenset({*LIMIT_FIGURES, HEAVE, PACE})
"""The figures that these answers stand on."""
TO = "up to "
"""How the name of a part begins that says how high a step ends."""


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each upper opening, and one for roofs and balconies where there are any."""
    return _answers(site, catalogue, with_mends=True)


def without_mends(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """The same answers, but for what would mend them."""
    return _answers(site, catalogue, with_mends=False)


def _answers(site: Site, catalogue: Catalogue, *, with_mends: bool) -> tuple[Answer, ...]:
    outer = [one for one in site.openings if is_way_in(site, one) and leads_outside(site, one)]
    if not outer:
        return (about_the_site(NUMBER, MEASURE, site=site, reason="no opening to the outside is drawn"),)
    lowest = catalogue.figure(LIMIT_FIGURES[0]).low
    upper = [one for one in outer if sill_above_ground(site, one) > lowest and not is_too_small(one)]
    roofs = roofs_reached(site.bare, catalogue, question=NUMBER)
    if not upper:
        low = _none_high(site, catalogue, outer)
        return (low,) if roofs is None else (low, roofs)
    heard = tuple(one for one in alarm_of(site, catalogue).heard if one[1].alarms)
    found = tuple(
        _answer(
            site.bare,
            catalogue,
            one,
            heard=_near(site.bare, catalogue, one, heard=heard),
            with_mends=with_mends,
        )
        for one in sorted(upper, key=lambda one: one.id)
    )
    return found if roofs is None else (*found, roofs)


def _none_high(site: Site, catalogue: Catalogue, outer: list[Opening]) -> Answer:
    """About the highest opening of a house that has no upper one."""
    highest = max(outer, key=lambda one: (round(sill_above_ground(site, one), 6), one.id))
    return Answer(
        question=NUMBER,
        subject=site.name,
        subject_id="site",
        measure=f"how far {highest.name}, the highest opening, is out of reach",
        estimate=reach_estimate(site.bare, catalogue, highest),
        verdict="good",
        notes=(NONE_HIGH,),
    )


def _near(house: Site, catalogue: Catalogue, opening: Opening, *, heard: Heard) -> Heard:
    """The devices that notice at an opening in any manner: moving others asks nothing anew."""
    return tuple(
        one
        for one in heard
        if any(
            notices_at_the_opening(house, catalogue, one[0], opening=opening, manner=manner)
            for manner in ("opened", "through the glass")
        )
    )


@lru_cache(maxsize=256)
def _answer(house: Site, catalogue: Catalogue, opening: Opening, *, heard: Heard, with_mends: bool) -> Answer:
    plain = _plain(house, catalogue, opening, heard=heard)
    if not with_mends or plain.verdict == "good":
        return plain
    climb, ways = climb_to(house, opening, usual_limits(catalogue)), _ways_by(house, catalogue, opening)
    mends = climb_mends(house, catalogue, opening, climb=climb, ways=ways, heard=heard)
    return plain.model_copy(update={"mends": mends})


def _ways_by(house: Site, catalogue: Catalogue, opening: Opening) -> tuple[WayIn, ...]:
    return tuple(one for one in ways_in(house, catalogue)[0] if one.opening.id == opening.id)


@lru_cache(maxsize=256)
def _plain(house: Site, catalogue: Catalogue, opening: Opening, *, heard: Heard) -> Answer:
    """The answer without what would mend it: the same with and without."""
    climb = climb_to(house, opening, usual_limits(catalogue))
    out_of_reach = reach_estimate(house, catalogue, opening)
    ways = _ways_by(house, catalogue, opening)
    verdict = verdict_of(house, catalogue, out_of_reach, ways=ways, heard=heard)
    return Answer(
        question=NUMBER,
        subject=opening.name,
        subject_id=opening.id,
        measure=f"{MEASURE}: {_words(climb.hardest)}",
        estimate=out_of_reach,
        verdict=verdict,
        parts=_parts(catalogue, climb),
        notes=_notes(house, climb, out_of_reach, is_watched=bool(ways) and verdict == "good"),
        sketches=climb_sketches(house, opening, climb),
    )


def _climbing(catalogue: Catalogue, climb: Climb) -> Estimate:
    """What the climb takes. [s]"""
    cases: Cases = cases_of((figure_input(catalogue, HEAVE), figure_input(catalogue, PACE)))
    up = sum(step.rise_m for step in climb.steps)
    taken: FloatArray = len(climb.steps) * cases.rows[HEAVE] + up / cases.rows[PACE]
    return estimate_of(taken, cases, unit="s")


def _parts(catalogue: Catalogue, climb: Climb) -> tuple[PartAnswer, ...]:
    found = [
        PartAnswer(name="climb from the ground to the opening", estimate=_climbing(catalogue, climb))
        if climb.is_made
        else PartAnswer(
            name="climb from the ground to the opening",
            estimate=None,
            reason="it is not made, as it is drawn",
        )
    ]
    for step in climb.steps:
        height = Estimate(value=step.height_m, low=step.height_m, high=step.height_m, unit="m")
        found.append(PartAnswer(name=f"{TO}{step.name}", estimate=height))
    return tuple(found)


def _notes(house: Site, climb: Climb, out_of_reach: Estimate, *, is_watched: bool) -> tuple[str, ...]:
    way = "; ".join(_words(step) for step in climb.steps)
    if climb.is_made:
        notes = [f"reached from the ground: {way}"]
    elif out_of_reach.low <= 0.0:
        notes = [f"somebody nimble or tall reaches it: {way}"]
    else:
        notes = [f"the easiest of the climbs that fail: {way}"]
    if not is_outside_told(house):
        notes.append(
            "nobody has said what stands outside: walls, bins, pipes, trees and flat roofs near it count"
        )
    if is_watched:
        notes.append("whoever gets there is noticed at the opening itself, however they come in")
    if any(step.kind == "roof" for step in climb.steps):
        notes.append(
            "the roof is taken from the plan and its height from the storey's: flat or pitched is not known"
        )
    unsaid = [one.name for one in house.ground.things if one.basis_of("can_be_climbed") == "default"]
    if unsaid:
        notes.append(f"nobody has said whether these can be climbed: {', '.join(sorted(unsaid))}")
    notes.append(
        "what is brought along is not counted: ladders, bins that are moved, a second person's shoulders"
    )
    return tuple(notes)


def _words(step: Step) -> str:
    up, gap = f"{step.rise_m:.1f} m up", f" and {step.gap_m:.1f} m across" if step.gap_m > 0.05 else ""
    return f"{step.name}, {up}{gap}"

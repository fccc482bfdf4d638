"""Question 3: what entry and exit time does this household need, and what does each extra 5 s give an intruder?"""

from __future__ import annotations

from functools import lru_cache

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.limits import Limit
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in, standing
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.answer import Answer, PartAnswer, about_the_site, unanswered
from wardwright.questions.arrival_notes import arrival_notes
from wardwright.questions.entry_time_mends import entry_time_mends
from wardwright.questions.time_in_hand import least_hand
from wardwright.questions.times_needed import SPARE, Needed, needed
from wardwright.trials.alarm import Alarm, alarm_of, as_met
from wardwright.trials.draws import estimate_of
from wardwright.trials.race import Race, race_against
from wardwright.trials.trips import SOMEBODY, Trip, household, trips
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import WayIn, leads_outside, ways_in
from wardwright.trials.ways_on_foot import spot_of

NUMBER = 3
MEASURE = {
    which: f"{which} time needed by the slowest, with {SPARE * 100:.0f} % spare"
    for which in ("entry", "exit")
}
EXTRA_S = (-10.0, -5.0, 5.0, 10.0, 15.0)
"""Changes of the entry time that are tried on the race of question 1. [s]"""
HAND = "time in hand if this door is forced"
_WORST = {"good": 0, "thin": 1, "bad": 2}


@lru_cache(maxsize=8)
def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each entry door."""
    if not any(space.is_protected for space in site.spaces):
        return (about_the_site(NUMBER, MEASURE["entry"], site=site, reason="none of the spaces is ours"),)
    try:
        found = trips(site, catalogue)
    except NotComputable as reason:
        bare = about_the_site(NUMBER, MEASURE["entry"], site=site, reason=str(reason))
        return (bare.model_copy(update={"notes": _other_doors(site)}),)
    return tuple(_answer(site, catalogue, trip) for trip in found)


def both_times(site: Site, catalogue: Catalogue, trip: Trip) -> tuple[Needed, Needed]:
    """The entry time and the exit time at one door, against what is programmed."""
    people, place = household(site), site.place
    entry, leaving = site.programme.entry_time_s, site.programme.exit_time_s
    return (
        needed(catalogue, trip.legs, people, which="entry", programmed_s=entry, place=place),
        needed(catalogue, trip.legs, people, which="exit", programmed_s=leaving, place=place),
    )


def _answer(site: Site, catalogue: Catalogue, trip: Trip) -> Answer:
    door = trip.door
    if trip.control is not None and trip.route is None:
        reason = f"not computable: no way on foot from {door.name} to {trip.control.name}"
        return unanswered(NUMBER, MEASURE["entry"], subject=door.name, subject_id=door.id, reason=reason)
    times = both_times(site, catalogue, trip)
    decides = max(times, key=lambda one: (_WORST[one.verdict], _strain(one), one.which))
    given = gifts(site, catalogue, door)
    return Answer(
        question=NUMBER,
        subject=door.name,
        subject_id=door.id,
        measure=MEASURE[decides.which],
        estimate=decides.estimate,
        verdict=decides.verdict,
        chance=decides.chance,
        parts=(*_parts(times), *given),
        notes=(
            *_notes(site, trip, times),
            *arrival_notes(site, catalogue, trip, slowest=times[0].slowest),
            *_other_doors(site),
        ),
        mends=entry_time_mends(site, catalogue, trip=trip, times=times),
        sketches=_sketches(site, trip),
    )


def _strain(one: Needed) -> float:
    """How much of the programmed time is needed. [-]"""
    return one.estimate.value / max(one.programmed_s, 1e-9)


def _parts(times: tuple[Needed, Needed]) -> tuple[PartAnswer, ...]:
    words = {"entry": "coming in", "exit": "leaving"}
    found = []
    for one in times:
        set_to = Estimate(
            value=one.programmed_s, low=one.programmed_s, high=one.programmed_s, unit="s", basis="told"
        )
        found += [
            PartAnswer(name=MEASURE[one.which], estimate=one.estimate),
            PartAnswer(name=f"{one.which} time programmed", estimate=set_to),
        ]
        found += [
            PartAnswer(name=f"{person.name} {words[one.which]}", estimate=estimate)
            for person, estimate in one.each
        ]
    return tuple(found)


def gifts(site: Site, catalogue: Catalogue, door: Opening) -> tuple[PartAnswer, ...]:
    """What other entry times would do to whoever forces the door: the race of question 1, run again.

    Parameters
    ----------
    site : Site
        The house, its devices and its programme.
    catalogue : Catalogue
        Sheets and figures.
    door : Opening
        An entry door.

    Returns
    -------
    tuple of PartAnswer
        The time in hand as programmed, then how far it moves with each other time.
    """
    way = next(
        (one for one in ways_in(site, catalogue)[0] if (one.opening.id, one.manner) == (door.id, "opened")),
        None,
    )
    units = control_units(site, catalogue)
    if way is None or not units:
        return (PartAnswer(name=HAND, estimate=None, reason="no control unit" if way else "no way in"),)
    return _gifts(
        site.bare,
        catalogue,
        alarm_of(as_met(site, catalogue), catalogue),
        way=way,
        goal=spot_of(site, units[0]),
    )


@lru_cache(maxsize=128)
def _gifts(
    house: Site, catalogue: Catalogue, alarm: Alarm, *, way: WayIn, goal: Spot
) -> tuple[PartAnswer, ...]:
    now_s = alarm.programme.entry_time_s

    def run(entry_s: float) -> Race:
        changed = alarm._replace(programme=_with_entry_time(alarm.programme, entry_s))
        return race_against(house, catalogue, changed, way=way, goal=goal)

    try:
        now = run(now_s)
    except NotComputable as reason:
        return (PartAnswer(name=HAND, estimate=None, reason=str(reason)),)
    hand = least_hand(now, catalogue)
    found = [PartAnswer(name=HAND, estimate=estimate_of(hand, now.cases, unit="s"))]
    for extra in EXTRA_S:
        if now_s + extra <= 0.0:
            continue
        moved = least_hand(run(now_s + extra), catalogue) - hand
        words = f"{abs(extra):g} s {'more' if extra > 0 else 'less'} entry time"
        found.append(PartAnswer(name=f"moved by {words}", estimate=estimate_of(moved, now.cases, unit="s")))
    return tuple(found)


@lru_cache(maxsize=64)
def _with_entry_time(programme: Programme, entry_s: float) -> Programme:
    return programme.model_copy(update={"entry_time_s": entry_s})


def _notes(site: Site, trip: Trip, times: tuple[Needed, Needed]) -> tuple[str, ...]:
    notes = []
    if not site.people or household(site)[0] is SOMEBODY:
        notes.append("who lives there is not told: somebody slow is reckoned with")
    else:
        notes.append(f"the slowest is {times[0].slowest.name}, with shopping in both hands")
    if trip.control is None:
        notes.append(
            "there is no keypad: everybody is taken to carry a keyfob and to press it as they come in"
        )
    for one in times:
        if one.beyond is not None:
            notes.append(
                f"the {one.which} time needed is beyond what {_limit_words(one.beyond)} allows:"
                " bring the keypad nearer, or use keyfobs"
            )
        if one.broken is not None:
            side = "longer" if one.broken.id.endswith("most") else "shorter"
            notes.append(f"the {one.which} time programmed is {side} than {_limit_words(one.broken)} allows")
    return tuple(notes)


def _limit_words(limit: Limit) -> str:
    words = f"the limit of {limit.value:g} s ({limit.source.upper().replace('-', ' ')}, {limit.edition}"
    return f"{words}, {limit.mark}: check with the standard)" if limit.is_to_be_checked else f"{words})"


def _other_doors(site: Site) -> tuple[str, ...]:
    """Doors to the outside that people could come in by, though nobody says that they do."""
    names = [
        opening.name
        for opening in sorted(site.openings, key=lambda one: one.id)
        if opening.kind in ("door", "garage-door")
        and not opening.is_entry_door
        and opening.hinge != "fixed"
        and is_way_in(site, opening)
        and leads_outside(site, opening)
    ]
    if not names:
        return ()
    are = "is no entry door" if len(names) == 1 else "are no entry doors"
    return (f"{', '.join(names)} {are}: whoever comes home that way gives the alarm",)


def _sketches(site: Site, trip: Trip) -> tuple[Sketch, ...]:
    """The walk from the door to the keypad, and the keypad."""
    if trip.control is None or trip.route is None:
        return ()
    at = standing(site, trip.control)
    goal = Sketch(role="goal", storey=at.storey, points=((at.x_m, at.y_m),), label=trip.control.name)
    return (*walk_on(trip), goal)


def walk_on(trip: Trip) -> tuple[Sketch, ...]:
    """The walk of a trip, one line for each storey, without a clock: people differ."""
    if trip.route is None:
        return ()
    found = []
    for storey in sorted(set(trip.route.storeys)):
        places = [
            (float(x), float(y))
            for (x, y), on in zip(trip.route.points.tolist(), trip.route.storeys, strict=True)
            if on == storey
        ]
        chosen = [*places[:-1:4], places[-1]]
        if len(chosen) > 1:
            found.append(Sketch(role="walk", storey=storey, points=tuple(chosen)))
    return tuple(found)

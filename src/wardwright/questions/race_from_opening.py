"""Question 1: through this opening, can the control unit be reached and broken before a message is out?"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.opening import Opening
from wardwright.model.placement import standing
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.answer import NOT_COUNTED, Answer, PartAnswer, Verdict, about_the_site, unanswered
from wardwright.questions.changes_tried import notice_on_all
from wardwright.questions.mends import locks_and_lights, mends_for
from wardwright.questions.time_in_hand import deciding, hand_estimate, least_hand, time_in_hand, worst_of
from wardwright.rules.at_the_opening import is_on
from wardwright.rules.finding import Mend
from wardwright.trials.alarm import as_met
from wardwright.trials.course import Course
from wardwright.trials.draws import Cases, estimate_of, share_met
from wardwright.trials.race import Race, race
from wardwright.trials.timely import Need, is_every_way_caught, timely_floor
from wardwright.trials.watchers import control_units, devices_of
from wardwright.trials.ways_in import OutOfReach, WayIn, by_opening, ways_in
from wardwright.trials.ways_on_foot import spot_of

NUMBER = 1
MEASURE = {
    "message": "time in hand of the message before the control unit is broken",
    "sounder": "time in hand of the sounder before the control unit is reached",
}
NOTHING = "nothing would notice"


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each opening that leads in."""
    return _answers(as_met(site, catalogue), catalogue, with_mends=True)


def without_mends(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """The same answers, but for the changes to the alarm that would mend them: those take longer to try."""
    return _answers(as_met(site, catalogue), catalogue, with_mends=False)


@lru_cache(maxsize=32)
def _answers(site: Site, catalogue: Catalogue, *, with_mends: bool) -> tuple[Answer, ...]:
    ways, not_counted = ways_in(site, catalogue)
    if not any(space.belongs == "ours" for space in site.spaces):
        return (about_the_site(NUMBER, MEASURE["message"], site=site, reason="none of the spaces is ours"),)
    if not ways and not not_counted:
        return (about_the_site(NUMBER, MEASURE["message"], site=site, reason="no way in is drawn"),)
    found = [_not_counted(one) for one in not_counted]
    units = control_units(site, catalogue)
    if units:
        notice_on_all(site, catalogue, ways if with_mends else (), goal=spot_of(site, units[0]))
    for chosen in by_opening(ways):
        if not units:
            reason = "not computable: no control unit" if site.devices else f"{NOTHING}: there is no alarm"
            weakest = min(chosen, key=lambda way: (way.holds.value, way.manner))
            mends = locks_and_lights(site, catalogue, weakest)
            found.append(
                _unknown(
                    weakest.opening, reason, parts=(_holds(weakest.holds, weakest.holds_basis),), mends=mends
                )
            )
            continue
        found.append(_answer(site, catalogue, chosen, with_mends=with_mends))
    return tuple(found)


def _answer(site: Site, catalogue: Catalogue, ways: Sequence[WayIn], *, with_mends: bool) -> Answer:
    opening = ways[0].opening
    goal = spot_of(site, control_units(site, catalogue)[0])
    try:
        races = [race(site, catalogue, way=way, goal=goal) for way in ways]
    except NotComputable as reason:
        return _unknown(opening, f"not computable: {reason}")
    worst = worst_of(races, catalogue)
    need, estimate = deciding(worst, catalogue), hand_estimate(worst, catalogue)
    notices = bool(np.isfinite(worst.first_notice[0]))
    caught = notices and all(
        is_every_way_caught(site, catalogue, way=worst.way, goal=goal, need=one)
        for one in time_in_hand(worst, catalogue)
    )
    verdict: Verdict = "bad" if estimate.value <= 0 else "thin" if estimate.low <= 0 or not caught else "good"
    return Answer(
        question=NUMBER,
        subject=opening.name,
        subject_id=opening.id,
        measure=MEASURE[need],
        estimate=estimate if notices else None,
        reason=None if notices else _why_nothing(worst.way),
        verdict=verdict,
        chance=share_met(least_hand(worst, catalogue), worst.cases),
        parts=_parts(worst, catalogue),
        notes=_notes(site, catalogue, worst, races=races, is_caught=caught if notices else None),
        mends=mends_for(site, catalogue, ways=ways, worst=worst, now=estimate)
        if with_mends and verdict != "good"
        else (),
        sketches=_sketches(site, catalogue, worst, need=need),
    )


@lru_cache(maxsize=256)
def _parts(one: Race, catalogue: Catalogue) -> tuple[PartAnswer, ...]:
    stay = catalogue.figure("stay").value
    no_sounder = "no sounder" if one.sounder is None else NOTHING
    return (
        _holds(one.way.holds, one.way.holds_basis),
        _part("first notice", one.first_notice, one.cases, stay=stay, none=NOTHING),
        _part("sounder", one.sounder, one.cases, stay=stay, none=no_sounder),
        _part("message outside", one.message, one.cases, stay=stay, none=NOTHING),
        *_arrivals(one.course, stay),
    )


def _part(name: str, values: FloatArray | None, cases: Cases, *, stay: float, none: str) -> PartAnswer:
    if values is None or not np.isfinite(values[0]):
        return PartAnswer(name=name, estimate=None, reason=none)
    return PartAnswer(name=name, estimate=estimate_of(np.minimum(values, stay), cases, unit="s"))


@lru_cache(maxsize=256)
def _arrivals(course: Course, stay: float) -> tuple[PartAnswer, PartAnswer]:
    """When the intruder is there, whatever notices."""
    return (
        _part("control unit reached", course.reached, course.cases, stay=stay, none="not reached"),
        _part("control unit broken", course.broken, course.cases, stay=stay, none="not reached"),
    )


def _why_nothing(way: WayIn) -> str:
    manner = "comes through the glass" if way.manner == "through the glass" else "comes in here"
    return f"{NOTHING} somebody who {manner}"


@lru_cache(maxsize=256)
def _holds(holds: Figure, basis: Basis) -> PartAnswer:
    """How long an opening holds before the clock starts."""
    driver = Driver(name="lock and frame", swing=holds.high - holds.low, basis=basis)
    estimate = Estimate(
        value=holds.value, low=holds.low, high=holds.high, unit="s", drivers=(driver,), basis=basis
    )
    return PartAnswer(name="holds before the clock starts", estimate=estimate)


def _notes(
    site: Site, catalogue: Catalogue, worst: Race, *, races: list[Race], is_caught: bool | None
) -> tuple[str, ...]:
    opening = worst.way.opening
    manner = "opened" if worst.way.manner == "opened" else "come through the glass"
    notes = [f"the worse manner: {manner}" if len(races) > 1 else f"manner: {manner}"]
    contacts = devices_of(site, catalogue, "opening-contact")
    if opening.habit != "shut" and any(is_on(device, opening) for device in contacts):
        notes.append("its contact is on a leaf that usually stands open, and tells nothing")
    if worst.sounder is None:
        notes.append("there is no sounder: only the message is judged")
    if worst.message_waits:
        notes.append("the abort delay counts here")
    if is_caught is not None:
        if np.isinf(worst.message).any():
            notes.append("at the low end of what is known of the detectors, nothing notices on the way")
        notes.append(
            "in the design case every way from here is noticed in time"
            if is_caught
            else "in the design case a way round is left that nothing surely notices in time"
        )
    return tuple(notes)


def _sketches(site: Site, catalogue: Catalogue, one: Race, *, need: Need) -> tuple[Sketch, ...]:
    unit = control_units(site, catalogue)[0]
    at = standing(site, unit)
    found = list(_walk_sketches(one.course))
    if one.first_index is not None and one.first_watcher is not None and np.isfinite(one.first_notice[0]):
        place = one.route.points[one.first_index]
        name = site.device(one.first_watcher).name
        found.append(
            Sketch(
                role="notice",
                storey=one.route.storeys[one.first_index],
                points=((float(place[0]), float(place[1])),),
                label=f"noticed by {name}",
            )
        )
    found.append(Sketch(role="goal", storey=at.storey, points=((at.x_m, at.y_m),), label=unit.name))
    return (*found, *_timely_sketches(site.bare, catalogue, spot_of(site, unit), need=need))


@lru_cache(maxsize=64)
def _timely_sketches(house: Site, catalogue: Catalogue, goal: Spot, *, need: Need) -> tuple[Sketch, ...]:
    return tuple(
        Sketch(role="timely", storey=storey, rings=rings)
        for storey, rings in timely_floor(house, catalogue, goal=goal, need=need).items()
    )


@lru_cache(maxsize=256)
def _walk_sketches(course: Course) -> tuple[Sketch, ...]:
    """The walk of a race, one line for each stretch on one storey, with the clock of its likely case."""
    route = course.foot.route
    start = float(course.reached[0]) - float(route.clock[-1])
    found: list[Sketch] = []
    first = 0
    for i in range(1, len(route.storeys) + 1):
        if i == len(route.storeys) or route.storeys[i] != route.storeys[first]:
            chosen = _every_few(first, i)
            found.append(
                Sketch(
                    role="walk",
                    storey=route.storeys[first],
                    points=tuple((float(route.points[k][0]), float(route.points[k][1])) for k in chosen),
                    times_s=tuple(start + float(route.clock[k]) for k in chosen),
                )
            )
            first = i
    return tuple(sketch for sketch in found if len(sketch.points) > 1)


def _every_few(first: int, last: int) -> list[int]:
    chosen = list(range(first, last, 4))
    if chosen[-1] != last - 1:
        chosen.append(last - 1)
    return chosen


def _unknown(
    opening: Opening, reason: str, *, parts: tuple[PartAnswer, ...] = (), mends: tuple[Mend, ...] = ()
) -> Answer:
    bare = unanswered(
        NUMBER,
        MEASURE["message"],
        subject=opening.name,
        subject_id=opening.id,
        reason=reason,
        verdict="bad" if reason.startswith(NOTHING) else "unknown",
    )
    return bare.model_copy(update={"parts": parts, "mends": mends})


def _not_counted(one: OutOfReach) -> Answer:
    return _unknown(one.opening, NOT_COUNTED + one.reason)

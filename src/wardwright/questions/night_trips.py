"""Question 8: at night, part set, can each person reach toilet, kitchen and child; what is still protected?"""

from __future__ import annotations

from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind
from wardwright.model.household import Person
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.answer import Answer, about_the_site, unanswered
from wardwright.questions.night_mends import Cure, night_cures, with_gains
from wardwright.questions.night_notes import night_notes, night_parts, night_sketches
from wardwright.questions.night_numbers import MEASURES, NightCase, night_number
from wardwright.questions.still_protected import still_protected
from wardwright.questions.zones_at_night import more_at_night, where_the_unit_is
from wardwright.rules.kit import NIGHT
from wardwright.trials.alarm import DETECTORS, detectors_alone, with_devices
from wardwright.trials.home_goals import TOILETS
from wardwright.trials.household_trips import play_night_trip
from wardwright.trials.household_walk import walk
from wardwright.trials.leaves_opened import Leaves
from wardwright.trials.night_rings import active_in, ring_on
from wardwright.trials.night_trips import NightTrip, night_trips, wrong_turns_at_night
from wardwright.trials.trip_floor import Ends, clearance

NUMBER = 8
RINGS_WITH: tuple[Leaves, ...] = ("night", "most")
"""How leaves stand on the trips that are played: as usual at night first."""
KINDS: tuple[DeviceKind, ...] = (*DETECTORS, "control-unit", "keypad", "keyfob")
"""Kinds of devices that an answer hangs on: it outlives a move of any other."""


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each trip of each person, and one for what stays protected.

    People who sleep in one room and walk alike have their answer in common.
    """
    kept = tuple(one for one in site.devices if catalogue.sheet(one.sheet).kind in KINDS)
    return _answers(site.model_copy(update={"devices": kept}), catalogue)


@lru_cache(maxsize=16)
def _answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    measure = MEASURES["clear"]

    def none(reason: str) -> tuple[Answer, ...]:
        return (about_the_site(NUMBER, measure, site=site, reason=reason),)

    if not any(space.is_protected for space in site.spaces):
        return none("none of the spaces is ours")
    if all(part.id != NIGHT for part in site.parts):
        return none("the site has no night part")
    if not active_in(site, NIGHT):
        return none("no zone is in the night part" if site.zones else "no zone is programmed yet")
    if not site.people:
        return none("who lives there is not told")
    all_trips = night_trips(site, catalogue)
    trips = _told_apart(all_trips)
    seen_by, goal = detectors_alone(site, catalogue), where_the_unit_is(site, catalogue)
    each = [_with_mends(seen_by, catalogue, trip, people=people, goal=goal) for trip, people in trips]
    notes = (*_not_asked(site), *_astray(seen_by, catalogue))
    kept = still_protected(site, catalogue, number=NUMBER, notes=notes)
    if kept.estimate is not None and kept.verdict != "good":
        mends = more_at_night(site, catalogue, all_trips, now=kept.estimate)
        kept = kept.model_copy(update={"mends": mends})
    return (kept, *each)


def _told_apart(trips: tuple[NightTrip, ...]) -> tuple[tuple[NightTrip, tuple[Person, ...]], ...]:
    """The trips that are told apart, each with all whose trip it is: whoever sleeps in one room and walks alike.

    Trips out by several doors are one, where they are the same up to where the alarm is unset.
    """
    found: dict[tuple[str, Ends | None, str], tuple[NightTrip, list[Person]]] = {}
    for trip in trips:
        pace = f"{trip.person.pace} {trip.person.basis_of('pace')}"
        _, people = found.setdefault((trip.goal, trip.ends, pace), (trip, []))
        if trip.person not in people:
            people.append(trip.person)
    return tuple((trip, tuple(people)) for trip, people in found.values())


def _not_asked(site: Site) -> tuple[str, ...]:
    """Why somebody goes nowhere, or not to a toilet or kitchen."""
    notes = []
    for person in sorted(site.people, key=lambda one: one.id):
        if person.comes == "visits":
            continue
        if person.bed is None:
            notes.append(f"not computable for {person.name}: where they sleep is not told")
            continue
        for words, uses in (("toilet", TOILETS), ("kitchen", ("kitchen",))):
            rooms = [one for one in site.spaces if one.use in uses and one.is_protected]
            if not rooms:
                notes.append(f"not computable for {person.name}: no room of ours is told to be a {words}")
            elif not any(person.may_be_in(one.id, NIGHT) for one in rooms):
                notes.append(f"{person.name} is told not to be in any {words} while the night part is set")
    return tuple(notes)


def _astray(site: Site, catalogue: Catalogue) -> tuple[str, ...]:
    """What rings, and when, for whoever goes where they are told not to be: the first of each person's."""
    first: dict[str, tuple[float, str]] = {}
    for trip in wrong_turns_at_night(site):
        played = play_night_trip(site, catalogue, trip, leaves="night")
        if played.device is not None:
            said = f"{trip.person.name} astray in {trip.place.name}: {site.device(played.device).name} after"
            one = (played.second, f"{said} {played.second:.0f} s")
            first[trip.person.id] = min(one, first.get(trip.person.id, one))
    return tuple(words for _, (_, words) in sorted(first.items()))


def _subject(trip: NightTrip, people: tuple[Person, ...]) -> tuple[str, str]:
    """What people call a trip, and an id of its own."""
    who = " and ".join(one.name for one in people)
    if trip.goal == "out":
        how = f" by {trip.place.name}" if trip.control is None and trip.ends is not None else ""
        return f"{who} out in the morning{how}", f"{trip.person.id}/out{how and '/' + trip.place.id}"
    return f"{who} from bed to {trip.place.name}", f"{trip.person.id}/{trip.goal}/{trip.place.id}"


@lru_cache(maxsize=512)
def _with_mends(
    site: Site, catalogue: Catalogue, trip: NightTrip, *, people: tuple[Person, ...], goal: Spot | None
) -> Answer:
    """The answer about a trip, with what its cures would bring against somebody who goes to the control unit."""
    answer, cures = _answer(_enough_of(site, catalogue, trip), catalogue, trip, people=people)
    mends = with_gains(site, catalogue, cures, goal=goal)
    return answer.model_copy(update={"mends": mends}) if mends else answer


def _enough_of(site: Site, catalogue: Catalogue, trip: NightTrip) -> Site:
    """The site with the detectors that the answer about a trip hangs on.

    Where the trip rings these are the ones that see any floor of it, every leaf away: wherever the others are, they
    notice nothing of it. Where it is silent the one that is nearest is told, so that all are asked.
    """
    ends = trip.ends
    if ends is None:
        return site
    near = tuple(
        one
        for one in site.devices
        if catalogue.sheet(one.sheet).kind != "movement-detector"
        or clearance(site.bare, catalogue, one, ends=ends) == 0.0
    )
    some = site if len(near) == len(site.devices) else with_devices(site, near)
    rings = any(ring_on(some, catalogue, trip, leaves=leaves) is not None for leaves in RINGS_WITH)
    return some if rings else site


@lru_cache(maxsize=512)
def _answer(
    site: Site, catalogue: Catalogue, trip: NightTrip, *, people: tuple[Person, ...]
) -> tuple[Answer, tuple[Cure, ...]]:
    """The answer about a trip, and its cures, on a site with the detectors that they hang on.

    So it outlives a move of the control unit, and of the keypad where the trip does not end at it.
    """
    name, ident = _subject(trip, people)
    ends = trip.ends
    if ends is None:
        bare = unanswered(
            NUMBER, MEASURES["left"], subject=name, subject_id=ident, verdict="good",
            reason="the alarm is unset by the bed, with a keyfob",
        )  # fmt: skip
        return bare, ()
    if walk(site.bare, catalogue, ends.start, goal=ends.goal) is None:
        reason = f"not computable: no way on foot from {ends.rooms[0].name} to {trip.place.name}"
        return unanswered(NUMBER, MEASURES["clear"], subject=name, subject_id=ident, reason=reason), ()
    usual = ring_on(site, catalogue, trip, leaves="night")
    most = usual or ring_on(site, catalogue, trip, leaves="most")
    case = NightCase(trip, ends, most, "night" if usual is not None or most is None else "most")
    verdict, measure, estimate, chance = night_number(site, catalogue, case)
    answer = Answer(
        question=NUMBER,
        subject=name,
        subject_id=ident,
        measure=measure,
        estimate=estimate,
        reason=None if estimate is not None else "no detector of the night part sees the storeys it passes",
        verdict=verdict,
        chance=chance,
        parts=night_parts(site, catalogue, case),
        notes=night_notes(site, catalogue, case),
        sketches=night_sketches(site, catalogue, case),
    )
    return answer, () if most is None else night_cures(site, catalogue, trip, leaves=case.leaves)

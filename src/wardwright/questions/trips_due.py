"""Which trips of the household are due: in and out by each entry door, and about the house at night."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.questions import entry_and_exit_times, night_trips, zone_behaviours
from wardwright.questions.answer import Answer
from wardwright.questions.between_states import Both, DueTest, apart, other_parts, value_of
from wardwright.rules.kit import NIGHT
from wardwright.trials.watchers import heard_in

TIME_S = 0.5
"""How far an entry or exit time must have moved to be walked again. [s] (assumption)"""


def trips(both: Both) -> Iterator[DueTest]:
    """The trips in and out by each entry door."""
    doors = {one.id: one for one in both.after.site.openings}
    asked = [pair for pair in both.pairs(entry_and_exit_times.NUMBER) if pair[1].subject_id in doors]
    for was, now in asked:
        for kind, ending in (("entry", "coming in"), ("exit", "leaving")):
            if was is None:
                yield DueTest(kind=kind, about=now.subject_id, why="it is asked of this door now")
                continue
            if other_parts(was, now, least=TIME_S, beginning=(kind,), ending=(ending,)):
                yield DueTest(kind=kind, about=now.subject_id, why="the time that it takes or has is another")
    hears_otherwise = any(
        one.subject_id != "site" and (was is None or apart(value_of(was), value_of(one), 0.0))
        for was, one in both.pairs(zone_behaviours.NUMBER)
    )
    if hears_otherwise or _other_behaviours(both):
        for _, now in asked:
            for kind in ("entry", "exit"):
                yield DueTest(
                    kind=kind, about=now.subject_id, why="other devices hear the way in, or otherwise"
                )


def _other_behaviours(both: Both) -> bool:
    """Whether any device that was there answers otherwise than it did."""
    old, new = (heard_in(state.site, "full") for state in both[:2])
    return any(old[name] != new[name] for name in old.keys() & new.keys())


def nights(both: Both, catalogue: Catalogue, of_views: Iterable[DueTest]) -> Iterator[DueTest]:
    """The trips at night of each person who sleeps here; `of_views` says which detectors see otherwise."""
    site = both.after.site
    if not any(part.id == NIGHT for part in site.parts):
        return
    sleepers = [person for person in site.people if person.bed is not None]
    old, new = (heard_in(state.site, NIGHT) for state in both[:2])
    movement = {one.id for one in site.devices if catalogue.sheet(one.sheet).kind == "movement-detector"}
    views = {one.about for one in of_views}
    if old != new:
        why = "other devices are set at night, or answer otherwise"
    elif views & movement & new.keys():
        why = "a detector that is set at night sees other floor"
    elif any(_trip_is_other(was, now) for was, now in both.pairs(night_trips.NUMBER)):
        why = "their ways at night are others"
    else:
        why = ""
    for person in sleepers:
        own = "is new or another" if f"people/{person.id}" in both.changes else ""
        if own or why:
            yield DueTest(kind="night trip", about=person.id, why=own or why)


def _trip_is_other(was: Answer | None, now: Answer) -> bool:
    if now.estimate is None:
        return False
    return was is None or was.verdict != now.verdict or apart(value_of(was), value_of(now), TIME_S)

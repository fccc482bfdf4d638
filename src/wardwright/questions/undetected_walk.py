"""Question 5: how far, and for how long, can somebody move undetected from each way in?"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import lru_cache, partial
from typing import NamedTuple

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.limits import Limit
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, PartAnswer, Verdict, about_the_site, unanswered
from wardwright.questions.second_notice import NO_SECOND, second_note, second_parts
from wardwright.trials.alarm import NO_MATTER_WHERE, as_met
from wardwright.trials.barriers import Side
from wardwright.trials.independent import confirmation_window, notices_of
from wardwright.trials.undetected import (
    active_devices,
    undetected,
)
from wardwright.trials.undetected_floor import Undetected, reaches_space, reaches_spot
from wardwright.trials.watchers import at_the_way_in, control_units
from wardwright.trials.ways_in import WayIn, by_opening, ways_in
from wardwright.trials.ways_on_foot import spot_of

NUMBER = 5
MEASURE = "farthest undetected walk"
HOW_SOON = "how soon the detectors notice"
SIDES: tuple[Side, ...] = ("possibly", "likely", "surely")
"""From the shortest undetected walk to the longest."""


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each opening that leads in, for its worse manner."""
    return _answers(as_met(site, catalogue), catalogue)


@lru_cache(maxsize=32)
def _answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    ways, _ = ways_in(site, catalogue)
    if not ways:
        reason = "no way in is drawn, or none can be come through"
        return (about_the_site(NUMBER, MEASURE, site=site, reason=reason),)
    anywhere = as_met(site, catalogue, but=(*NO_MATTER_WHERE, "control-unit"))
    return tuple(_guarded(site, catalogue, chosen, anywhere=anywhere) for chosen in by_opening(ways))


def _guarded(site: Site, catalogue: Catalogue, ways: tuple[WayIn, ...], *, anywhere: Site) -> Answer:
    try:
        return _answer(site, _walk(anywhere, catalogue, ways), catalogue)
    except NotComputable as reason:
        opening = ways[0].opening
        why = f"not computable: {reason}"
        return unanswered(NUMBER, MEASURE, subject=opening.name, subject_id=opening.id, reason=why)


def _answer(site: Site, walk: _Walk, catalogue: Catalogue) -> Answer:
    devices = active_devices(site, catalogue, "full")
    targets, cut_off = _targets(site, catalogue, walk.sides)
    independent = {one for one in notices_of(site, devices).values() if one is not None}
    notices = _Notices(
        bool(devices),
        bool(at_the_way_in(site, catalogue, devices, way=walk.way)),
        can_confirm=len(independent) > 1,
    )
    paces = catalogue.figure("pace-hurried"), catalogue.figure("pace-cautious")
    return _answer_of(
        walk,
        paces,
        notices,
        targets=targets,
        cut_off=cut_off,
        is_known=bool(site.targets),
        window=confirmation_window(site, catalogue),
    )


class _Notices(NamedTuple):
    """Whether anything notices at all, and as the opening is opened."""

    ever: bool
    at_once: bool
    can_confirm: bool
    """Whether there are two that are independent of each other."""


@lru_cache(maxsize=256)
def _answer_of(
    walk: _Walk,
    paces: tuple[Figure, Figure],
    notices: _Notices,
    *,
    targets: tuple[Reached, ...],
    cut_off: tuple[str, ...],
    is_known: bool,
    window: Limit | None,
) -> Answer:
    """The answer, remembered by the floor that is reached: a device may move without changing it."""
    short, likely, long = (one.distance_m for one in walk.sides)
    notes = _notes(walk.way, notices, nearest=targets[0] if targets else None, is_known=is_known)
    again = [one.distance_m for one in walk.again]
    if notices.ever:
        notes += (second_note(again, paces[1], window) if notices.can_confirm else NO_SECOND,)
    return Answer(
        question=NUMBER,
        subject=walk.way.opening.name,
        subject_id=walk.way.opening.id,
        measure=MEASURE,
        estimate=_range(short, likely, long, name=HOW_SOON),
        verdict=_verdict(targets, has_devices=notices.ever, is_known=is_known and not cut_off),
        parts=(*_parts(walk, paces[0]), *second_parts(again, paces, window), *_reached_parts(targets)),
        notes=notes + cut_off,
        sketches=tuple(
            Sketch(role="unnoticed", storey=storey, rings=rings)
            for storey, rings in walk.sides[1].rings.items()
        ),
    )


class _Walk(NamedTuple):
    """The undetected walk from one opening, wherever the control unit stands."""

    way: WayIn
    """The worse manner of coming in."""
    sides: tuple[Undetected, ...]
    again: tuple[Undetected, ...]
    """Until a second device notices."""


@lru_cache(maxsize=256)
def _walk(site: Site, catalogue: Catalogue, ways: tuple[WayIn, ...]) -> _Walk:
    runs = [(way, tuple(undetected(site, catalogue, way=way, side=side) for side in SIDES)) for way in ways]
    way, sides = max(runs, key=lambda run: (run[1][1].distance_m, run[1][2].distance_m))
    again = tuple(undetected(site, catalogue, way=way, side=side, others_allowed=1) for side in SIDES)
    return _Walk(way, sides, again)


def _range(low: float, value: float, high: float, *, name: str, basis: Basis = "default") -> Estimate:
    low, high = min(low, value), max(high, value)
    driver = Driver(name=name, swing=high - low, basis=basis)
    drivers = (driver,) if high - low > 1e-9 else ()
    return Estimate(value=value, low=low, high=high, unit="m", drivers=drivers, basis=basis)


Reached = tuple[str, float | None, float | None]
"""A goal's name, and the distance at which it is reached in the likely and in the longest case."""


def _targets(
    site: Site, catalogue: Catalogue, sides: Sequence[Undetected]
) -> tuple[tuple[Reached, ...], tuple[str, ...]]:
    """Goals that are reached undetected, nearest first; and why others cannot be told."""
    found: list[Reached] = []
    cut_off: list[str] = []

    def look(name: str, distance: Callable[[Undetected], float | None]) -> None:
        try:
            found.append((name, distance(sides[1]), distance(sides[2])))
        except NotComputable as reason:
            cut_off.append(f"{name}: {reason}")

    for target in sorted(site.targets, key=lambda one: one.id):
        look(target.name, partial(reaches_space, space_id=target.space))
    for unit in control_units(site, catalogue):
        look(unit.name, partial(reaches_spot, spot=spot_of(site, unit)))
    reached = [one for one in found if one[2] is not None]
    reached.sort(key=lambda one: (one[1] is None, one[1] if one[1] is not None else one[2], one[0]))
    return tuple(reached), tuple(cut_off)


def _verdict(targets: Sequence[Reached], *, has_devices: bool, is_known: bool) -> Verdict:
    if not has_devices or any(likely is not None for _, likely, _ in targets):
        return "bad"
    if targets:
        return "thin"
    return "good" if is_known else "unknown"


def _parts(walk: _Walk, pace: Figure) -> tuple[PartAnswer, ...]:
    short, likely, long = (one.distance_m for one in walk.sides)
    moving = (
        Driver(name="intruder's pace", swing=likely / pace.low - likely / pace.high, basis="default"),
        Driver(name=HOW_SOON, swing=(long - short) / pace.value, basis="default"),
    )
    seconds = Estimate(
        value=likely / pace.value,
        low=short / pace.high,
        high=long / pace.low,
        unit="s",
        drivers=tuple(
            sorted((one for one in moving if one.swing > 1e-9), key=lambda one: (-one.swing, one.name))
        ),
        basis="default",
    )
    first, usual, last = (one.distance_m for one in walk.again)
    area = [one.area_m2 for one in walk.sides]
    return (
        PartAnswer(name="walked at a hurry", estimate=seconds),
        PartAnswer(
            name="undetected floor",
            estimate=Estimate(
                value=area[1], low=min(area[0], area[1]), high=max(area[1], area[2]), unit="m2"
            ),
        ),
        PartAnswer(
            name="before a second, independent device notices",
            estimate=_range(first, usual, last, name=HOW_SOON),
        ),
    )


def _reached_parts(targets: Sequence[Reached]) -> tuple[PartAnswer, ...]:
    """How far it is to each goal that is reached undetected; the longest case where the likely one stops before."""
    found = []
    for name, likely, longest in targets:
        known = [distance for distance in (likely, longest) if distance is not None]
        estimate = Estimate(value=known[0], low=min(known), high=max(known), unit="m")
        found.append(PartAnswer(name=f"undetected to {name}", estimate=estimate))
    return tuple(found)


def _notes(way: WayIn, notices: _Notices, *, nearest: Reached | None, is_known: bool) -> tuple[str, ...]:
    notes = [f"come in: {way.manner}"]
    if not notices.ever:
        notes.append("nothing would notice")
    elif notices.at_once:
        notes.append(f"noticed as {'it is opened' if way.manner == 'opened' else 'the glass is broken'}")
    if nearest is not None:
        name, likely, _ = nearest
        surely = "is" if likely is not None else "may be"
        notes.append(f"{name} {surely} reached undetected")
    elif notices.ever and is_known:
        notes.append("no target is reached undetected")
    if not is_known:
        notes.append("no targets are known")
    return tuple(notes)

"""Which tests on site must be repeated when something of a house is another than it was when they were done."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind, OpeningMount
from wardwright.model.programme import Zone
from wardwright.questions import (
    entry_and_exit_times,
    heard_at_pillows,
    night_trips,
    pets_in,
    what_it_sees,
    what_it_shows,
    will_it_reach,
    zone_behaviours,
)
from wardwright.questions.between_states import (
    Both,
    DueTest,
    apart,
    became,
    both_states,
    value_of,
)
from wardwright.questions.compared import State
from wardwright.questions.trips_due import nights, trips
from wardwright.questions.views_due import pets, pictures, views
from wardwright.rules.pillows import pillows

LEVEL_DB = 1.0
"""How far a level must have moved for its reading to be taken again: less, no meter tells. [dB] (assumption)"""
OWN_TEST: frozenset[DeviceKind] = frozenset({"movement-detector", "opening-contact", "camera", "router"})
"""Kinds that have a test of their own, or none."""
ASKED: tuple[int, ...] = (
    entry_and_exit_times.NUMBER,
    zone_behaviours.NUMBER,
    will_it_reach.NUMBER,
    night_trips.NUMBER,
    what_it_sees.NUMBER,
    heard_at_pillows.NUMBER,
    pets_in.NUMBER,
    what_it_shows.NUMBER,
)
"""The questions whose answers say what is due."""
NO_LINK: frozenset[DeviceKind] = frozenset({"control-unit", "router"})
"""Kinds that links go to, and that have none of their own."""


def tests_due(before: State, after: State, catalogue: Catalogue) -> tuple[DueTest, ...]:
    """Which tests must be repeated since the house was otherwise.

    Parameters
    ----------
    before, after : State
        Two states of the house, both answered by the same program from the same rows of data: answers that are
        others because of these ask for no test, since nothing in the house is another.
    catalogue : Catalogue
        Says what each device is.

    Returns
    -------
    tuple of DueTest
        Each test of each thing once, with its first reason; by device and kind, not in walking order.
    """
    both = both_states(before, after)
    of_views = tuple(views(both, catalogue))
    found = (
        *of_views,
        *_operated(both, catalogue),
        *_links(both, catalogue),
        *_sounds(both),
        *trips(both),
        *nights(both, catalogue, of_views),
        *pets(both, of_views),
        *pictures(both),
        *_messages(both, catalogue),
    )
    first: dict[tuple[str, str], DueTest] = {}
    for one in found:
        first.setdefault((one.about, one.kind), one)
    return tuple(first.values())


def _operated(both: Both, catalogue: Catalogue) -> Iterator[DueTest]:
    zones = [{name: zone for zone in state.site.zones for name in zone.devices} for state in both[:2]]
    for device in both.after.site.devices:
        kind = catalogue.sheet(device.sheet).kind
        touched = became(both, device.id)
        if kind == "opening-contact":
            mount = device.mount
            leaf = mount.opening if isinstance(mount, OpeningMount) else ""
            why = touched or ("its door or window is another" if f"openings/{leaf}" in both.changes else "")
            if why:
                yield DueTest(kind="opening", about=device.id, why=why)
        elif touched and kind not in OWN_TEST:
            yield DueTest(kind="operation", about=device.id, why=touched)
        if kind == "router" or touched:
            continue
        was, now = (_shown(each.get(device.id)) for each in zones)
        if was != now and now is not None:
            yield DueTest(kind="shown", about=device.id, why="its zone is another")


def _shown(zone: Zone | None) -> tuple[int, str, str] | None:
    return None if zone is None else (zone.number, zone.name, zone.behaviour)


def _links(both: Both, catalogue: Catalogue) -> Iterator[DueTest]:
    sheets = {one.id: catalogue.sheet(one.sheet) for one in both.after.site.devices}
    linked = {name for name, one in sheets.items() if one.link == "radio" and one.kind not in NO_LINK}
    receives = any(
        became(both, name) for name, one in sheets.items() if one.kind in ("control-unit", "repeater")
    )
    for name in sorted(linked):
        why = became(both, name) or ("what it is heard by was moved or is new" if receives else "")
        if why:
            yield DueTest(kind="radio", about=name, why=why)
    for was, now in both.pairs(will_it_reach.NUMBER):
        if now.subject_id in linked and was is not None and apart(value_of(was), value_of(now), LEVEL_DB):
            yield DueTest(kind="radio", about=now.subject_id, why="its margin is another")


def _sounds(both: Both) -> Iterator[DueTest]:
    heads = {one.id for one in pillows(both.after.site)}
    for was, now in both.pairs(heard_at_pillows.NUMBER):
        if now.subject_id not in heads or (was is None and now.estimate is None):
            continue
        if was is None or apart(value_of(was), value_of(now), LEVEL_DB):
            yield DueTest(kind="sound", about=now.subject_id, why="its level is another")


def _messages(both: Both, catalogue: Catalogue) -> Iterator[DueTest]:
    old, new = both.before.site.programme, both.after.site.programme
    units = [
        one.id
        for one in both.after.site.devices
        if catalogue.sheet(one.sheet).kind in ("control-unit", "transmitter")
    ]
    is_other = any(
        getattr(old, name) != getattr(new, name) for name in ("told", "responses", "abort_delay_s")
    )
    for unit in units:
        touched = became(both, unit)
        if touched or is_other:
            why = touched or "whom it tells, or when, is another"
            yield DueTest(kind="message", about=unit, why=why)

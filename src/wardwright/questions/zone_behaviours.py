"""Question 4: which zone behaviour should each device have, and what breaks it?"""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

from wardwright.errors import NotComputable
from wardwright.geometry.raster import BoolArray, outlines
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, Verdict, about_the_site
from wardwright.questions.behaviour_mends import SLIVER_M2, behaviour_mends, is_sliver
from wardwright.questions.entry_and_exit_times import walk_on
from wardwright.questions.zones_together import together
from wardwright.trials.arrival_band import band_of, seen_of_band
from wardwright.trials.barriers import grids_of
from wardwright.trials.trips import controls_of, trips_to
from wardwright.trials.zone_roles import SPECK_M2, Derived, Role, derived, role_of, zone_hearing

NUMBER = 4
MEASURES = {
    "seen": "floor of the way in that it possibly sees",
    "opened": "ways in on which its leaf is opened",
    "kind": "settings that differ from what its kind asks for",
}
ROLE_WORDS: dict[Role, str] = {
    "instant": "instant", "entry-exit": "entry/exit", "entry-route": "entry route", "always-on": "always-on",
    "log-only": "log only", "tamper": "tamper", "hold-up": "hold-up", "fire": "fire", "water": "water",
    "fault": "fault",
}  # fmt: skip


@lru_cache(maxsize=8)
def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each device that a zone is to hear, and one for the site as a whole."""
    measure = "devices whose behaviour differs from what the plan asks for"
    if not any(space.is_protected for space in site.spaces):
        return (about_the_site(NUMBER, measure, site=site, reason="none of the spaces is ours"),)
    try:
        controls = controls_of(site, catalogue)
        found = derived(site, catalogue, controls)
    except NotComputable as reason:
        return (about_the_site(NUMBER, measure, site=site, reason=str(reason)),)
    if not found:
        return (about_the_site(NUMBER, measure, site=site, reason="no device that a zone would hear"),)
    each = tuple(_answer(site, catalogue, one, controls=controls) for one in found)
    return (together(site, catalogue, each, measure=measure, number=NUMBER), *each)


def _answer(site: Site, catalogue: Catalogue, one: Derived, *, controls: tuple[Device, ...]) -> Answer:
    zone = zone_hearing(site, one.device.id)
    programmed = None if zone is None else role_of(site.behaviour(zone.behaviour))
    verdict = _verdict(site, one, programmed)
    measure, estimate = _number(site, one, programmed)
    return Answer(
        question=NUMBER,
        subject=one.device.name,
        subject_id=one.device.id,
        measure=measure,
        estimate=estimate,
        verdict=verdict,
        notes=_notes(site, one, zone, programmed=programmed),
        mends=()
        if verdict == "good"
        else behaviour_mends(site, catalogue, one, zone=zone, controls=controls),
        sketches=_sketches(site.bare, catalogue, one.device, controls=controls),
    )


def _verdict(site: Site, one: Derived, programmed: Role | None) -> Verdict:
    if not site.zones:
        return "unknown"
    if programmed != one.role:
        # A zone that is instant only minds a habit that is not the usual one.
        usually = one.seen is not None and one.seen.usual <= SPECK_M2 and programmed == "instant"
        return "thin" if usually else "bad"
    return "thin" if is_sliver(one) else "good"


def _number(site: Site, one: Derived, programmed: Role | None) -> tuple[str, Estimate]:
    seen = one.seen
    if seen is not None:
        door = site.opening(seen.through[0]) if seen.through else None
        drivers: tuple[Driver, ...] = ()
        if seen.high - seen.low > 1e-9:
            name = "how doors stand" if door is None else f"how {door.name} stands"
            basis = "default" if door is None else door.basis_of("habit")
            drivers = (Driver(name=name, swing=seen.high - seen.low, basis=basis),)
        low, high = min(seen.low, seen.usual), max(seen.high, seen.usual)
        basis = drivers[0].basis if drivers else one.device.basis_of("mount")
        return MEASURES["seen"], Estimate(
            value=seen.usual, low=low, high=high, unit="m2", drivers=drivers, basis=basis
        )
    if one.opened is not None:
        usual, low, high = one.opened
        return MEASURES["opened"], Estimate(value=usual, low=low, high=high, unit="ways", basis="told")
    differs = 0.0 if programmed == one.role else 1.0
    return MEASURES["kind"], Estimate(value=differs, low=differs, high=differs, unit="settings", basis="told")


def why(site: Site, one: Derived) -> str:
    """Why a device is to behave so, in a few words."""
    seen = one.seen
    if seen is not None:
        if seen.high <= SPECK_M2:
            return "it sees nothing of the way in, however the doors usually stand"
        through = f" through {_door_words(site, seen.through[0])}" if seen.through else ""
        if seen.is_down_stairs:
            through = " down the stairs"
        most = max(seen.usual, seen.high)
        usual = "" if seen.usual > SPECK_M2 else ", though not as the doors usually stand"
        return f"it possibly sees {most:.1f} m2 of the way in{through}{usual}"
    if one.role in ("entry-exit", "entry-route"):
        return "its leaf is opened on the way in"
    return "its leaf is not opened on the way in" if one.opened is not None else "its kind asks for it"


def _door_words(site: Site, opening_id: str) -> str:
    opening = site.opening(opening_id)
    is_known = opening.basis_of("habit") in ("told", "measured")
    return f"{opening.name} ({opening.habit if is_known else 'nobody has said how it stands'})"


def _notes(site: Site, one: Derived, zone: Zone | None, *, programmed: Role | None) -> tuple[str, ...]:
    notes = [f"to be {ROLE_WORDS[one.role]}: {why(site, one)}"]
    if zone is None:
        notes.append("no zone hears it" if site.zones else "no zone is programmed yet")
    elif programmed is not None and programmed != one.role:
        notes.append(
            f"programmed {ROLE_WORDS[programmed]} in zone {zone.number}: {_consequence(one, programmed)}"
        )
    else:
        notes.append(f"programmed so in zone {zone.number}")
    if zone is not None and zone.is_on_soak:
        notes.append("its zone is on soak test: until that ends it is only logged")
    seen = one.seen
    if seen is not None and seen.high <= SPECK_M2 < seen.ever:
        through = (
            f" with {', '.join(site.opening(door).name for door in seen.through[:2])} open"
            if seen.through
            else ""
        )
        notes.append(f"what breaks it:{through} it would see {seen.ever:.1f} m2 of the way in")
    if is_sliver(one):
        notes.append(
            f"a sliver: less than {SLIVER_M2:g} m2 seen from another room makes it wait for an intruder too"
        )
    return tuple(notes)


def _consequence(one: Derived, programmed: Role) -> str:
    if one.role == "entry-route" and programmed in ("instant", "always-on"):
        return "whoever comes home may set it off, and it may keep the alarm from being set"
    if one.role == "entry-exit":
        return (
            "it does not start the entry time"
            if programmed != "instant"
            else "coming home is an alarm at once"
        )
    if one.role == "instant" and programmed == "entry-route":
        return "once the entry time runs, an intruder whom it notices is let pass"
    if one.role in ("instant", "entry-route") and programmed == "entry-exit":
        return "an intruder whom it notices has the whole entry time"
    if programmed == "log-only":
        return "it gives no alarm"
    return "its alarm is told as another kind, or only while the alarm is set"


@lru_cache(maxsize=512)
def _sketches(
    house: Site, catalogue: Catalogue, device: Device, *, controls: tuple[Device, ...]
) -> tuple[Sketch, ...]:
    """The band and the walk where a movement detector sees some of it, and what it sees."""
    if catalogue.sheet(device.sheet).kind != "movement-detector":
        return ()
    cells = seen_of_band(house, catalogue, device, controls=controls).cells
    found: list[Sketch] = []
    for storey, mask in cells.items():
        found.extend(_on_band(house, catalogue, storey, controls=controls))
        found.extend(_floor_sketch("arrival-seen", house, storey, mask=mask))
    walks = _walks(house, catalogue, controls)
    return (*found, *(sketch for sketch in walks if sketch.storey in cells))


@lru_cache(maxsize=64)
def _on_band(
    house: Site, catalogue: Catalogue, storey: str, *, controls: tuple[Device, ...]
) -> tuple[Sketch, ...]:
    """The band, whichever detector sees some of it."""
    return _floor_sketch("arrival-band", house, storey, mask=band_of(house, catalogue, controls)[storey])


@lru_cache(maxsize=64)
def _walks(house: Site, catalogue: Catalogue, controls: tuple[Device, ...]) -> tuple[Sketch, ...]:
    return tuple(sketch for trip in trips_to(house, catalogue, controls) for sketch in walk_on(trip))


def _floor_sketch(
    role: Literal["arrival-band", "arrival-seen"], house: Site, storey: str, *, mask: BoolArray
) -> tuple[Sketch, ...]:
    """Some floor of a storey; nothing where it is too little to draw."""
    grid = grids_of(house)[storey]
    rings = outlines(grid, mask, tolerance=grid.cell)
    return (Sketch(role=role, storey=storey, rings=rings),) if rings else ()

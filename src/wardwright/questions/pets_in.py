"""Question 17: with the pets in, which detectors can stay?"""

from __future__ import annotations

import math
from functools import lru_cache

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.estimate import Estimate
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, PartAnswer, about_the_site, unanswered
from wardwright.questions.pet_mends import pet_mends
from wardwright.questions.pet_sketches import pet_sketches
from wardwright.questions.pet_verdicts import verdict_of, worst_of
from wardwright.rules.animal_tops import Top
from wardwright.rules.animals import Roaming, animals
from wardwright.rules.kit import devices_of, movement_detectors
from wardwright.trials.pet_room import PetRoom, room_for
from wardwright.trials.watchers import heard_in

NUMBER = 17
MEASURE = "room between the animal and the lowest zone above it"
NOT_ACTIVE = "it is in no zone that alarms while the alarm is set"


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each movement detector."""
    if not devices_of(site, catalogue, "movement-detector"):
        return (about_the_site(NUMBER, MEASURE, site=site, reason="no movement detector"),)
    try:
        household = animals(site, catalogue)
    except NotComputable:
        return (about_the_site(NUMBER, MEASURE, site=site, reason="no pets told"),)
    heard = [heard_in(site, part.id) for part in site.parts]
    zoned = {device for zone in site.zones for device in zone.devices}
    has_contact = frozenset(
        device.mount.opening
        for device, _ in devices_of(site, catalogue, "opening-contact")
        if isinstance(device.mount, OpeningMount)
    )
    found = []
    for device, sheet in movement_detectors(site, catalogue):
        behaviours = [one[device.id] for one in heard if device.id in one]
        if device.id in zoned and not any(one.alarms for one in behaviours):
            found.append(
                unanswered(
                    NUMBER,
                    MEASURE,
                    subject=device.name,
                    subject_id=device.id,
                    reason=NOT_ACTIVE,
                    verdict="good",
                )
            )
            continue
        answer = _answer(
            site.bare,
            catalogue,
            device,
            sheet=sheet,
            household=household,
            has_contact=has_contact,
        )
        if device.id not in zoned:
            answer = answer.model_copy(
                update={
                    "notes": (*answer.notes, "it is in no zone yet: taken as active while the pets are in")
                }
            )
        found.append(answer)
    return tuple(found)


@lru_cache(maxsize=512)
def _answer(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    sheet: MovementSheet,
    household: tuple[Roaming, ...],
    has_contact: frozenset[str],
) -> Answer:
    rooms = tuple(room_for(house, catalogue, device, sheet=sheet, animal=one) for one in household)
    worst = worst_of(rooms)
    verdict = verdict_of(worst)
    return Answer(
        question=NUMBER,
        subject=device.name,
        subject_id=device.id,
        measure=f"{MEASURE}: {worst.animal.pet.name}{_on(worst)}",
        estimate=worst.estimate,
        verdict=verdict,
        parts=tuple(part for one in rooms for part in _parts(one)),
        notes=tuple(note for one in rooms for note in _notes(house, one)) + LIMITS,
        mends=pet_mends(house, catalogue, device, sheet=sheet, now=rooms, has_contact=has_contact)
        if verdict != "good"
        else (),
        sketches=pet_sketches(house, device, worst, is_good=verdict == "good"),
    )


LIMITS = (
    "walk it with the animal: the layout of the zones is typical, and a crawling intruder is as low as a dog",
)


def _on(room: PetRoom) -> str:
    return "" if room.least is None else f" on {room.least.name}"


def _parts(room: PetRoom) -> tuple[PartAnswer, ...]:
    name, found = (
        room.animal.pet.name,
        [PartAnswer(name=f"{room.animal.pet.name}: {MEASURE}", estimate=room.estimate)],
    )
    label = f"{name}: walks until it trips it"
    if room.trips_after is not None and math.isfinite(room.trips_after[1]):
        low, likely, high = room.trips_after
        found.append(
            PartAnswer(
                name=label,
                estimate=Estimate(
                    value=likely, low=low, high=high if math.isfinite(high) else likely, unit="s"
                ),
            )
        )
    else:
        found.append(PartAnswer(name=label, estimate=None, reason="it does not, as it is told"))
    if room.least is not None and room.least.kind not in ("floor", "stair"):
        basis: Basis = "default"
        jump = Estimate(value=room.needs_m, low=room.needs_m, high=room.needs_m, unit="m", basis=basis)
        found.append(PartAnswer(name=f"{name}: jump that gets it onto {room.least.name}", estimate=jump))
    return tuple(found)


def _notes(house: Site, room: PetRoom) -> tuple[str, ...]:
    name = room.animal.pet.name
    sheet = (
        "names no animal that it passes"
        if room.left.passes_kg <= 0
        else f"passes up to {room.left.passes_kg:.3g} kg"
    )
    notes = [f"{name} weighs {room.animal.mass_kg:.3g} kg; the sheet {sheet}"]
    if not room.left.is_in_view:
        notes.append(f"{name} gets to no place that is in its sight and reach")
    if room.breaks:
        notes.append(f"{name} reaches its zones from {', '.join(_place(house, top) for top in room.breaks)}")
    if room.lets_in:
        named = {one.id: one.name for one in house.openings} | {one.id: one.name for one in house.stairs}
        ways = ", ".join(named.get(one.by, "an open side") for one in reversed(room.lets_in))
        notes.append(f"{name} gets farther than it is told to stay, for nothing shuts it out: by {ways}")
    return tuple(notes)


def _place(house: Site, top: Top) -> str:
    height = top.top_m - house.storey(top.storeys[0]).elevation_m
    return top.name if top.kind == "floor" else f"{top.name} ({height:.1f} m up)"

"""Question 18: are smoke, heat, CO and water devices within the published distances? A check, never a fire design."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.record import Basis, Point2
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, PartAnswer, Verdict, about_the_site
from wardwright.rules.finding import Finding
from wardwright.rules.fire import FIRE_RULES
from wardwright.rules.fire_alarms import CAUTION, alarms
from wardwright.rules.kit import devices_of
from wardwright.rules.limits import cited
from wardwright.rules.published_distances import (
    Distance,
    distance_of_room,
    distances_of_alarm,
    distances_of_water,
)
from wardwright.rules.registry import findings_of
from wardwright.rules.water import WATER_RULES
from wardwright.rules.water_detectors import water_detectors

NUMBER = 18
MEASURE = "margin within the nearest published limit"
FIRE_KINDS = ("smoke-alarm", "heat-alarm", "co-alarm")
FITTED_TO_M = 0.05
"""How exactly a device is fitted where the plan has it. [m] (assumption)"""


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """An answer for each such device, each room whose door a smoke alarm is to be near to, and what is missing."""
    kinds = {row.id for row in catalogue.sheets if row.kind in (*FIRE_KINDS, "water-detector")}
    devices = tuple(one for one in site.devices if one.sheet in kinds)
    if not devices:
        reason = (
            "no smoke, heat or CO alarm and no water detector is drawn; "
            "the dwelling's own may be there all the same"
        )
        return (about_the_site(NUMBER, MEASURE, site=site, reason=reason),)
    # Other devices, people and programme make no difference: remembered without them.
    return _answers(site.bare.model_copy(update={"name": site.name, "devices": devices}), catalogue)


@lru_cache(maxsize=64)
def _answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    findings = [one for rule in (*FIRE_RULES, *WATER_RULES) for one in findings_of(rule, site, catalogue)]
    by_subject: dict[str, list[Finding]] = {}
    for finding in findings:
        by_subject.setdefault(finding.subject, []).append(finding)
    found = [*_of_devices(site, catalogue, by_subject), *_of_rooms(site, catalogue, by_subject)]
    told = {one.subject_id for one in found}
    names = {one.id: one.name for one in site.storeys} | {one.id: one.name for one in site.spaces}
    names |= {one.id: one.name for one in site.fixtures} | {one.id: one.name for one in site.devices}
    found += [
        _answer(catalogue, (subject, names.get(subject, subject)), (), own, at=None)
        for subject, own in sorted(by_subject.items())
        if subject not in told and subject != site.name and any(one.severity != "not run" for one in own)
    ]
    return tuple(found)


def _of_devices(site: Site, catalogue: Catalogue, found: dict[str, list[Finding]]) -> Iterable[Answer]:
    if any(devices_of(site, catalogue, kind) for kind in ("smoke-alarm", "heat-alarm", "co-alarm")):
        for alarm in alarms(site, catalogue, "smoke-alarm", "heat-alarm", "co-alarm"):
            device = alarm.device
            yield _answer(
                catalogue,
                (device.id, device.name),
                distances_of_alarm(site, catalogue, alarm),
                found.get(device.id, []),
                at=(alarm.place.storey, alarm.point),
                basis=device.basis_of("mount"),
            )
    if devices_of(site, catalogue, "water-detector"):
        for one in water_detectors(site, catalogue):
            yield _answer(
                catalogue,
                (one.device.id, one.device.name),
                distances_of_water(site, catalogue, one),
                found.get(one.device.id, []),
                at=(one.place.storey, one.point),
                basis=one.device.basis_of("mount"),
            )


def _of_rooms(site: Site, catalogue: Catalogue, found: dict[str, list[Finding]]) -> Iterable[Answer]:
    if not devices_of(site, catalogue, "smoke-alarm"):
        return
    smoke = alarms(site, catalogue, "smoke-alarm")
    for room in sorted(site.spaces, key=lambda one: one.id):
        walk = distance_of_room(site, catalogue, room, smoke=smoke)
        if walk is not None:
            yield _answer(
                catalogue,
                (room.id, room.name),
                (walk,),
                found.get(room.id, []),
                at=None if walk.to is None else (room.storey, walk.to),
                basis=room.basis_of("use"),
            )


def _answer(  # noqa: PLR0917 - who, its distances and its findings are what every answer here has
    catalogue: Catalogue,
    subject: tuple[str, str],
    distances: tuple[Distance, ...],
    findings: list[Finding],
    *,
    at: tuple[str, Point2] | None,
    basis: Basis = "default",
) -> Answer:
    ident, name = subject
    faults = [one for one in findings if one.severity != "not run"]
    nearest = min(distances, key=lambda one: one.margin_m, default=None)
    estimate = None if nearest is None else _margin(nearest, basis)
    verdict: Verdict = "unknown" if estimate is None else "thin" if estimate.low < 0.0 else "good"
    if faults or (estimate is not None and estimate.value < 0.0):
        verdict = "bad"
    notes = [CAUTION, *(one.message for one in faults)]
    notes += [f"not checked: {one.message}" for one in findings if one.severity == "not run"]
    if nearest is not None:
        words = "at least" if nearest.is_least else "at most"
        told = f"{nearest.what}: {words} {nearest.limit.value:g} m ({cited(catalogue, nearest.limit)})"
        notes.insert(0, f"decided by the distance {told}")
    reason = None
    if estimate is None:
        reason = faults[0].message if faults else "not computable: the rule pack has no distance for it"
    return Answer(
        question=NUMBER,
        subject=name,
        subject_id=ident,
        measure=MEASURE,
        estimate=estimate,
        reason=reason,
        verdict=verdict,
        parts=tuple(_part(one, basis) for one in distances),
        notes=tuple(dict.fromkeys(notes)),
        mends=tuple(mend for one in faults for mend in one.mends),
        sketches=(*_drawn(nearest, at), *(sketch for one in faults for sketch in one.sketches)),
    )


def _margin(nearest: Distance, basis: Basis) -> Estimate:
    value = nearest.margin_m
    return Estimate(
        value=value,
        low=value - FITTED_TO_M,
        high=value + FITTED_TO_M,
        unit="m",
        drivers=(Driver(name="how exactly it is fitted", swing=2.0 * FITTED_TO_M, basis=basis),),
        basis=basis,
    )


def _part(one: Distance, basis: Basis) -> PartAnswer:
    words = "at least" if one.is_least else "at most"
    exact = Estimate(value=one.value_m, low=one.value_m, high=one.value_m, unit="m", basis=basis)
    return PartAnswer(name=f"{one.what}, {words} {one.limit.value:g} m", estimate=exact)


def _drawn(nearest: Distance | None, at: tuple[str, Point2] | None) -> tuple[Sketch, ...]:
    """The deciding distance as a line with its length, or as a place with it where it is a walk."""
    if nearest is None or at is None:
        return ()
    storey, point = at
    points = (point,) if nearest.to is None or nearest.to == point else (point, nearest.to)
    return (Sketch(role="distance", storey=storey, points=points, label=f"{nearest.value_m:.2f} m"),)

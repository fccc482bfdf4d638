"""Question 11: what does this movement detector really see?"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray, Grid, outlines
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.record import BASES, Basis
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.detection.from_site import crossing_angles, seen_facts, watch
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.questions.answer import Answer, PartAnswer, Verdict, about_the_site
from wardwright.trials.watchers import control_units, devices_of
from wardwright.trials.ways_in import ways_in
from wardwright.trials.ways_on_foot import spot_of, starts_of, walks_from

NUMBER = 11
MEASURE = "blind part of its own space"
SHARES = (0.8, 1.0, 1.2)
"""Low, likely and high share of the sheet's reach. [-] (the figure `detector-reach`)"""
BLIND_THIN = 0.2
"""A larger blind part is worth a look. [-] (assumption)"""
BLIND_BAD = 0.5
"""A larger blind part means that it watches less than half its room. [-] (assumption)"""
TOWARD_DEG = 30.0
"""A walk that never crosses at a wider angle than this is mostly toward the detector. [deg] (assumption)"""


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each movement detector."""
    found = devices_of(site, catalogue, "movement-detector")
    if not found:
        return (about_the_site(NUMBER, MEASURE, site=site, reason="no movement detector"),)
    units = control_units(site, catalogue)
    goal = spot_of(site, units[0]) if units else None
    return tuple(_answer(site.bare, catalogue, device, goal=goal) for device in found)


@lru_cache(maxsize=256)
def _answer(site: Site, catalogue: Catalogue, device: Device, *, goal: Spot | None) -> Answer:
    seen = _seen(site, catalogue, device)
    angles = () if goal is None else _angles(site, catalogue, device, goal=goal)
    return Answer(
        question=NUMBER,
        subject=device.name,
        subject_id=device.id,
        measure=MEASURE,
        estimate=seen.blind,
        reason=None if seen.blind is not None else "not computable: it stands in no space",
        verdict=_verdict(seen.blind),
        parts=(*seen.parts, *angles),
        notes=_notes(site, seen.blind, leaks=seen.leaks, angles=angles),
        sketches=seen.sketches,
    )


class _Seen(NamedTuple):
    """What a detector sees, wherever the control unit stands."""

    blind: Estimate | None
    leaks: tuple[tuple[str, float], ...]
    parts: tuple[PartAnswer, ...]
    sketches: tuple[Sketch, ...]


@lru_cache(maxsize=256)
def _seen(site: Site, catalogue: Catalogue, device: Device) -> _Seen:
    facts = seen_facts(site, catalogue, device, reach_shares=SHARES)
    basis = _weaker(device.basis_of("mount"), device.basis_of("heading_deg"))
    areas = (
        ("seen at 0.3 m height", facts.seen_at_03_m2),
        ("seen at 1.0 m height", facts.seen_at_10_m2),
        ("surely noticed on", facts.low_m2),
        ("possibly noticed on", facts.high_m2),
        ("seen outside its space", facts.leak_m2),
    )
    return _Seen(
        _over_reach(facts.blind_share, unit="-", basis=basis),
        facts.leak_spaces,
        tuple(
            PartAnswer(name=name, estimate=_over_reach(area, unit="m2", basis=basis)) for name, area in areas
        ),
        _sketches(site, catalogue, device),
    )


def _weaker(one: Basis, other: Basis) -> Basis:
    return BASES[max(BASES.index(one), BASES.index(other))]


def _over_reach(values: tuple[float, ...], *, unit: str, basis: Basis) -> Estimate | None:
    """An estimate from values at the low, likely and high share of the reach."""
    if any(math.isnan(value) for value in values):
        return None
    swing = abs(values[2] - values[0])
    drivers = (Driver(name="detector's reach", swing=swing, basis="default"),) if swing > 1e-9 else ()
    return Estimate(
        value=values[1],
        low=min(values),
        high=max(values),
        unit=unit,
        drivers=drivers,
        basis=_weaker(basis, "default") if drivers else basis,
    )


def _verdict(blind: Estimate | None) -> Verdict:
    if blind is None:
        return "unknown"
    if blind.value > BLIND_BAD:
        return "bad"
    return "thin" if blind.value > BLIND_THIN or blind.high > BLIND_BAD else "good"


def _angles(site: Site, catalogue: Catalogue, device: Device, *, goal: Spot) -> tuple[PartAnswer, ...]:
    """How the fastest way from each opening to the control unit crosses its view."""
    starts, walks = walks_from(site, catalogue, goal, starts=starts_of(site, catalogue))
    angles = crossing_angles(site, catalogue, device, walks=walks)
    part_of = dict(zip(starts, walks.parts, strict=True))
    found: dict[str, PartAnswer] = {}
    for way in ways_in(site, catalogue)[0]:
        # Where no way on foot leads to the goal, question 1 says so.
        part = part_of.get(way_in_spot(site, way.opening))
        if way.opening.id in found or part is None:
            continue
        inside = angles[part][np.isfinite(angles[part])]
        if inside.size:
            ordered = np.sort(inside)
            low, likely, high = (percentile(ordered, share) for share in (0.05, 0.5, 0.95))
            found[way.opening.id] = PartAnswer(
                name=f"crossing angle from {way.opening.name}",
                estimate=Estimate(value=likely, low=low, high=high, unit="deg", basis="default"),
            )
    return tuple(found.values())


def percentile(ordered: FloatArray, share: float) -> float:
    """The value that a share of ordered values lies below: numpy's own, without its long set-up."""
    place = share * (len(ordered) - 1)
    below = int(place)
    low, high = float(ordered[below]), float(ordered[min(below + 1, len(ordered) - 1)])
    part = place - below
    # Reckoned from the nearer end, as numpy does, so that both agree to the last digit.
    return low + (high - low) * part if part < 0.5 else high - (high - low) * (1.0 - part)


def _notes(
    site: Site,
    blind: Estimate | None,
    *,
    leaks: tuple[tuple[str, float], ...],
    angles: tuple[PartAnswer, ...],
) -> tuple[str, ...]:
    notes = []
    if blind is not None and blind.value > BLIND_BAD:
        notes.append("more than half of its own space is out of its sight")
    if leaks:
        notes.append("sees into " + ", ".join(site.space(space).name for space, _ in leaks))
    toward = [
        part.name.removeprefix("crossing angle from ")
        for part in angles
        if part.estimate is not None and part.estimate.high < TOWARD_DEG
    ]
    if toward:
        notes.append("walked at mostly toward it, where it notices late: from " + ", ".join(toward))
    notes.append("crawling and very slow movement may pass unnoticed")
    return tuple(notes)


def _sketches(site: Site, catalogue: Catalogue, device: Device) -> tuple[Sketch, ...]:
    shapes = watch(site, catalogue, device)
    found = []
    for role, mask in (
        ("possibly-seen", shapes.high & ~shapes.low),
        ("seen", shapes.low),
        ("leak", shapes.leak),
    ):
        rings = _smooth(shapes.grid, mask)
        if rings:
            found.append(Sketch.model_validate({"role": role, "storey": shapes.storey, "rings": rings}))
    return tuple(found)


def _smooth(grid: Grid, mask: BoolArray) -> tuple[tuple[tuple[float, float], ...], ...]:
    return outlines(grid, mask, tolerance=grid.cell)

"""MOV104: a movement detector whose reach ends before its space does."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.detection.from_site import watch
from wardwright.rules.ahead import CELL_M, Ahead, ahead_of
from wardwright.rules.detector_spots import moved_to_better_spot
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import movement_detectors
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions

ROOM_TO_CROSS_M2 = 0.5
"""A smaller part beyond its reach lets nobody by. [m2] (assumption)"""
KEPT_SHARE = 0.9
"""A better place watches at least this share of the floor that is watched now. [-] (assumption)"""


@rule(
    code="MOV104",
    name="movement-detector-reach-shorter-than-its-space",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="advise",
    sources=(),
)
def movement_detector_reach_shorter_than_its_space(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Movement detectors that look at a part of their own space from farther off than they reach.

    What it checks
        For each movement detector, the floor of its own space that lies in its fan and in plain sight, doors as they
        are told to stand: how far the farthest of it is, against the reach on its sheet. Floor that another movement
        detector watches does not count, nor less than 0.5 m2 of it.
    Why it matters
        On the plan, and on the day, the far end looks watched, for nothing stands in the way. Somebody who keeps to
        that end is never noticed.
    How to put it right
        Move it to the place given, from which all that it sees of the space is within its reach. Where there is none,
        use one that reaches farther, or add a second for the far end.
    What it cannot know
        How far it really reaches in this room: less in a warm one, and less for somebody who walks straight at it.
        The walk test settles that.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such detector, with the farthest place that it sees but does not reach, and its reach [m].

    Raises
    ------
    NotComputable
        If there is no movement detector.
    """
    this = movement_detector_reach_shorter_than_its_space
    detectors = movement_detectors(site, catalogue)
    for device, sheet in detectors:
        ahead = ahead_of(site, device, sheet)
        if ahead.space is None:
            yield this.not_run(
                device.id, f"{device.name}: it stands in no space", cure="Draw the space it watches"
            )
            continue
        others = tuple(other for other, _ in detectors if other.id != device.id)
        far, distance = _beyond(site, catalogue, ahead, reach_m=sheet.reach_m, others=others)
        if _area(far) < ROOM_TO_CROSS_M2:
            continue
        mends = _reaching_all(site.bare, device, sheet)
        place = standing(site, device)
        farthest = far[int(np.argmax(distance))]
        new = suggestions(site, mends)
        yield this.finding(
            device.id,
            f"{device.name}: it sees a part of {ahead.space.name} that it does not reach",
            cure="Move it to the place given"
            if mends
            else "Use one that reaches farther, or add a second for the far end",
            estimate=exactly(
                float(distance.max()),
                "m",
                weakest(device.basis_of("mount"), ahead.space.basis_of("outline_m")),
            ),
            limit=sheet.reach_m,
            mends=mends,
            sketches=(
                Sketch(
                    role="fault",
                    storey=place.storey,
                    points=((place.x_m, place.y_m), (float(farthest[0]), float(farthest[1]))),
                    label=ahead.space.name,
                ),
                *new,
            ),
            related=(ahead.space.id,),
        )


@lru_cache(maxsize=128)
def _reaching_all(site: Site, device: Device, sheet: MovementSheet) -> tuple[Mend, ...]:
    """A place from which it reaches all that it sees of its space, whatever others watch."""
    least = KEPT_SHARE * _within(ahead_of(site, device, sheet), sheet.reach_m)

    def reaches_all(moved: Device) -> bool:
        then = ahead_of(site, moved, sheet)
        over = then.distance(then.own_floor()) > sheet.reach_m
        is_reached = CELL_M**2 * np.count_nonzero(over) < ROOM_TO_CROSS_M2
        return bool(is_reached and _within(then, sheet.reach_m) >= least)

    return moved_to_better_spot(site, device, sheet, accepts=reaches_all)


def _beyond(
    site: Site, catalogue: Catalogue, ahead: Ahead, *, reach_m: float, others: tuple[Device, ...]
) -> tuple[FloatArray, FloatArray]:
    """Floor of its space that it sees, does not reach, and nobody else watches; how far off it is. [m]"""
    floor = ahead.own_floor()
    distance = ahead.distance(floor)
    is_left = distance > reach_m + 1e-9
    for other in others:
        if is_left.any():
            is_left &= ~_watched_by(site, catalogue, other, storey=ahead.level.storey.id, points=floor)
    return floor[is_left], distance[is_left]


def _watched_by(
    site: Site, catalogue: Catalogue, other: Device, *, storey: str, points: FloatArray
) -> BoolArray:
    shape = watch(site, catalogue, other)
    if shape.storey != storey:
        return np.zeros(len(points), dtype=np.bool_)
    watched: BoolArray = shape.seen[shape.grid.cells_of(points)]
    return watched


def _area(points: FloatArray) -> float:
    return CELL_M**2 * len(points)


def _within(ahead: Ahead, reach_m: float) -> float:
    """Floor of its space that it sees and reaches. [m2]"""
    return CELL_M**2 * int(np.count_nonzero(ahead.distance(ahead.own_floor()) <= reach_m))

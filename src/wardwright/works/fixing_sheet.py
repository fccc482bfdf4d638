"""How each device is fixed: how far from which corner, how high, held by what on what, and what to beware of."""

from __future__ import annotations

import math
from typing import Literal

from wardwright.costing.labour import likely_minutes
from wardwright.costing.tasks import Climb, climb_of, device_tasks
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount, Surface, WallMount
from wardwright.model.fabric import Space
from wardwright.model.placement import direction, sides_of_opening, space_at, standing
from wardwright.model.record import Id, Point2, Record
from wardwright.model.site import Site
from wardwright.rules.dangers import Danger, dangers_of
from wardwright.rules.finding import Mend

COLDEST, FRESHEST = "adhesive-surface-least", "adhesive-paint-least"
"""Limits that adhesive asks for."""
ALONG = 0.98
"""Cosine from which on an edge of a room runs along a wall. [-]"""
DRILLS = "work-drill-"
Side = Literal["left", "right"]


class FixingSheet(Record):
    """All that one needs to know to fix one device."""

    device: Id
    storey: Id
    space: Id | None
    """None: outside."""
    on: Literal["wall", "ceiling", "opening", "free"]
    corner: Side | None
    """The nearer end of its wall as one faces it; None: it hangs on no wall."""
    from_corner_m: float | None
    """From that corner of the room to its middle, outside from that end of the wall; None: the same. [m]"""
    height_m: float
    """Its middle above the floor of its storey. [m]"""
    climb: Climb
    held_by: Literal["screws", "adhesive"] | None
    """None: not decided."""
    surface: Surface
    drilled: Literal["light", "masonry", "hard", "metal", "unknown"] | None
    """What a drill meets; None: nothing is drilled."""
    least_surface_c: float | None
    """Adhesive wants it no colder; None: no adhesive. [deg C]"""
    least_paint_days: float | None
    """Nor painted more lately. [d]"""
    dangers: tuple[Danger, ...]
    minutes: float
    """To fit and prove it, preparing left out, at the likely value. [min]"""


def fixing_sheet(site: Site, catalogue: Catalogue, device: Device) -> FixingSheet:
    """Say how one device is fixed.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Sheets, times and limits.
    device : Device
        It.

    Returns
    -------
    FixingSheet
        What nobody decided is not decided here either.
    """
    at = standing(site, device)
    space = _room(site, device)
    tasks = device_tasks(site, catalogue, device)
    drilled = [
        name.removeprefix(DRILLS) for task in tasks for name in task.figures if name.startswith(DRILLS)
    ]
    fixing = device.fixing
    is_taped = any("work-stick" in task.figures for task in tasks)
    corner, far = _corner(site, device)
    pack = site.place.rule_pack
    return FixingSheet.model_validate(
        {
            "device": device.id,
            "storey": at.storey,
            "space": None if space is None else space.id,
            "on": device.mount.on,
            "corner": corner,
            "from_corner_m": far,
            "height_m": at.height_m,
            "climb": climb_of(site, device),
            "held_by": None if fixing is None else fixing.by,
            "surface": "unknown" if fixing is None else fixing.surface,
            "drilled": drilled[0] if drilled else None,
            "least_surface_c": catalogue.limit(COLDEST, pack).value if is_taped else None,
            "least_paint_days": catalogue.limit(FRESHEST, pack).value if is_taped else None,
            "dangers": dangers_of(site, catalogue, Mend(action="change-mount", subject=device.id)),
            "minutes": likely_minutes(
                tuple(task for task in tasks if task.phase in ("fit", "prove")), catalogue
            ),
        }
    )


def _room(site: Site, device: Device) -> Space | None:
    """The space that a device is in; of one on a leaf to outside, the one that it leads into."""
    if isinstance(device.mount, OpeningMount):
        sides = sides_of_opening(site, site.opening(device.mount.opening))
        rooms = [site.space(side) for side in sides if side is not None]
        ours = [room for room in rooms if room.is_protected] or rooms
        return min(ours, key=lambda room: room.id) if ours else None
    at = standing(site, device)
    return space_at(site, at.storey, (at.x_m, at.y_m))


def _corner(site: Site, device: Device) -> tuple[Side | None, float | None]:
    """The nearer corner as one faces the wall, and how far it is from there. [m]"""
    mount = device.mount
    if not isinstance(mount, WallMount):
        return None, None
    wall = site.wall(mount.wall)
    unit, _, length = direction(wall.line_m)
    at = standing(site, device)
    space = space_at(site, wall.storey, (at.x_m, at.y_m))
    ends = (0.0, length)
    if space is not None:
        ends = _ends_in(space.outline_m, wall.line_m[0], unit, at=(at.x_m, at.y_m)) or ends
    back, ahead = mount.offset_m - ends[0], ends[1] - mount.offset_m
    # Whoever faces a wall from its left side has its far end on their left.
    sides: tuple[Side, Side] = ("right", "left") if mount.side == "left" else ("left", "right")
    return (sides[0], back) if back <= ahead else (sides[1], ahead)


def _ends_in(
    outline: tuple[Point2, ...], start: Point2, unit: Point2, *, at: Point2
) -> tuple[float, float] | None:
    """Where along a wall the edge of a room begins and ends that a place is at; None where no edge runs along it."""
    best: tuple[float, tuple[float, float]] | None = None
    for one, other in zip(outline, (*outline[1:], outline[0]), strict=True):
        run = (other[0] - one[0], other[1] - one[1])
        size = math.hypot(*run)
        if size == 0.0 or abs(run[0] * unit[0] + run[1] * unit[1]) < ALONG * size:
            continue
        places = sorted((x - start[0]) * unit[0] + (y - start[1]) * unit[1] for x, y in (one, other))
        here = (at[0] - start[0]) * unit[0] + (at[1] - start[1]) * unit[1]
        aside = abs(run[0] * (at[1] - one[1]) - run[1] * (at[0] - one[0])) / size
        is_beside = places[0] - 1e-6 <= here <= places[1] + 1e-6
        if is_beside and (best is None or aside < best[0]):
            best = (aside, (places[0], places[1]))
    return None if best is None else best[1]

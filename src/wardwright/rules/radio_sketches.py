"""A radio link to be drawn: its path on each storey, and what takes most of it."""

from __future__ import annotations

from wardwright.model.record import Point2, Point3
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.radio.from_site import Met
from wardwright.rules.radio_links import HopLevel, Link

COSTLY = 3
"""So many of the things that cost a path most are named and drawn. [-]"""
COSTLY_DB = 1.0
"""What takes less is not named. [dB] (assumption)"""
WALL_DRAWN_M = 0.5
"""How long a piece of a costly wall is drawn, on each side of the path. [m]"""


def costly_on(level: HopLevel) -> tuple[Met, ...]:
    """What takes most on a hop, the worst first."""
    return tuple(met for met in level.path.met if met.loss_db >= COSTLY_DB)[:COSTLY]


def radio_sketches(house: Site, link: Link) -> tuple[Sketch, ...]:
    """Each hop on the storeys that it goes through, and the costly walls where it meets them."""
    found: list[Sketch] = []
    for level in link.hops:
        ends = (level.hop.sender.place, level.hop.receiver.place)
        for storey, points in _by_storey(house, *ends):
            found.append(Sketch(role="radio-path", storey=storey, points=points))
        found.extend(_costly_sketch(house, met) for met in costly_on(level))
    return tuple(found)


def _by_storey(house: Site, one: Point3, other: Point3) -> list[tuple[str, tuple[Point2, Point2]]]:
    """The piece of a path on each storey's plan."""
    rising = sorted(house.storeys, key=lambda storey: (storey.elevation_m, storey.id))
    found = []
    for i, storey in enumerate(rising):
        low = storey.elevation_m if i else float("-inf")
        high = rising[i + 1].elevation_m if i + 1 < len(rising) else float("inf")
        rise = other[2] - one[2]
        if abs(rise) < 1e-9:
            first, last = (0.0, 1.0) if low <= one[2] < high else (1.0, 0.0)
        else:
            first, last = sorted(((low - one[2]) / rise, (high - one[2]) / rise))
        first, last = max(first, 0.0), min(last, 1.0)
        if last > first:
            found.append((storey.id, (_at(one, other, first), _at(one, other, last))))
    return found


def _at(one: Point3, other: Point3, part: float) -> Point2:
    return (one[0] + part * (other[0] - one[0]), one[1] + part * (other[1] - one[1]))


def _costly_sketch(house: Site, met: Met) -> Sketch:
    x, y, z = met.at_m
    rising = sorted(house.storeys, key=lambda storey: (storey.elevation_m, storey.id))
    storey = next((one.id for one in reversed(rising) if one.elevation_m <= z + 1e-6), rising[0].id)
    label = f"{met.loss_db:.0f} dB"
    line = _along(house, met)
    if line is None:
        return Sketch(role="radio-cost", storey=storey, points=((x, y),), label=label)
    (ux, uy), off = line, WALL_DRAWN_M
    ends_drawn = ((x - ux * off, y - uy * off), (x + ux * off, y + uy * off))
    return Sketch(role="radio-cost", storey=storey, points=ends_drawn, label=label)


def _along(house: Site, met: Met) -> Point2 | None:
    """Unit vector along the wall that is met; None for what is no wall."""
    if met.thing.kind not in ("wall", "opening"):
        return None
    ident = met.thing.ident if met.thing.kind == "wall" else house.opening(met.thing.ident).wall
    (ax, ay), (bx, by) = house.wall(ident).line_m
    length = max(((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5, 1e-9)
    return ((bx - ax) / length, (by - ay) / length)

"""What a heat ray meets in a house, worked out once more with plain numbers: no arrays, no library of shapes.

It reads the site record alone and shares nothing with the engines. Walls are boxes on their line, with their openings
as holes; panes and shut leaves are sheets across the hole; other leaves are sheets turned on their hinge: by 10
degrees where they stand ajar, by 90 where they stand open. Glass stops body heat. All heights are above the house's
zero.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from wardwright.model.fabric import Stair, Wall
from wardwright.model.opening import Opening
from wardwright.model.site import Site

AJAR_DEG = 10.0
FINE_M = 0.005
"""In what steps a ray is followed through a wall. [m]"""
HAIR_M = 0.002
"""A hole is taken this much wider than it is, so that its own edge stops nothing. [m]"""
BALUSTRADE_M, RISER_M = 0.9, 0.2


class Hole(NamedTuple):
    """An opening in a wall: from, to along it, sill, head. [m]"""

    start: float
    end: float
    low: float
    high: float


class Slab(NamedTuple):
    """An upright box on a line: a wall, or a thing that stands about."""

    x: float
    y: float
    ux: float
    uy: float
    """Its first end and which way it goes."""
    length: float
    half: float
    """Half of its thickness."""
    low: float
    high: float
    holes: tuple[Hole, ...] = ()

    def local(self, x: float, y: float) -> tuple[float, float]:
        """Along it, and to its left. [m]"""
        dx, dy = x - self.x, y - self.y
        return dx * self.ux + dy * self.uy, dy * self.ux - dx * self.uy

    def holds(self, x: float, y: float, z: float) -> bool:
        """Whether a place is in the stuff of it."""
        along, left = self.local(x, y)
        if not (0.0 <= along <= self.length and abs(left) <= self.half and self.low <= z <= self.high):
            return False
        return not any(
            one.start - HAIR_M <= along <= one.end + HAIR_M and one.low <= z <= one.high for one in self.holes
        )


class Sheet(NamedTuple):
    """A thin upright panel: a leaf, a pane, a guard."""

    x1: float
    y1: float
    x2: float
    y2: float
    low: float
    high: float
    opening: str | None = None
    """Of which opening it is."""


class Ray(NamedTuple):
    """From a detector: where it starts, which way on the plan, how much it rises for a metre of it."""

    x: float
    y: float
    z: float
    cos: float
    sin: float
    rise: float


class Storey(NamedTuple):
    """All that stops rays on one storey, and how far it reaches up and down."""

    floor: float
    ceiling: float
    slabs: tuple[Slab, ...]
    sheets: tuple[Sheet, ...]
    wells: tuple[tuple[tuple[float, float], ...], ...]
    """Holes in its floor."""
    risers: tuple[Sheet, ...]
    """Of the flights that lead up from it or down."""


class Sight:
    """What stops rays in one house; what is known of a ray is kept."""

    def __init__(self, site: Site) -> None:
        self.storeys = {one.id: _storey(site, one.id) for one in site.storeys}
        self._known: dict[tuple[Ray, str], float] = {}

    def reach_of(self, ray: Ray, own: str, *, flights: str = "steps") -> float:
        """How far a ray goes on the plan before something stops it. [m]

        Parameters
        ----------
        ray : Ray
            The ray; it looks down.
        own : str
            The storey of the detector. Through a well in its floor the ray goes on to what is below.
        flights : {"none", "steps", "all"}, default "steps"
            What of stairs stops the ray: nothing but guards; the steps; even a well, as if it were floor.

        Returns
        -------
        float
            Infinite where nothing does.
        """
        here = self.storeys[own]
        ends = self._nearest(ray, own)
        if flights != "none":
            ends = min(ends, math.inf, *(_into_sheet(ray, one) for one in here.risers), math.inf)
        if ray.rise < 0.0:
            down = (here.floor - ray.z) / ray.rise
            if down < ends:
                place = (ray.x + down * ray.cos, ray.y + down * ray.sin)
                below = {name: one for name, one in self.storeys.items() if one.floor < here.floor - 1e-6}
                if flights == "all" or not below or not any(_is_in(place, well) for well in here.wells):
                    return down
                under = max(below, key=lambda name: below[name].floor)
                least = (below[under].floor - ray.z) / ray.rise
                ends = min(ends, max(down, self._nearest(ray, under)), least)
        return ends

    def _nearest(self, ray: Ray, storey: str) -> float:
        if (ray, storey) not in self._known:
            self._known[ray, storey] = _nearest(ray, self.storeys[storey])
        return self._known[ray, storey]


def _nearest(ray: Ray, storey: Storey) -> float:
    slabs = (_into_slab(ray, one) for one in storey.slabs)
    return min(math.inf, *slabs, *(_into_sheet(ray, one) for one in storey.sheets), math.inf)


def _into_slab(ray: Ray, slab: Slab) -> float:
    """Where a ray first is in the stuff of a box."""
    span = _span(ray, slab)
    if span is None:
        return math.inf
    near, far = span
    if near == 0.0 and not slab.holes:
        # A thing that holds the eye stops nothing.
        return math.inf
    if not slab.holes:
        return near
    at = near
    while at <= far:
        here = min(at + 1e-9, far)
        if slab.holds(ray.x + here * ray.cos, ray.y + here * ray.sin, ray.z + here * ray.rise):
            return at
        at += FINE_M
    return math.inf


def _span(ray: Ray, slab: Slab) -> tuple[float, float] | None:
    """From where to where a ray is within the outline of a box; None: nowhere."""
    along, left = slab.local(ray.x, ray.y)
    forward = ray.cos * slab.ux + ray.sin * slab.uy
    aside = ray.sin * slab.ux - ray.cos * slab.uy
    near, far = 0.0, math.inf
    for start, rate, low, high in (
        (along, forward, 0.0, slab.length),
        (left, aside, -slab.half, slab.half),
        (ray.z, ray.rise, slab.low, slab.high),
    ):
        if abs(rate) < 1e-12:
            if not low <= start <= high:
                return None
            continue
        one, other = sorted(((low - start) / rate, (high - start) / rate))
        near, far = max(near, one), min(far, other)
    return (near, far) if near <= far else None


def _into_sheet(ray: Ray, sheet: Sheet) -> float:
    """Where a ray crosses a panel."""
    ax, ay, bx, by = sheet.x1 - ray.x, sheet.y1 - ray.y, sheet.x2 - ray.x, sheet.y2 - ray.y
    side_a, side_b = ray.cos * ay - ray.sin * ax, ray.cos * by - ray.sin * bx
    if (side_a <= 0.0) == (side_b <= 0.0):
        return math.inf
    share = side_a / (side_a - side_b)
    at = (ax + share * (bx - ax)) * ray.cos + (ay + share * (by - ay)) * ray.sin
    if at <= 0.0:
        return math.inf
    return at if sheet.low <= ray.z + at * ray.rise <= sheet.high else math.inf


def _storey(site: Site, name: str) -> Storey:
    storey = site.storey(name)
    floor, ceiling = storey.elevation_m, storey.elevation_m + storey.height_m
    slabs, sheets = [], []
    for wall in site.walls:
        if wall.storey != name:
            continue
        mine = [one for one in site.openings if one.wall == wall.id]
        slabs.append(_wall(wall, mine, floor, ceiling))
        for opening in mine:
            sheets.extend(_leaves(wall, opening, floor, ceiling))
    for thing in site.fixtures:
        if thing.storey == name:
            turn = math.radians(thing.turn_deg)
            ux, uy, (width, depth) = math.cos(turn), math.sin(turn), thing.size_m
            x, y = thing.centre_m[0] - ux * width / 2, thing.centre_m[1] - uy * width / 2
            low = floor + thing.base_m
            slabs.append(Slab(x, y, ux, uy, width, depth / 2, low, low + thing.height_m))
    wells = tuple(strip_of(stair) for stair in site.stairs if stair.upper == name)
    for stair in site.stairs:
        if stair.upper == name:
            sheets.extend(_guard(stair, floor))
    beside = (one for one in site.stairs if name in (one.lower, one.upper))
    risers = tuple(riser for one in beside for riser in _risers(site, one))
    return Storey(floor, ceiling, tuple(slabs), tuple(sheets), wells, risers)


def _risers(site: Site, stair: Stair) -> list[Sheet]:
    """The steps of a straight flight: at each a panel as deep as two risers, so that they overlap."""
    (x, y), end = stair.line_m
    ux, uy = _unit((x, y), end)
    low, high = (site.storey(one).elevation_m for one in (stair.lower, stair.upper))
    count = max(1, round((high - low) / RISER_M))
    run, rise, half = math.dist((x, y), end) / count, (high - low) / count, stair.width_m / 2
    found = []
    for step in range(count):
        at, tread = step * run, low + (step + 1) * rise
        mx, my = x + at * ux, y + at * uy
        left, right = (mx - half * uy, my + half * ux), (mx + half * uy, my - half * ux)
        found.append(Sheet(*left, *right, max(low, tread - 2.0 * rise), tread))
    return found


def _wall(wall: Wall, openings: list[Opening], floor: float, ceiling: float) -> Slab:
    (x, y), (x2, y2) = wall.line_m
    length = math.hypot(x2 - x, y2 - y)
    holes = tuple(
        Hole(
            one.offset_m - one.width_m / 2,
            one.offset_m + one.width_m / 2,
            floor + one.sill_m,
            floor + one.head_m,
        )
        for one in openings
    )
    return Slab(
        x, y, (x2 - x) / length, (y2 - y) / length, length, wall.thickness_m / 2, floor, ceiling, holes
    )


def across_of(wall: Wall, opening: Opening) -> tuple[tuple[float, float], tuple[float, float]]:
    """The line of an opening in the middle of its wall, from the wall's first end. [m]"""
    (x, y), (x2, y2) = wall.line_m
    length = math.hypot(x2 - x, y2 - y)
    ux, uy = (x2 - x) / length, (y2 - y) / length
    low, high = opening.offset_m - opening.width_m / 2, opening.offset_m + opening.width_m / 2
    return (x + low * ux, y + low * uy), (x + high * ux, y + high * uy)


def _leaves(wall: Wall, opening: Opening, floor: float, ceiling: float) -> list[Sheet]:
    """The leaf or pane, as it was told to stand; nobody tells: shut."""
    if opening.kind == "gap":
        return []
    start, end = across_of(wall, opening)
    told = opening.habit if opening.basis_of("habit") in ("told", "measured") else "shut"
    if told == "shut" or opening.hinge in ("fixed", "none"):
        return [Sheet(*start, *end, floor, ceiling, opening.id)]
    if opening.hinge not in ("start", "end") or opening.leaves != 1:
        raise NotImplementedError("a leaf that slides or has a fellow: no house here has one")
    (ux, uy), width = _unit(start, end), opening.width_m
    side = 1.0 if opening.swing == "left" else -1.0
    nx, ny = -uy * side, ux * side
    hinge, way = (start, 1.0) if opening.hinge == "start" else (end, -1.0)
    angle = math.radians(90.0 if told == "open" else AJAR_DEG)
    off = wall.thickness_m / 2 if told == "open" else 0.0
    hx, hy = hinge[0] + off * nx, hinge[1] + off * ny
    tip = (
        hx + width * (way * math.cos(angle) * ux + math.sin(angle) * nx),
        hy + width * (way * math.cos(angle) * uy + math.sin(angle) * ny),
    )
    return [Sheet(hx, hy, *tip, floor + opening.sill_m, floor + opening.head_m, opening.id)]


def _unit(start: tuple[float, float], end: tuple[float, float]) -> tuple[float, float]:
    length = math.dist(start, end)
    return (end[0] - start[0]) / length, (end[1] - start[1]) / length


def strip_of(stair: Stair) -> tuple[tuple[float, float], ...]:
    """The floor that a straight flight covers, which is the hole above it too: four corners. [m]"""
    start, end = stair.line_m
    ux, uy = _unit(start, end)
    half = stair.width_m / 2
    return (
        (start[0] - uy * half, start[1] + ux * half),
        (start[0] + uy * half, start[1] - ux * half),
        (end[0] + uy * half, end[1] - ux * half),
        (end[0] - uy * half, end[1] + ux * half),
    )


def _guard(stair: Stair, floor: float) -> list[Sheet]:
    """A guard round the well, but where the flight arrives; it is taken to be tight."""
    a, b, c, d = strip_of(stair)
    sides = ((a, b), (b, c), (d, a))
    return [Sheet(*start, *end, floor, floor + BALUSTRADE_M) for start, end in sides]


def _is_in(place: tuple[float, float], corners: tuple[tuple[float, float], ...]) -> bool:
    """Whether a place is on one side of all edges."""
    sides = []
    for (x, y), (x2, y2) in zip(corners, (*corners[1:], corners[0]), strict=True):
        sides.append((x2 - x) * (place[1] - y) - (y2 - y) * (place[0] - x) >= 0.0)
    return all(sides) or not any(sides)

"""An intruder who walks in steps of a fiftieth of a second, past detectors that are asked at each step.

A second calculation of the race, with plain numbers: it reads the site record and the figures of the catalogue and
shares nothing with the trials and the engines. Its way is told to it as corners; when it is where, which zones of
which detector it fills, what the control unit makes of it and when the message leaves it works out by itself.

What it takes from the makers' sheets, as they say it: a fan of rays; two halves of a pair, each so wide that they
just touch and twice as high; so many changes of different halves within so many seconds; least contrast. What it
takes from physics: Planck's law, in the band of 8 to 14 um, skin of 34 deg C and clothes between it and the air.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from common.slow_sight import Ray, Sight, Slab, Storey, across_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount, Device, FreeMount, OpeningMount, WallMount
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.opening import Opening
from wardwright.model.site import Site

Line = tuple[tuple[float, float], tuple[float, float]]
STEP_S = 0.02
RADIUS_M, TALL_M = 0.22, 1.75
OFF_WALL_M, OFF_CEILING_M = 0.04, 0.03
SLOWEST_HZ, QUICKEST_HZ = 0.1, 10.0
TWICE_AS_HIGH = 2.0


class Slack(NamedTuple):
    """How far a walker is from the middling one, so that nothing hangs on a hair."""

    radius: float = 0.0
    """Wider or narrower. [m]"""
    contrast: float = 1.0
    """Warmer or colder. [-]"""
    flights: str = "steps"
    """What of stairs hides it: nothing, the steps, or all: then nobody is seen through wells or on flights."""
    past_leaf: float = 0.0
    """How far it may reach past the leaf that it has opened and be seen there with its middle not yet past. [m]"""
    appears: bool = False
    """Whether a body that comes in view as a leaf opens is a change, though it stands still."""


MIDDLING = Slack()
SEEN_SOON = Slack(radius=0.015, contrast=2.0, flights="none", past_leaf=RADIUS_M, appears=True)
SEEN_LATE = Slack(radius=-0.015, contrast=0.5, flights="all", past_leaf=-0.03)
"""So much warmer and colder because a half that looks down steeply is filled by a head to twice as much or half from
one step to the next."""


class Leg(NamedTuple):
    """A piece of the way."""

    kind: str
    """`floor`, `door` or `stairs`."""
    points: tuple[tuple[float, float], ...]
    storeys: tuple[str, str]
    """From and to."""
    stair: str | None = None


class Moment(NamedTuple):
    """Where the walker is."""

    time: float
    x: float
    y: float
    feet: float
    """Above the house's zero. [m]"""
    storey: str


class Told(NamedTuple):
    """What came of it; infinite where a thing never happens. [s]"""

    signals: dict[str, float]
    """Device -> when it signals, if it does."""
    doors: dict[str, float]
    """Leaf -> when it is come to."""
    climbing: tuple[tuple[float, float], ...]
    """From when to when it is on stairs."""
    reached: float
    broken: float
    sounder: float
    message: float


class Zones(NamedTuple):
    """A movement detector in its place."""

    device: str
    storey: str
    x: float
    y: float
    z: float
    sheet: MovementSheet
    contrast: float
    rays: list[tuple[float, float, float, float]]
    """Of each its cosine, sine, rise, and how far it goes: to what stops it, or as far as the sheet says."""


class SlowWalker:
    """One intruder on one way through one house."""

    def __init__(
        self,
        site: Site,
        catalogue: Catalogue,
        *,
        part: str = "full",
        slack: Slack = MIDDLING,
        sight: Sight | None = None,
    ) -> None:
        self.site, self.catalogue, self.slack = site, catalogue, slack
        self.heard = behaviours_heard(site, part)
        self.sight = Sight(site) if sight is None else sight
        self.storeys = self.sight.storeys
        self.pass_door = catalogue.figure("pass-door").value
        self.shut = {name: _shut_doors(site, one) for name, one in self.storeys.items()}
        self.zones = [
            zones
            for one in sorted(site.devices, key=lambda device: device.id)
            if one.id in self.heard and (zones := self._zones_of(one)) is not None
        ]

    def figure(self, name: str) -> float:
        """The likely value of a figure."""
        return self.catalogue.figure(name).value

    def run(self, opening: Opening, manner: str, legs: Sequence[Leg], *, sounds: bool = True) -> Told:
        """Come in by an opening and go to the control unit.

        Parameters
        ----------
        opening : Opening
            The way in.
        manner : str
            `opened` or `through the glass`.
        legs : sequence of Leg
            The way.
        sounds : bool, default True
            Whether anything sounds.

        Returns
        -------
        Told
            Times from the opening being open.
        """
        climbs = (
            manner != "opened" or opening.kind not in ("door", "garage-door", "gap") or opening.sill_m > 0.3
        )
        moments, doors, climbing = self.timed(legs, self.figure("climb-in") if climbs else 0.0)
        signals = {one: 0.0 for one in self.heard if self._tells(one, opening, manner)}
        for name, when in doors.items():
            for device in self.site.devices:
                leaf = self.site.opening(name)
                if device.id in self.heard and self.is_contact_on(device, leaf) and leaf.habit == "shut":
                    signals.setdefault(device.id, when)
        for zones in self.zones:
            when = self.first_notice(zones, moments, doors)
            if math.isfinite(when):
                signals[zones.device] = when
        reached = moments[-1].time
        rings, due = self._control_unit(signals)
        return Told(
            signals,
            doors,
            climbing,
            reached,
            reached + self.figure("break-control-unit"),
            rings + self.figure("sounder-start") if sounds else math.inf,
            due + self.figure("message-time"),
        )

    # Time.

    def timed(
        self, legs: Sequence[Leg], start: float, *, pace: float | None = None
    ) -> tuple[list[Moment], dict[str, float], tuple[tuple[float, float], ...]]:
        """Where it is at each step, when it comes to each leaf that takes time, and when it is on stairs."""
        climbing = []
        clock = start
        if pace is None:
            pace = self.figure("pace-hurried")
        found: list[Moment] = []
        doors: dict[str, float] = {}
        for leg in legs:
            low, high = (self.site.storey(one).elevation_m for one in leg.storeys)
            if leg.kind == "stairs":
                stair = next(one for one in self.site.stairs if one.id == leg.stair)
                run = sum(math.dist(a, b) for a, b in pairwise(stair.line_m))
                lasts = math.hypot(run, high - low) / (pace * self.figure("stairs-share"))
                found += _steps(leg.points, clock, lasts, (low, high), leg.storeys)
                climbing.append((clock, clock + lasts))
                clock += lasts
                continue
            met = self._met_on(leg.points, leg.storeys[0]) if leg.kind == "floor" else []
            walked = 0.0
            for place, name in [*met, (sum(_lengths(leg.points)), None)]:
                piece = _cut(leg.points, walked, place)
                lasts = (place - walked) / pace
                found += _steps(piece, clock, lasts, (low, low), leg.storeys)
                clock, walked = clock + lasts, place
                if name is not None:
                    doors.setdefault(name, clock)
                    lasts = self.figure("pass-door")
                    found += _steps((piece[-1], piece[-1]), clock, lasts, (low, low), leg.storeys)
                    clock += lasts
        last = legs[-1]
        end = found[-1]._replace(time=clock, x=last.points[-1][0], y=last.points[-1][1])
        return [*found, end], doors, tuple(climbing)

    def _met_on(self, points: tuple[tuple[float, float], ...], storey: str) -> list[tuple[float, str]]:
        """The leaves that take time on a piece of floor, by how far it is walked to each."""
        met = []
        for opening in self.site.openings:
            wall = self.site.wall(opening.wall)
            if (
                wall.storey != storey
                or opening.kind != "door"
                or not opening.leaves
                or opening.habit == "open"
            ):
                continue
            before = 0.0
            for a, b, length in zip(points, points[1:], _lengths(points), strict=False):
                # A corner of the way may lie on the leaf's line itself: one crossing, not none and not two.
                share = _crossing(a, b, *across_of(wall, opening), hair=1e-9)
                place = before + length * (share or 0.0)
                if share is not None and all(name != opening.id or place - at > 0.01 for at, name in met):
                    met.append((place, opening.id))
                before += length
        return sorted(met)

    # Devices at openings.

    def is_contact_on(self, device: Device, opening: Opening) -> bool:
        is_contact = self.catalogue.sheet(device.sheet).kind == "opening-contact"
        return is_contact and isinstance(device.mount, OpeningMount) and device.mount.opening == opening.id

    def _tells(self, name: str, opening: Opening, manner: str) -> bool:
        """Whether a device tells at once that somebody comes in so."""
        device = next(one for one in self.site.devices if one.id == name)
        kind = self.catalogue.sheet(device.sheet).kind
        if kind == "opening-contact":
            return manner == "opened" and opening.habit == "shut" and self.is_contact_on(device, opening)
        if kind == "shock-detector":
            is_struck = manner != "opened" or (opening.is_locked and opening.lock != "none")
            short, long = sorted((opening.width_m, opening.head_m - opening.sill_m))
            sheet = self.catalogue.sheet(device.sheet).shock
            is_near = sheet is not None and math.hypot(short, long / 2) <= sheet.radius_m
            mount = device.mount
            is_there = isinstance(mount, OpeningMount) and mount.opening == opening.id
            return is_there and is_struck and is_near and opening.habit == "shut"
        if kind == "glass-break-detector":
            return manner != "opened" and self._hears(device, opening)
        return False

    def _hears(self, device: Device, pane: Opening) -> bool:
        """A pane of a sort that its sheet names, all of it near enough; it hangs in the same room in these houses."""
        sheet = self.catalogue.sheet(device.sheet).glass_break
        if sheet is None or pane.glazing not in sheet.glazings:
            return False
        wall, (x, y, z, _) = self.site.wall(pane.wall), self._place(device)
        floor = self.site.storey(wall.storey).elevation_m
        corners = [(*end, floor + up) for end in across_of(wall, pane) for up in (pane.sill_m, pane.head_m)]
        far = max(math.dist((x, y, z), corner) for corner in corners)
        least = min(pane.width_m, pane.head_m - pane.sill_m)
        reach = sheet.reach_m if pane.covering == "none" else sheet.curtained_reach_m
        return far <= reach and least >= sheet.least_pane_m

    # Movement detectors.

    def _place(self, device: Device) -> tuple[float, float, float, float]:
        """Where a device is, and where it looks: x, y, z, heading."""
        mount = device.mount
        if isinstance(mount, WallMount):
            wall = self.site.wall(mount.wall)
            (x, y), (x2, y2) = wall.line_m
            length = math.hypot(x2 - x, y2 - y)
            ux, uy, sign = (x2 - x) / length, (y2 - y) / length, 1.0 if mount.side == "left" else -1.0
            nx, ny, off = -uy * sign, ux * sign, wall.thickness_m / 2 + OFF_WALL_M
            at = (x + mount.offset_m * ux + off * nx, y + mount.offset_m * uy + off * ny)
            storey, height, straight = wall.storey, mount.height_m, math.atan2(ny, nx)
        elif isinstance(mount, CeilingMount):
            at, storey, straight = mount.at_m, mount.storey, 0.0
            height = self.site.storey(storey).height_m - OFF_CEILING_M
        else:
            assert isinstance(mount, FreeMount)
            at, storey, height, straight = mount.at_m, mount.storey, mount.height_m, 0.0
        heading = straight if device.heading_deg is None else math.radians(device.heading_deg)
        return (*at, self.site.storey(storey).elevation_m + height, heading)

    def _storey_of(self, device: Device) -> str:
        mount = device.mount
        return self.site.wall(mount.wall).storey if isinstance(mount, WallMount) else mount.storey  # type: ignore[union-attr]

    def _zones_of(self, device: Device) -> Zones | None:
        sheet = self.catalogue.sheet(device.sheet).movement
        if sheet is None:
            return None
        x, y, z, heading = self._place(device)
        storey = self._storey_of(device)
        x, y = _out_of_walls((x, y, z), heading, self.storeys[storey].slabs)
        whole, split = math.radians(sheet.angle_deg), math.radians(sheet.pair_split_deg)
        rays = []
        for row in sheet.rows:
            down = math.radians(min(row.depression_deg + device.tilt_deg, 89.0))
            for pair in range(row.pairs):
                middle = heading + whole * ((pair + 0.5) / row.pairs - 0.5)
                for turn in (-split / 2, split / 2):
                    ray = Ray(x, y, z, math.cos(middle + turn), math.sin(middle + turn), -math.tan(down))
                    ends = min(sheet.reach_m, self.sight.reach_of(ray, storey, flights=self.slack.flights))
                    rays.append((ray.cos, ray.sin, ray.rise, ends))
        room = self.site.place.usual_room_c
        contrast = times_the_least(room, sheet.least_contrast_k) * self.slack.contrast
        return Zones(device.id, storey, x, y, z, sheet, contrast, rays)

    def first_notice(self, zones: Zones, moments: Sequence[Moment], doors: dict[str, float]) -> float:
        """When a detector notices: enough halves have changed, strongly enough, within its window."""
        changed: dict[int, float] = {}
        filled: frozenset[int] = frozenset()
        before: Moment | None = None
        was_hidden = False
        for now in moments:
            is_hidden = self._is_past_stairs(zones, now) or self._leaf_between(zones, now, doors)
            was_filled, filled = filled, frozenset() if is_hidden else self._filled(zones, now)
            new = was_filled ^ filled if before is not None else ()
            for number in new:
                appears = self.slack.appears and was_hidden and not is_hidden
                if before is not None and (appears or self._is_strong(zones, number, before, now)):
                    changed[number] = now.time
            if new:
                since = now.time - zones.sheet.window_s
                if sum(when >= since for when in changed.values()) >= zones.sheet.edges_needed:
                    return now.time
            before, was_hidden = now, is_hidden
        return math.inf

    def _is_past_stairs(self, zones: Zones, now: Moment) -> bool:
        """Whether somebody is where a detector never looks: far off, higher than its own floor, or on stairs."""
        if math.hypot(now.x - zones.x, now.y - zones.y) > zones.sheet.reach_m + 2.0 * RADIUS_M:
            return True
        floor = self.storeys[zones.storey].floor
        is_above, is_elsewhere = now.feet > floor + 1e-6, now.storey != zones.storey
        if self.slack.flights == "all":
            return is_elsewhere or is_above
        return is_elsewhere and is_above

    def _leaf_between(self, zones: Zones, now: Moment, doors: dict[str, float]) -> bool:
        """Whether a shut leaf stands between a detector and the middle of the body, so that none of it is seen.

        A ray ends at the leaf, and a body that comes to it from behind would reach through it.
        """
        away = math.hypot(now.x - zones.x, now.y - zones.y)
        if away < 1e-9:
            return False
        eye, body = (zones.x, zones.y), (now.x, now.y)
        for name, line in self.shut[zones.storey]:
            is_opened = now.time >= doors.get(name, math.inf) + self.pass_door - 1e-9
            if not is_opened and _reaches_through(eye, body, line):
                return True
            share = (away - (self.slack.past_leaf if is_opened else 0.0)) / away
            end = (eye[0] + (body[0] - eye[0]) * share, eye[1] + (body[1] - eye[1]) * share)
            if _crossing(eye, end, *line) is not None:
                return True
        return False

    def _filled(self, zones: Zones, now: Moment) -> frozenset[int]:
        """The halves whose rays pass through the body before they end."""
        radius = RADIUS_M + self.slack.radius
        dx, dy, up = now.x - zones.x, now.y - zones.y, zones.z - now.feet
        found = []
        for number, (cos, sin, rise, ends) in enumerate(zones.rays):
            aside = dy * cos - dx * sin
            if not -radius <= aside <= radius:
                continue
            along = dx * cos + dy * sin
            if along > 0.0 and 0.0 <= up + rise * along <= TALL_M:
                near = along - math.sqrt(radius * radius - aside * aside)
                if near <= ends:
                    found.append(number)
        return frozenset(found)

    def _is_strong(self, zones: Zones, number: int, before: Moment, now: Moment) -> bool:
        """Whether a change of a half passes the detector: by the size of the body in it, contrast and speed."""
        lasts = now.time - before.time
        if lasts <= 0.0:
            return False
        x, y, feet = (before.x + now.x) / 2, (before.y + now.y) / 2, (before.feet + now.feet) / 2
        cos, sin, rise, _ = zones.rays[number]
        along = max(1e-6, (x - zones.x) * cos + (y - zones.y) * sin)
        vx, vy = (now.x - before.x) / lasts, (now.y - before.y) / lasts
        across, toward = vy * cos - vx * sin, vx * cos + vy * sin
        split = math.radians(zones.sheet.pair_split_deg)
        changes = math.hypot(across, toward * rise / TWICE_AS_HIGH) / (2.0 * split * along)
        if changes < SLOWEST_HZ:
            return False
        wide = 2.0 * along * math.tan(split / 2.0)
        high, level = TWICE_AS_HIGH * wide, zones.z + rise * along
        within = min(level + high / 2, feet + TALL_M) - max(level - high / 2, feet)
        body = 2.0 * (RADIUS_M + self.slack.radius)
        share = min(1.0, body / wide) * min(1.0, max(0.0, within) / high)
        return share * zones.contrast * min(1.0, QUICKEST_HZ / changes) >= 1.0

    # The control unit.

    def _control_unit(self, signals: dict[str, float]) -> tuple[float, float]:
        """When it rings, and when a message may leave."""
        radio = self.figure("radio-delay")
        return control_unit([(when + radio, name) for name, when in signals.items()], self.site, self.heard)


def control_unit(told: Sequence[tuple[float, str]], site: Site, heard: dict[str, str]) -> tuple[float, float]:
    """What the control unit makes of signals that nobody unsets.

    Parameters
    ----------
    told : sequence of (float, str)
        When which device's signal comes in. [s]
    site : Site
        For its programme and behaviours.
    heard : dict
        Device -> behaviour.

    Returns
    -------
    tuple of two float
        When it rings and when a message may leave; infinite where never. [s]
    """
    kinds = {one.id: one for one in site.behaviours}
    rings = due = runs_out = math.inf
    waits_at_end = 0.0

    def rank(one: tuple[float, str]) -> tuple[float, int]:
        kind = kinds[heard[one[1]]]
        return one[0], 1 if kind.starts_entry else 2 if kind.allowed_after_entry else 0

    for when, device in sorted(told, key=rank):
        kind = kinds[heard[device]]
        wait = site.programme.abort_delay_s if kind.delays_message else 0.0
        if not kind.alarms:
            continue
        has_rung = min(rings, runs_out) <= when
        is_entering = math.isfinite(runs_out) and not has_rung
        if is_entering and (kind.starts_entry or kind.allowed_after_entry):
            continue
        if kind.starts_entry and not has_rung:
            runs_out, waits_at_end = when + site.programme.entry_time_s, wait
            continue
        rings, due = min(rings, when), min(due, when + wait)
    return min(rings, runs_out), min(due, runs_out + waits_at_end)


def behaviours_heard(site: Site, part: str) -> dict[str, str]:
    """Device -> the behaviour of the first zone that hears it in a part."""
    names = {one.id for one in site.parts}
    always = {one.id for one in site.behaviours if one.is_always_active}
    found: dict[str, str] = {}
    for zone in sorted(site.zones, key=lambda one: one.number):
        if part not in names or part in zone.parts or zone.behaviour in always:
            for device in zone.devices:
                found.setdefault(device, zone.behaviour)
    return found


def times_the_least(air_c: float, least_k: float) -> float:
    """How many times the least contrast a clothed person has in a room: Planck's law, summed up in 400 strips."""
    clothed = air_c + 0.65 * (34.0 - air_c)
    return abs(_in_band(clothed) - _in_band(air_c)) / (_in_band(20.0 + least_k) - _in_band(20.0))


def _in_band(celsius: float) -> float:
    """What a black surface radiates between 8 and 14 um, but for a constant."""
    strips, total = 400, 0.0
    for strip in range(strips):
        um = 8.0 + (strip + 0.5) / strips * 6.0
        total += um**-5 / math.expm1(14_387.77 / (um * (celsius + 273.15)))
    return total


def _steps(
    points: tuple[tuple[float, float], ...],
    start: float,
    lasts: float,
    heights: tuple[float, float],
    storeys: tuple[str, str],
) -> list[Moment]:
    """Where somebody is at each step of a piece of even pace, its end left out."""
    found = []
    count = max(1, math.ceil(lasts / STEP_S - 1e-9))
    lengths = _lengths(points)
    whole, piece, before = sum(lengths), 0, 0.0
    for step in range(count):
        share = step / count
        while piece < len(lengths) - 1 and before + lengths[piece] < share * whole:
            before += lengths[piece]
            piece += 1
        part = (share * whole - before) / lengths[piece] if lengths and lengths[piece] > 0.0 else 0.0
        (x, y), (x2, y2) = points[piece], points[min(piece + 1, len(points) - 1)]
        feet = heights[0] + share * (heights[1] - heights[0])
        on = storeys[0] if share < 0.5 else storeys[1]
        found.append(Moment(start + share * lasts, x + part * (x2 - x), y + part * (y2 - y), feet, on))
    return found if lasts > 0.0 else []


def _lengths(points: tuple[tuple[float, float], ...]) -> list[float]:
    return [math.dist(a, b) for a, b in pairwise(points)]


def _cut(
    points: tuple[tuple[float, float], ...], start: float, end: float
) -> tuple[tuple[float, float], ...]:
    """The part of a bent line between two lengths of it."""
    found, before = [], 0.0
    for a, b, length in zip(points, points[1:], _lengths(points), strict=False):
        for want in (start, end):
            if before - 1e-12 <= want <= before + length + 1e-12 and length > 0.0:
                share = min(1.0, max(0.0, (want - before) / length))
                found.append((want, (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]))))
        before += length
        if start < before < end:
            found.append((before, b))
    kept = [place for _, place in sorted(found, key=lambda one: one[0])]
    return tuple(kept) if kept else (points[-1],)


def _crossing(
    a: tuple[float, float],
    b: tuple[float, float],
    c: tuple[float, float],
    d: tuple[float, float],
    *,
    hair: float = 0.0,
) -> float | None:
    """At which share of a to b the line c to d is crossed, within a hair; None where it is not."""
    rx, ry, sx, sy = b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]
    turn = rx * sy - ry * sx
    if abs(turn) < 1e-12:
        return None
    share = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / turn
    other = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / turn
    return share if -hair < share <= 1.0 + hair and 0.0 <= other <= 1.0 else None


def _shut_doors(site: Site, storey: Storey) -> list[tuple[str, Line]]:
    """The leaves of a storey that stand shut, with where they do."""
    found = []
    for sheet in storey.sheets:
        opening = None if sheet.opening is None else site.opening(sheet.opening)
        if opening is not None and opening.habit == "shut" and opening.kind == "door":
            found.append((opening.id, ((sheet.x1, sheet.y1), (sheet.x2, sheet.y2))))
    return found


def _reaches_through(eye: tuple[float, float], body: tuple[float, float], leaf: Line) -> bool:
    """Whether a body stands at a leaf, on the other side of it than the eye."""
    (x, y), (x2, y2) = leaf
    length = math.dist(*leaf)
    ux, uy = (x2 - x) / length, (y2 - y) / length
    left = [(py - y) * ux - (px - x) * uy for px, py in (eye, body)]
    along = (body[0] - x) * ux + (body[1] - y) * uy
    return left[0] * left[1] <= 1e-6 and abs(left[1]) <= RADIUS_M and -RADIUS_M <= along <= length + RADIUS_M


def _out_of_walls(
    place: tuple[float, float, float], heading: float, slabs: Sequence[Slab]
) -> tuple[float, float]:
    """The next place forward that is in no wall, for a device that a thicker wall swallows."""
    x, y, z = place
    for number in range(25):
        at = (x + number * 0.02 * math.cos(heading), y + number * 0.02 * math.sin(heading))
        if not any(one.holes and one.holds(*at, z) for one in slabs):
            return at
    return x, y

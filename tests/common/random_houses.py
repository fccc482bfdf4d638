"""Plausible homes of our own, drawn by seed: one to three storeys about a hall, furniture, people, pets, a kit.

A house is drawn on even axes, then the whole plan is turned by some angle, and then the kit is placed in it.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from common.sensible_kit import with_sensible_kit
from common.two_storeys import turned, turned_point
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount, Device, OpeningMount, WallMount
from wardwright.model.fabric import OpenEdge, Space, Stair, Storey, Wall
from wardwright.model.fixture import Fixture, FixtureKind
from wardwright.model.household import Person, Pet
from wardwright.model.opening import Opening
from wardwright.model.place import Place
from wardwright.model.programme import Programme, Zone
from wardwright.model.record import Point2, Ring
from wardwright.model.revision import replaced
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing

OUTER_M, INNER_M = 0.3, 0.1
RISE_M = 2.7
UPSTAIRS = ("bedroom", "bathroom", "study", "bedroom", "store")
DOWNSTAIRS = ("living", "kitchen", "dining", "study", "utility")
ATTIC = ("bedroom", "store", "bathroom", "study", "store")
HABITS = ("shut", "ajar", "open")
GLAZINGS = ("double-plain", "double-plain", "single-plain", "toughened", "laminated", "double-coated")
FURNITURE: dict[str, tuple[FixtureKind, tuple[float, float], float]] = {
    "bedroom": ("bed", (1.4, 2.0), 0.6),
    "living": ("sofa", (2.0, 0.9), 0.8),
    "study": ("cupboard", (1.2, 0.5), 2.0),
    "kitchen": ("worktop", (1.8, 0.6), 0.9),
    "dining": ("table", (1.4, 0.8), 0.75),
}
"""What stands in the far corner of a room of such a use: width and depth before it is turned, height. [m]"""
PETS: dict[Any, tuple[float, float]] = {"cat": (0.3, 4.5), "small-dog": (0.35, 9.0), "big-dog": (0.65, 32.0)}
"""Height [m] and mass [kg]."""
Box = tuple[float, float, float, float]


def random_house(seed: int, catalogue: Catalogue) -> Site:
    """One home with a sensible kit, made a little less sensible by chance; the same seed gives the same home.

    A hall runs north through the house; rooms lie to its east, and to its west unless it is a side hall. Flights lead
    up the middle of the hall.
    """
    rng = np.random.default_rng([20_261_126, seed])
    drawn = _House(rng)
    turn = 0.0 if rng.random() < 0.4 else float(rng.choice([90.0, 180.0, round(rng.uniform(0.0, 360.0), 1)]))
    bare = turned(drawn.site(f"random house {seed}"), turn)
    site = with_sensible_kit(bare, catalogue)
    return _lived_in(rng, site, drawn, turn)


class _House:
    """The fabric of one home."""

    def __init__(self, rng: np.random.Generator) -> None:
        self.rng = rng
        self.storeys = int(rng.choice([1, 2, 2, 3]))
        self.wide, self.deep = float(rng.uniform(2.1, 2.8)), float(rng.uniform(7.0, 11.0))
        has_west = rng.random() < 0.75
        self.west = float(rng.uniform(2.8, 4.8)) if has_west else 0.0
        self.east = float(rng.uniform(2.8, 4.8))
        self.hall = (self.west + INNER_M, self.west + INNER_M + self.wide) if has_west else (0.0, self.wide)
        self.right = self.hall[1] + INNER_M + self.east
        self.spaces: list[Space] = []
        self.walls: list[Wall] = []
        self.openings: list[Opening] = []
        self.edges: list[OpenEdge] = []
        self.fixtures: list[Fixture] = []
        for level in range(self.storeys):
            self._storey(level)

    def site(self, name: str) -> Site:
        """The house without a kit."""
        # With room to walk by on either side, to whatever doors are there.
        x = (self.hall[0] + self.hall[1]) / 2.0
        starts = (1.6, 1.2)
        stairs = tuple(
            Stair(
                id=f"flight-{level}", lower=f"s{level}", upper=f"s{level + 1}", width_m=0.8,
                line_m=((x, starts[level]), (x, starts[level] + 3.2)),
            )
            for level in range(self.storeys - 1)
        )  # fmt: skip
        country = str(self.rng.choice(["GB", "DE", "US"]))
        north = None if self.rng.random() < 0.3 else float(self.rng.uniform(-180.0, 180.0))
        return Site(
            name=name,
            place=Place(country=country, rule_pack="us" if country == "US" else "uk-eu", north_deg=north),
            storeys=tuple(
                Storey(id=f"s{level}", name=f"storey {level}", elevation_m=RISE_M * level, height_m=2.4)
                for level in range(self.storeys)
            ),
            spaces=tuple(self.spaces),
            walls=tuple(self.walls),
            openings=tuple(self.openings),
            open_edges=tuple(self.edges),
            stairs=stairs,
            fixtures=tuple(self.fixtures),
        )

    def _storey(self, level: int) -> None:
        rng, storey, half = self.rng, f"s{level}", OUTER_M / 2.0
        low, high, top = -half, self.right + half, self.deep + half
        south = self._wall(storey, "south", ((low, low), (high, low)), OUTER_M)
        sides = {
            "east": self._wall(storey, "east", ((high, low), (high, top)), OUTER_M),
            "west": self._wall(storey, "west", ((low, top), (low, low)), OUTER_M),
        }
        north = self._wall(storey, "north", ((high, top), (low, top)), OUTER_M)
        uses = list((DOWNSTAIRS, UPSTAIRS, ATTIC)[level])
        rng.shuffle(uses)
        self._space(
            storey, "hall", (self.hall[0], 0.0, self.hall[1], self.deep), "landing" if level else "hall"
        )
        for side in ("west", "east") if self.west else ("east",):
            self._rooms(storey, side, sides[side], uses)
        if level == 0:
            door = half + (self.hall[0] + self.hall[1]) / 2.0
            self._opening(
                "front-door",
                "door",
                south,
                door,
                is_entry_door=True,
                lock="deadlock",
                width_m=0.9,
                swing="left",
            )
            if rng.random() < 0.6:
                middle = half + self.east / 2.0
                self._opening(
                    "garden-door", "door", north, middle, lock=str(rng.choice(["latch", "multi-point"])),
                    glazing="double-plain", width_m=0.9, is_entry_door=bool(rng.random() < 0.4),
                )  # fmt: skip

    def _rooms(self, storey: str, side: str, outer: str, uses: list[str]) -> None:
        rng, half = self.rng, OUTER_M / 2.0
        x0, x1 = (0.0, self.west) if side == "west" else (self.hall[1] + INNER_M, self.right)
        at = x1 + INNER_M / 2 if side == "west" else x0 - INNER_M / 2
        spine = self._wall(storey, f"spine-{side}", ((at, 0.0), (at, self.deep)), INNER_M)
        cut = float(rng.uniform(0.4, 0.6)) * self.deep
        is_joined = rng.random() < 0.2
        gap = 0.0 if is_joined else INNER_M / 2
        ends = [(0.0, cut - gap), (cut + gap, self.deep)] if rng.random() < 0.75 else [(0.0, self.deep)]
        names = [f"{side}-{number}" for number in range(len(ends))]
        if len(ends) == 2 and is_joined:
            joins = (f"{storey}-{names[0]}", f"{storey}-{names[1]}")
            self.edges.append(
                OpenEdge(id=f"{storey}-edge-{side}", spaces=joins, line_m=((x0, cut), (x1, cut)))
            )
        elif len(ends) == 2:
            self._wall(storey, f"cross-{side}", ((x0, cut), (x1, cut)), INNER_M)
        for name, (y0, y1) in zip(names, ends, strict=True):
            use = uses.pop()
            self._space(storey, name, (x0, y0, x1, y1), use)
            self._furnish(storey, name, (x0, y0, x1, y1), use, is_west=side == "west")
            self._opening(
                f"{storey}-door-{name}", "gap" if rng.random() < 0.1 else "door", spine,
                float(rng.uniform(y0 + 0.7, y1 - 0.7)), width_m=0.8,
                hinge=str(rng.choice(["start", "end"])), swing=str(rng.choice(["left", "right"])),
                habit=str(rng.choice(HABITS)), habit_night=str(rng.choice(HABITS)),
            )  # fmt: skip
            if rng.random() < 0.8:
                middle = (y0 + y1) / 2.0
                along = middle + half if side == "east" else self.deep + half - middle
                self._opening(
                    f"{storey}-window-{name}", "window", outer, along, width_m=float(rng.uniform(0.6, 1.4)),
                    sill_m=0.9, head_m=2.1, lock="latch", glazing=str(rng.choice(GLAZINGS)),
                    hinge=str(rng.choice(["start", "end", "fixed"])),
                    covering=str(rng.choice(["none", "none", "curtain"])),
                )  # fmt: skip

    def _furnish(self, storey: str, name: str, box: Box, use: str, *, is_west: bool) -> None:
        """One thing in the corner far from the hall, and a radiator under the window."""
        x0, y0, x1, y1 = box
        outer, inward = (x0, 1.0) if is_west else (x1, -1.0)
        if use in FURNITURE and self.rng.random() < 0.8:
            kind, (width, depth), height = FURNITURE[use]
            centre = (outer + inward * (depth / 2 + 0.05), y0 + width / 2 + 0.1)
            self.fixtures.append(
                Fixture(
                    id=f"{storey}-{name}-{kind}", name=kind, storey=storey, kind=kind, centre_m=centre,
                    size_m=(width, depth), turn_deg=90.0, height_m=height,
                )
            )  # fmt: skip
        if self.rng.random() < 0.7:
            centre = (outer + inward * 0.06, (y0 + y1) / 2.0)
            self.fixtures.append(
                Fixture(
                    id=f"{storey}-{name}-radiator", name="radiator", storey=storey, kind="radiator", heat="hot",
                    centre_m=centre, size_m=(0.8, 0.1), turn_deg=90.0, base_m=0.12, height_m=0.6,
                )
            )  # fmt: skip

    def _wall(self, storey: str, name: str, line: tuple[Point2, Point2], thick: float) -> str:
        self.walls.append(Wall(id=f"{storey}-{name}", storey=storey, line_m=line, thickness_m=thick))
        return self.walls[-1].id

    def _space(self, storey: str, name: str, box: Box, use: str) -> None:
        x0, y0, x1, y1 = box
        outline: Ring = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
        told = {
            "id": f"{storey}-{name}", "name": f"{use} {name}", "storey": storey, "use": use, "outline_m": outline,
        }  # fmt: skip
        self.spaces.append(Space.model_validate(told))

    def _opening(self, name: str, kind: str, wall: str, along: float, **facts: object) -> None:
        told = {"id": name, "name": name.replace("-", " "), "kind": kind, "wall": wall, "offset_m": along}
        self.openings.append(Opening.model_validate(told | facts))


def _lived_in(rng: np.random.Generator, site: Site, drawn: _House, turn: float) -> Site:
    """The home with a child and pets, a roof to climb, other sheets and other behaviours here and there."""
    beds = [space.id for space in site.spaces if space.use == "bedroom"]
    people = list(site.people)
    if beds and rng.random() < 0.5:
        people.append(Person(id="child", name="child", pace="quick", bed=beds[0], is_child=True))
    pets: tuple[Pet, ...] = ()
    if rng.random() < 0.4:
        kind = str(rng.choice(list(PETS)))
        height, mass = PETS[kind]
        told = {"id": "pet", "name": kind, "kind": kind, "height_m": height, "mass_kg": mass}
        pets = (Pet.model_validate(told),)
    devices = tuple(_other_sheet(rng, site, one, has_pet=bool(pets)) for one in site.devices)
    glass = [
        Device(
            id=f"{one.id}-shock"[:80], name=f"{one.name} shock", sheet="shock-radio",
            mount=OpeningMount(opening=one.id),
        )
        for one in site.openings
        if one.kind == "window" and one.hinge != "fixed" and rng.random() < 0.2
    ]  # fmt: skip
    zones = [_other_behaviour(rng, zone) for zone in site.zones]
    zones += [
        Zone(id=f"zone-{number}", number=number, name=one.name, devices=(one.id,), behaviour="instant")
        for number, one in enumerate(glass, len(zones) + 1)
    ]
    programme = Programme(
        entry_time_s=float(rng.choice([10.0, 30.0, 45.0])),
        exit_time_s=float(rng.choice([20.0, 30.0, 60.0])),
        abort_delay_s=float(rng.choice([0.0, 15.0])),
        if_open_when_setting=rng.choice(["refuse", "inhibit"]).item(),
    )
    return replaced(
        site, people=tuple(people), pets=pets, devices=(*devices, *glass), zones=tuple(zones),
        programme=programme, ground=_ground(rng, drawn, turn),
    )  # fmt: skip


def _other_sheet(rng: np.random.Generator, site: Site, device: Device, *, has_pet: bool) -> Device:
    """A movement detector of another sheet, now and then; one for homes with pets where there are any."""
    if device.sheet != "movement-12m":
        return device
    if has_pet:
        return device.model_copy(update={"sheet": "movement-12m-pet"})
    chance = rng.random()
    if chance < 0.15 and isinstance(device.mount, WallMount):
        name = device.id.removesuffix("-movement")
        space = next(one for one in site.spaces if one.id == name)
        corners = np.array(space.outline_m)
        # Beside the middle, where a smoke alarm hangs.
        x, y = (0.75 * corners.mean(axis=0) + 0.25 * corners[0]).tolist()
        mount = CeilingMount(storey=space.storey, at_m=(x, y))
        return device.model_copy(update={"sheet": "movement-ceiling-7m", "mount": mount, "heading_deg": 0.0})
    if chance < 0.3:
        return device.model_copy(update={"sheet": "movement-8m-wired"})
    return device.model_copy(update={"sheet": "movement-curtain-9m"}) if chance < 0.4 else device


def _other_behaviour(rng: np.random.Generator, zone: Zone) -> Zone:
    """Set at night too, for some; now and then a behaviour that a fitter mixed up."""
    chance, found = rng.random(), zone
    if zone.behaviour in ("instant", "entry-exit") and rng.random() < 0.5:
        found = found.model_copy(update={"parts": ("full", "night")})
    if zone.behaviour != "instant" or chance > 0.12:
        return found
    mixed_up = "log-only" if chance < 0.02 else "always-on" if chance < 0.05 else "entry-route"
    return found.model_copy(update={"behaviour": mixed_up})


def _ground(rng: np.random.Generator, drawn: _House, turn: float) -> Ground:
    """Bare, or with a flat roof along the east wall that upper windows are reached from."""
    if drawn.storeys == 1 or rng.random() < 0.5:
        return Ground()
    x0, x1 = drawn.right + OUTER_M, drawn.right + OUTER_M + 2.5
    corners = ((x0, 0.0), (x1, 0.0), (x1, drawn.deep), (x0, drawn.deep))
    outline = tuple(turned_point(one, turn) for one in corners)
    roof = GroundThing(
        id="garage", name="garage", kind="flat-roof", outline_m=outline, height_m=2.4, can_be_climbed=True
    )
    return Ground(things=(roof,))

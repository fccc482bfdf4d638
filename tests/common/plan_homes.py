"""One home of ../shared/data/plans, as its file has it, turned into a site document: nothing is put right by hand.

What the drawing says is marked as measured; what it does not say (heights, sills, locks, glass, what a room without
a name is for) is guessed and marked so. What is odd about the drawing is counted in `Oddities`.
"""

from __future__ import annotations

import itertools
import json
import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import numpy as np
import shapely

from wardwright.intake.outlines import largest, long_way, ring_of, strip_along
from wardwright.model.document import read_document
from wardwright.model.site import Site

USES = {
    "BEDROOM": "bedroom", "LIVING_DINING": "living", "KITCHEN": "kitchen", "KITCHEN_DINING": "kitchen",
    "DINING": "dining", "BATHROOM": "bathroom", "CORRIDOR": "hall", "STOREROOM": "store", "BALCONY": "balcony",
    "LOGGIA": "balcony", "WINTERGARTEN": "conservatory",
}  # fmt: skip
"""What the source's kinds of room are here; ROOM, NOT_DEFINED and none at all say nothing: other."""
WORDS = {"LIVING_DINING": "living room", "KITCHEN_DINING": "kitchen", "CORRIDOR": "hall", "LOGGIA": "loggia"}
BOXES = {
    "kitchen": ("worktop", 0.9), "sink": ("sanitary", 0.9), "toilet": ("sanitary", 0.8),
    "bathtub": ("sanitary", 0.6), "shower": ("sanitary", 0.2), "stairs": ("other", 0.9),
}  # fmt: skip
"""Kind and height of a fixture. [m]"""
STOREY_M, RAILING_M, DOOR_M, WINDOW_M = 2.6, 1.0, 2.0, (0.5, 2.4)
"""The source's own defaults, but for the railing: it gives parapets a storey's height. [m]"""
SHAFT_M2 = 1.0
"""A room without a door that is smaller is a shaft. [m2]"""
DOORLESS_M2 = 2.0
"""A room without a door is listed from this size on. [m2]"""
IS_RECTANGLE = 0.985
SIDE_M = 0.35
"""How far from an opening's faces its rooms are looked for. [m]"""
SPLITTER_NEAR_M = 0.1
"""A room this close to a line where nothing is built lies along it. [m]"""
RAILED = 0.3
"""A room without a type that is railed along this share of its outline is a balcony. [-]"""
OFF_AXES_DEG = 1.5
"""A wall longer than half a metre and turned by more is off the axes. [deg]"""
TOUCHING_M, LEAST_EDGE_M = 0.06, 0.3
"""Rooms this close touch; shorter gaps between them are no ways. [m]"""
PAST_END_M = 0.02
"""How far past the end of its wall an opening may reach: walls are not trimmed. [m]"""


@dataclass
class Oddities:
    """What a reader of this home's drawing should know; ids are the file's own."""

    repaired: list[str] = field(default_factory=list)
    """Rooms whose ring was no valid polygon."""
    doorless: list[str] = field(default_factory=list)
    """Rooms that no door leads into."""
    shafts: list[str] = field(default_factory=list)
    """Left out: no rooms."""
    holes: list[str] = field(default_factory=list)
    """Rooms with a hole, whose outline here has none: what stands there does."""
    onto_a_balcony: list[str] = field(default_factory=list)
    """Windows between two rooms of which one is a balcony: on the outside all the same."""
    to_a_gallery: list[str] = field(default_factory=list)
    """Entrance doors to where nothing is drawn."""
    crossing: int = 0
    """Pairs of walls that overlap."""
    lengthened: list[str] = field(default_factory=list)
    """Walls that end before an opening in them does, made as long."""
    narrowed: list[str] = field(default_factory=list)
    """Windows that reach into the opening beside them, narrowed."""
    gaps: list[str] = field(default_factory=list)
    """Open edges between two rooms where the file has neither wall nor line."""
    half_open: list[str] = field(default_factory=list)
    """Lines where nothing is built that have a room of this home on one side only."""
    stairs: int = 0
    """Flights of stairs to storeys that are not drawn: kept as boxes."""
    off_axes: bool = False
    """Whether a wall is off the axes."""
    without_names: bool = False
    """Whether no room has a type."""


@dataclass
class Home:
    """A home brought in."""

    site: Site
    oddities: Oddities
    text: str
    """Its site document."""


def read_home(path: Path) -> Home:
    """Bring one home in from its file."""
    plan = Plan(json.loads(path.read_text(encoding="utf-8")))
    text = json.dumps(plan.document())
    return Home(read_document(text, where=path.name), plan.odd, text)


class Plan:
    """One home's file, and what is noted while it is turned."""

    def __init__(self, data: dict[str, Any]) -> None:
        self.data = data
        self.odd = Oddities()
        self.rooms: dict[str, shapely.Polygon] = {}
        self.kinds: dict[str, str] = {}
        """What each room is: by the file or, without a type there, by its railings."""
        self.walls: dict[str, dict[str, Any]] = {}
        self.areas: dict[str, shapely.Polygon] = {}

    def document(self) -> dict[str, Any]:
        """The site document."""
        spaces = list(self._spaces())
        self._read_walls()
        hosts = {o["id"]: self._host(shapely.Polygon(o["polygon"])) for o in self.data["openings"]}
        for opening in self.data["openings"]:
            self._lengthen(hosts[opening["id"]], opening)
        openings = [self._opening(o, hosts[o["id"]]) for o in self.data["openings"]]
        self._narrow(openings)
        return {
            "schema_version": 1,
            "name": f"Home {self.data['id']}",
            "storeys": [
                marked(
                    {"id": "storey", "name": "storey", "elevation_m": 0.0, "height_m": STOREY_M},
                    guessed=("name", "elevation_m", "height_m"),
                )
            ],
            "spaces": spaces,
            "walls": list(self.walls.values()),
            "openings": openings,
            "open_edges": list(self._open_edges()),
            "fixtures": [self._fixture(n, f) for n, f in enumerate(self.data["fixtures"], start=1)],
        }

    def _spaces(self) -> Iterator[dict[str, Any]]:
        with_door = {room for o in self.data["openings"] if "door" in o["kind"] for room in o["rooms"]}
        named: Counter[str] = Counter()
        self.odd.without_names = all(room["type"] is None for room in self.data["rooms"])
        for room in self.data["rooms"]:
            outline = shapely.Polygon(room["polygon"])
            is_drawn_right = outline.is_valid
            if not is_drawn_right:
                self.odd.repaired.append(room["id"])
                outline = largest(shapely.make_valid(outline)) or outline
            is_doorless = room["id"] not in with_door
            if room["type"] == "SHAFT" or (is_doorless and room["area_m2"] < SHAFT_M2):
                self.odd.shafts.append(room["id"])
                continue
            if is_doorless and room["area_m2"] > DOORLESS_M2:
                self.odd.doorless.append(room["id"])
            if room.get("holes"):
                self.odd.holes.append(room["id"])
            self.rooms[room["id"]] = outline
            kind = room["type"] or ("BALCONY" if self._is_railed(outline) else "ROOM")
            self.kinds[room["id"]] = kind
            words = WORDS.get(kind, kind.lower().replace("_", " ") if kind != "NOT_DEFINED" else "room")
            named[words] += 1
            fields = {
                "id": room["id"], "name": f"{words} {named[words]}", "storey": "storey",
                "outline_m": ring_of(outline), "use": USES.get(kind, "other"),
            }  # fmt: skip
            yield marked(fields, guessed=("name", "use") if is_drawn_right else ("name", "use", "outline_m"))

    def _read_walls(self) -> None:
        for wall in self.data["walls"]:
            area = shapely.Polygon(wall["polygon"]).buffer(0)
            if wall["kind"] == "area_splitter" or area.is_empty:
                continue
            strip = strip_along(area, long_way(area))
            fields: dict[str, Any] = {
                "id": wall["id"], "storey": "storey", "line_m": strip.line, "thickness_m": round(strip.width, 4)
            }  # fmt: skip
            if strip.filled < IS_RECTANGLE:
                fields["footprint_m"] = ring_of(area)
            if wall["kind"] == "railing":
                fields["height_m"] = RAILING_M
            (ax, ay), (bx, by) = strip.line
            turn = math.degrees(math.atan2(by - ay, bx - ax)) % 90.0
            self.odd.off_axes |= OFF_AXES_DEG < turn < 90.0 - OFF_AXES_DEG and strip.length > 0.5
            self.walls[wall["id"]] = marked(fields, guessed=("height_m",) if "height_m" in fields else ())
            self.areas[wall["id"]] = area
        areas = list(self.areas.values())
        pairs = shapely.STRtree(areas).query(areas, predicate="intersects").T
        self.odd.crossing = sum(bool(a < b and areas[a].intersection(areas[b]).area > 1e-4) for a, b in pairs)

    def _host(self, area: shapely.Polygon) -> str:
        """The wall that an opening lies in: of those that hold nearly as much of it as any, the thickest."""
        shares = {name: wall.intersection(area).area for name, wall in self.areas.items()}
        most = max(shares.values())
        near = [name for name, share in shares.items() if share > 0.8 * most]
        return max(near, key=lambda name: (self.walls[name]["thickness_m"], name))

    def _along(self, host: str, opening: dict[str, Any]) -> tuple[Any, Any, Any]:
        """The start of a wall, the way along it, and how far along it each corner of an opening lies. [m]"""
        line = np.array(self.walls[host]["line_m"])
        way = (line[1] - line[0]) / np.hypot(*(line[1] - line[0]))
        return line[0], way, (np.array(opening["polygon"]) - line[0]) @ way

    def _lengthen(self, host: str, opening: dict[str, Any]) -> None:
        """Make a wall as long as an opening that lies past its end: noted."""
        start, way, reach = self._along(host, opening)
        length = float(np.hypot(*(np.array(self.walls[host]["line_m"][1]) - start)))
        before, after = max(-float(reach.min()), 0.0), max(float(reach.max()) - length, 0.0)
        if max(before, after) > PAST_END_M:
            self.odd.lengthened.append(host)
            ends = (start - way * before, start + way * (length + after))
            self.walls[host]["line_m"] = [[round(float(v), 4) for v in end] for end in ends]
            self.walls[host]["basis"]["line_m"] = "guessed"

    def _narrow(self, openings: list[dict[str, Any]]) -> None:
        """Narrow a window that reaches into the opening beside it: noted."""
        for window in openings:
            if window["kind"] != "window":
                continue
            for other in openings:
                apart = window["offset_m"] - other["offset_m"]
                over = (window["width_m"] + other["width_m"]) / 2 - abs(apart)
                if other is window or other["wall"] != window["wall"] or over <= PAST_END_M:
                    continue
                window["offset_m"] = round(window["offset_m"] + math.copysign(over / 2, apart), 4)
                window["width_m"] = round(window["width_m"] - over, 4)
                window["basis"] |= {"offset_m": "guessed", "width_m": "guessed"}
                self.odd.narrowed.append(window["id"])

    def _opening(self, opening: dict[str, Any], host: str) -> dict[str, Any]:
        start, way, reach = self._along(host, opening)
        left = np.array((-way[1], way[0]))
        middle = float(reach.min() + reach.max()) / 2
        is_door = "door" in opening["kind"]
        sill, head = (0.0, DOOR_M) if is_door else WINDOW_M
        fields: dict[str, Any] = {
            "id": opening["id"], "name": opening["id"], "kind": "door" if is_door else "window", "wall": host,
            "offset_m": round(middle, 4), "width_m": round(float(np.ptp(reach)), 4), "sill_m": sill, "head_m": head,
            "lock": "unknown", "joins": self._sides(opening, start + way * middle, left),
        }  # fmt: skip
        guessed = ["name", "sill_m", "head_m", "lock"]
        if swing := opening.get("swing"):
            hinge, shut, away = (np.array(swing[k]) for k in ("hinge", "closed", "open"))
            fields["hinge"] = "start" if (shut - hinge) @ way > 0 else "end"
            fields["swing"] = "left" if (away - hinge) @ left > 0 else "right"
        else:
            fields["hinge"] = "sliding" if opening["kind"] == "sliding_door" else "start"
            fields["swing"] = "none" if opening["kind"] == "sliding_door" else "left"
            guessed += [] if opening["kind"] == "sliding_door" else ["hinge", "swing"]
        onto_a_balcony = None in fields["joins"] or any(self._is_balcony(r) for r in opening["rooms"])
        if not is_door or (onto_a_balcony and opening["kind"] != "entrance_door"):
            fields["glazing"] = "double-plain"
            guessed.append("glazing")
        if opening["kind"] == "entrance_door":
            fields["is_entry_door"] = True
            guessed.append("is_entry_door")
            if opening["beyond"] == "outdoors":
                self.odd.to_a_gallery.append(opening["id"])
        if not is_door and len(opening["rooms"]) == 2 and onto_a_balcony:
            self.odd.onto_a_balcony.append(opening["id"])
        fields["name"] = self._name(opening, fields)
        return marked(fields, guessed=tuple(guessed))

    def _sides(self, opening: dict[str, Any], middle: Any, left: Any) -> list[str | None]:
        """The rooms that the file names, each on its side of the wall; None beside the one of an outer opening."""
        rooms = [room for room in opening["rooms"] if room in self.rooms]
        far = {room: self._to_the_left(room, middle, left) for room in rooms}
        ordered = sorted(rooms, key=lambda room: -far[room])
        if len(ordered) == 2:
            return list(ordered)
        return [ordered[0], None] if far[ordered[0]] > 0 else [None, ordered[0]]

    def _to_the_left(self, room: str, middle: Any, left: Any) -> float:
        """How far to the left of an opening a room's nearest place lies. [m]"""
        near = shapely.shortest_line(shapely.Point(middle), self.rooms[room])
        return float((shapely.get_coordinates(near)[-1] - middle) @ left)

    def _is_railed(self, outline: shapely.Polygon) -> bool:
        """Whether a good part of a room's outline is railing: a balcony, though the file does not say so."""
        railings = [shapely.Polygon(w["polygon"]) for w in self.data["walls"] if w["kind"] == "railing"]
        if not railings:
            return False
        railed = outline.exterior.intersection(shapely.union_all(railings).buffer(SPLITTER_NEAR_M)).length
        return bool(railed > RAILED * outline.exterior.length)

    def _is_balcony(self, room: str) -> bool:
        return USES.get(self.kinds.get(room, "")) == "balcony"

    def _name(self, opening: dict[str, Any], fields: dict[str, Any]) -> str:
        inside = next(r for r in opening["rooms"] if r in self.rooms)
        kind = self.kinds[inside]
        words = WORDS.get(kind, kind.lower().replace("_", " "))
        what = {"entrance_door": "entrance door", "sliding_door": "sliding door"}.get(
            opening["kind"], fields["kind"]
        )
        return f"{words} {what} {opening['id']}"

    def _open_edges(self) -> Iterator[dict[str, Any]]:
        """Where nothing is built between two rooms: as the file says, and as is left between its walls."""
        splitters = [w for w in self.data["walls"] if w["kind"] == "area_splitter"]
        built = shapely.union_all(list(self.areas.values()))
        for splitter in splitters:
            area = shapely.Polygon(splitter["polygon"])
            near = [r for r in sorted(self.rooms) if self.rooms[r].distance(area) < SPLITTER_NEAR_M]
            near.sort(key=lambda r: -self.rooms[r].intersection(area.buffer(SPLITTER_NEAR_M)).area)
            if len(near) < 2:
                self.odd.half_open.append(splitter["id"])
                continue
            line = shapely.LineString(strip_along(area, long_way(area)).line).difference(built)
            yield from _edges(splitter["id"], near[:2], line, guessed=())
        known = shapely.union_all([built, *(shapely.Polygon(w["polygon"]).buffer(0.05) for w in splitters)])
        for one, other in itertools.combinations(sorted(self.rooms), 2):
            if self.rooms[one].distance(self.rooms[other]) > TOUCHING_M:
                continue
            near_other = self.rooms[other].buffer(TOUCHING_M, join_style="mitre")
            line = self.rooms[one].exterior.intersection(near_other).difference(known.buffer(0.01))
            edges = list(_edges(f"{one}-{other}", [one, other], line, guessed=("id", "spaces", "line_m")))
            self.odd.gaps += [edge["id"] for edge in edges]
            yield from edges

    def _fixture(self, number: int, fixture: dict[str, Any]) -> dict[str, Any]:
        kind, height = BOXES[fixture["type"]]
        self.odd.stairs += fixture["type"] == "stairs"
        fields = {
            "id": f"f{number}", "name": fixture["type"], "storey": "storey", "kind": kind,
            "centre_m": fixture["xy"], "size_m": [fixture["width_m"], fixture["length_m"]],
            "turn_deg": fixture["rotation_deg"], "height_m": height,
        }  # fmt: skip
        return marked(fields, guessed=("kind", "height_m"))


def _edges(
    name: str, spaces: list[str], line: shapely.Geometry, *, guessed: tuple[str, ...]
) -> Iterator[dict[str, Any]]:
    """An open edge for each straight piece of a line that is long enough to be a way."""
    lines = [part for part in shapely.get_parts(line) if part.geom_type == "LineString" and not part.is_empty]
    merged = shapely.line_merge(shapely.MultiLineString(lines)) if lines else shapely.LineString()
    count = 0
    for piece in shapely.get_parts(merged):
        for a, b in itertools.pairwise(piece.simplify(0.005).coords):
            if math.dist(a, b) < LEAST_EDGE_M:
                continue
            count += 1
            ends = [[round(float(x), 4), round(float(y), 4)] for x, y in (a, b)]
            yield marked({"id": f"{name}-{count}", "spaces": spaces, "line_m": ends}, guessed=guessed)


def marked(fields: dict[str, Any], *, guessed: tuple[str, ...] = ()) -> dict[str, Any]:
    """An entry of the document whose facts say how they are known."""
    return fields | {"basis": {name: "guessed" if name in guessed else "measured" for name in fields}}

"""A house of two storeys for walks, and the same house turned or with its lists in another order."""

from __future__ import annotations

import math
import random
from typing import Any

from wardwright.model.fabric import OpenEdge, Space, Stair, Storey, Wall
from wardwright.model.fixture import Fixture
from wardwright.model.opening import Opening
from wardwright.model.record import Point2, Ring
from wardwright.model.site import Site


def box(x_low: float, y_low: float, x_high: float, y_high: float) -> Ring:
    return ((x_low, y_low), (x_high, y_low), (x_high, y_high), (x_low, y_high))


def door(door_id: str, wall: str, offset_m: float, **facts: Any) -> Opening:
    usual: dict[str, Any] = {"name": door_id, "kind": "door", "width_m": 0.8}
    return Opening(id=door_id, wall=wall, offset_m=offset_m, **(usual | facts))


def furniture(name: str, centre: Point2, size: Point2, height: float) -> Fixture:
    return Fixture(id=name, name=name, storey="ground", centre_m=centre, size_m=size, height_m=height)


def two_storeys(**parts: Any) -> Site:
    """Hall, kitchen and dining room (joined by an open edge, 3 cm apart) below; landing and bedroom above.

    The neighbour's room lies east of the party wall. Inner walls are 0.1 m, outer ones 0.3 m thick.
    """
    usual: dict[str, Any] = {
        "name": "two storeys",
        "storeys": (
            Storey(id="ground", name="ground floor", elevation_m=0.0),
            Storey(id="upper", name="upper floor", elevation_m=2.6),
        ),
        "spaces": (
            Space(id="hall", name="hall", storey="ground", outline_m=box(0, 0, 2, 6), use="hall"),
            Space(id="kitchen", name="kitchen", storey="ground", outline_m=box(2.1, 0, 6, 2.9)),
            Space(id="dining", name="dining room", storey="ground", outline_m=box(2.1, 2.93, 6, 6)),
            Space(id="landing", name="landing", storey="upper", outline_m=box(0, 0, 2, 6)),
            Space(id="bedroom", name="bedroom", storey="upper", outline_m=box(2.1, 0, 6, 6)),
            Space(
                id="next-door", name="next door", storey="ground", outline_m=box(6.3, 0, 9, 6), belongs="neighbour"
            ),
        ),
        "walls": (
            Wall(id="south", storey="ground", line_m=((-0.15, -0.15), (6.3, -0.15)), thickness_m=0.3),
            Wall(id="party", storey="ground", line_m=((6.15, 0), (6.15, 6)), thickness_m=0.3),
            Wall(id="inner", storey="ground", line_m=((2.05, 0), (2.05, 6)), thickness_m=0.1),
            Wall(id="inner-above", storey="upper", line_m=((2.05, 0), (2.05, 6)), thickness_m=0.1),
        ),
        "openings": (
            door("front-door", "south", 1.15, width_m=0.9),
            door("kitchen-door", "inner", 1.0),
            door("bedroom-door", "inner-above", 3.0),
            door("kitchen-window", "south", 4.15, kind="window", width_m=1.0, sill_m=1.0),
            door("old-door", "party", 5.0, name="old door"),
        ),
        "open_edges": (OpenEdge(id="edge", spaces=("dining", "kitchen"), line_m=((3.0, 2.915), (5.0, 2.915))),),
        "stairs": (Stair(id="stairs", lower="ground", upper="upper", line_m=((0.5, 1.5), (0.5, 4.5)), width_m=0.8),),
        "fixtures": (
            furniture("dresser", (4.5, 4.2), (1.6, 0.5), 1.8),
            furniture("table", (4.0, 1.2), (1.2, 0.8), 0.75),
        ),
    }  # fmt: skip
    return Site(**(usual | parts))


def turned(site: Site, degrees: float) -> Site:
    """The plan turned about its zero; quarter turns exactly."""

    def point(place: Point2) -> Point2:
        return turned_point(place, degrees)

    def ring(places: tuple[Point2, ...]) -> tuple[Point2, ...]:
        return tuple(point(place) for place in places)

    return site.model_copy(
        update={
            "spaces": tuple(s.model_copy(update={"outline_m": ring(s.outline_m)}) for s in site.spaces),
            "walls": tuple(w.model_copy(update={"line_m": ring(w.line_m)}) for w in site.walls),
            "stairs": tuple(s.model_copy(update={"line_m": ring(s.line_m)}) for s in site.stairs),
            "open_edges": tuple(e.model_copy(update={"line_m": ring(e.line_m)}) for e in site.open_edges),
            "fixtures": tuple(
                f.model_copy(update={"centre_m": point(f.centre_m), "turn_deg": f.turn_deg + degrees})
                for f in site.fixtures
            ),
        }
    )


def turned_point(place: Point2, degrees: float) -> Point2:
    """A place of the plan after the turn."""
    x, y = place
    quarters = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}
    angle = math.radians(degrees)
    cos, sin = quarters.get(degrees, (math.cos(angle), math.sin(angle)))
    return (x * cos - y * sin, x * sin + y * cos)


def shuffled(site: Site, seed: int) -> Site:
    """The same house with every list in another order."""
    order = random.Random(seed)  # noqa: S311 - an order, not a secret
    lists = ("storeys", "spaces", "walls", "openings", "open_edges", "stairs", "fixtures")
    return site.model_copy(
        update={n: tuple(order.sample(getattr(site, n), len(getattr(site, n)))) for n in lists}
    )

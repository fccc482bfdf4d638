"""Animals at large while the alarm is set: the rooms that stand open to them, and whether they trip a detector."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.floor import lets_through
from wardwright.model.opening import Opening
from wardwright.model.placement import sides_of_opening
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import detector_of, walks_of
from wardwright.physics.detection.noticing import noticed_at
from wardwright.physics.detection.walkers import Body
from wardwright.rules.animal_tops import tops_of
from wardwright.rules.animals import Roaming
from wardwright.rules.perches import UnderZones
from wardwright.trials.leaves_between import states_of

REACH_SHARES = (1.2, 1.0, 0.8)
"""Shares of a detector's reach that an animal's walks are played at, the one that sees most first. [-] (the figure
`detector-reach`)"""
POINTS_M = 0.05
"""Between points of a walk. [m]"""
STRETCH_M = 3.0
"""It walks so far each way of the place where the zones leave least room. [m] (assumption)"""
WAYS = 4
"""Directions it walks in there, evenly about the line to the detector. [-] (assumption)"""
SHORT_M = 0.15
"""A shorter walk is none. [m] (assumption)"""


class OpenTo(NamedTuple):
    """A space that an animal gets into from those where it is told to stay."""

    space: str
    by: str
    """Id of the door, open edge or stair that lets it in."""
    is_door: bool
    """Whether a leaf could keep it out."""
    before: str
    """The space it comes from."""


def ways_to(entered: tuple[OpenTo, ...], space: str) -> tuple[OpenTo, ...]:
    """What an animal passes on its way into a space that stands open to it, the space's own door first."""
    by_space = {one.space: one for one in entered}
    found = []
    while space in by_space:
        found.append(by_space[space])
        space = found[-1].before
    return tuple(found)


@lru_cache(maxsize=256)
def open_to(house: Site, rooms: frozenset[str], shut: frozenset[str] = frozenset()) -> tuple[OpenTo, ...]:
    """The spaces that stand open to an animal beside its own, by day or by night, nearest first.

    Parameters
    ----------
    house : Site
        The bare house; leaves as they are told to stand by habit, open where nobody has said.
    rooms : frozenset of str
        Ids of the spaces where it stays.
    shut : frozenset of str, default frozenset()
        Ids of doors that are kept shut whatever the habit.

    Returns
    -------
    tuple of OpenTo
        Indoors and ours.
    """
    links = [link for link in _links(house) if link.by not in shut]
    inside = {one.id for one in house.spaces if one.is_protected}
    found: list[OpenTo] = []
    there, edge = set(rooms), sorted(rooms)
    while edge:
        further = []
        for space in edge:
            for link in links:
                other = link.other(space)
                if other is not None and other in inside and other not in there:
                    there.add(other)
                    further.append(other)
                    found.append(OpenTo(other, link.by, link.is_door, space))
        edge = sorted(further)
    return tuple(found)


class _Link(NamedTuple):
    spaces: tuple[str, str]
    by: str
    is_door: bool

    def other(self, space: str) -> str | None:
        """The space at the other end; None where it is at neither."""
        one, two = self.spaces
        return two if space == one else one if space == two else None


@lru_cache(maxsize=64)
def _links(house: Site) -> tuple[_Link, ...]:
    """What an animal passes by, in the order of ids; doors that are told to be always shut are not among them."""
    found = [_Link(edge.spaces, edge.id, is_door=False) for edge in house.open_edges]
    for opening in house.openings:
        one, two = sides_of_opening(house, opening)
        if one and two and lets_through(opening) and stands_open(opening):
            found.append(_Link((one, two), opening.id, is_door=opening.kind != "gap"))
    ends = {top.thing: top.spaces for top in tops_of(house) if top.kind == "stair"}
    for stair in house.stairs:
        spaces = ends.get(stair.id, ())
        if len(spaces) == 2:
            found.append(_Link((spaces[0], spaces[1]), stair.id, is_door=False))
    return tuple(sorted(found, key=lambda link: link.by))


def stands_open(opening: Opening) -> bool:
    """Whether a leaf may stand open or ajar by habit, by day or by night."""
    return opening.kind == "gap" or states_of(opening) != ("shut",)


def door_between(house: Site, space: str, rooms: frozenset[str]) -> str | None:
    """The one door that keeps an animal in some rooms out of a space; None where one door alone does not."""
    ways = [link for link in _links(house) if link.other(space) in rooms]
    return ways[0].by if len(ways) == 1 and ways[0].is_door else None


class Tripped(NamedTuple):
    """An animal that walks where a detector's zones leave it too little room."""

    number: int
    """Of the top that it walks on, in `tops_of`."""
    seconds: tuple[float, float, float]
    """From the start of its walk until the detector signals, at each of `REACH_SHARES`; inf: it does not. [s]"""


@lru_cache(maxsize=512)
def tripped(
    house: Site, catalogue: Catalogue, device: Device, *, animal: Roaming, under: tuple[UnderZones, ...]
) -> tuple[Tripped, ...]:
    """Let an animal walk over some tops, up and down, and watch one detector.

    A leap itself counts for nothing: it fills and leaves zones from below, which the engine has no rate for.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        For the detector's sheet.
    device : Device
        The detector.
    animal : Roaming
        Its height, width and pace.
    under : tuple of UnderZones
        The tops, each with the place where the zones leave least room.

    Returns
    -------
    tuple of Tripped
        One for each top that it can walk on, in their order.
    """
    detector = detector_of(house, catalogue, device)
    eye = (float(detector.eye[0]), float(detector.eye[1]))
    pace = animal.row.pace_m_s
    walks, owners, stood = [], [], []
    for one in under:
        for points, floors in _walks_on(house, one, eye=eye):
            clock = np.arange(len(points), dtype=np.float64) * (POINTS_M / pace)
            walks.append((points, ("",) * len(points), clock))
            owners.append(one.number)
            stood.append(floors)
    if not walks:
        return ()
    sheet = catalogue.sheet(device.sheet).movement
    reach = 0.0 if sheet is None else sheet.reach_m
    walked = noticed_at(
        walks_of(walks),
        np.concatenate(stood)[None, :],
        [detector],
        reaches=np.array(REACH_SHARES) * reach,
        body=Body(animal.row.half_width_m, animal.height_m),
    )[0]
    found = []
    for number in dict.fromkeys(owners):
        mine = walked[[i for i, owner in enumerate(owners) if owner == number]]
        most, usual, least = (mine.min(axis=0) / pace).tolist()
        found.append(Tripped(number, (most, usual, least)))
    return tuple(found)


def _walks_on(
    house: Site, under: UnderZones, *, eye: tuple[float, float]
) -> Iterator[tuple[FloatArray, FloatArray]]:
    """Walks over one top, there and back, and what is stood on at each point. [m]"""
    top = tops_of(house)[under.number]
    if top.kind == "stair" and top.thing is not None:
        yield _walk_up(house, top.thing)
        return
    area = _a_hair_wider(house, under.number)
    x, y = under.place
    toward = math.atan2(eye[1] - y, eye[0] - x)
    for turn in np.arange(WAYS) * math.pi / WAYS:
        way = np.array([math.cos(toward + turn), math.sin(toward + turn)]) * STRETCH_M
        stretch = shapely.LineString([np.array([x, y]) - way, np.array([x, y]) + way])
        pieces = shapely.get_parts(stretch.intersection(area))
        here = [piece for piece in pieces if piece.distance(shapely.Point(x, y)) < 1e-3]
        if here and here[0].length >= SHORT_M:
            line = _laid(shapely.get_coordinates(here[0]))
            there_and_back = np.concatenate([line, line[-2::-1]])
            yield there_and_back, np.full(len(there_and_back), top.top_m)


@lru_cache(maxsize=256)
def _walk_up(house: Site, stair: str) -> tuple[FloatArray, FloatArray]:
    """The walk over a flight, and what is stood on at each point; shared, not to be written to. [m]"""
    flight = [one for one in tops_of(house) if one.thing == stair]
    corners = np.concatenate([one.points for one in flight])
    heights = np.concatenate([np.full(len(one.points), one.top_m) for one in flight])
    line = _laid(corners)
    nearest = np.argmin(np.hypot(*(line[:, None] - corners[None, :]).transpose(2, 0, 1)), axis=1)
    return line, heights[nearest]


@lru_cache(maxsize=2048)
def _a_hair_wider(house: Site, number: int) -> shapely.Geometry:
    """A top's area, so that a line along its edge is on it. [m]"""
    return tops_of(house)[number].area.buffer(1e-6)


def _laid(corners: FloatArray) -> FloatArray:
    """Points along a line, `POINTS_M` apart. [m]"""
    line = shapely.LineString(corners)
    steps = np.arange(0.0, line.length, POINTS_M)
    points: FloatArray = shapely.get_coordinates(shapely.line_interpolate_point(line, steps))
    return points

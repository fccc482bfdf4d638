"""Walking ways over several floors joined by stairs: least times to points and to every cell.

Ways are exact: taut lines about the corners of each floor's free area [1]_, a cost for each crossing line
(a door), and a fixed length for each join (a flight of stairs). A taut line crosses a doorway as few times as any
way of its kind can, so adding the doors' costs to the links of the graph keeps the least time exact.

References
----------
.. [1] E. W. Dijkstra, "A note on two problems in connexion with graphs", Numerische Mathematik, vol. 1,
   pp. 269-271, 1959, over the links of `wardwright.geometry.taut`.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely
from scipy.sparse import csr_array
from scipy.sparse.csgraph import dijkstra

from wardwright.geometry.raster import FloatArray, Grid, IntArray
from wardwright.geometry.taut import Net, crossed, links_from, net_of
from wardwright.geometry.views import Views, angles_in, sees, views_round
from wardwright.geometry.wedges import Wedges, paint_wedges, wedges_of


class Join(NamedTuple):
    """A way between two floors, or two places of one."""

    floor_a: int
    at_a: tuple[float, float]
    """Where it starts. [m]"""
    floor_b: int
    at_b: tuple[float, float]
    """Where it ends. [m]"""
    length: float
    """Along its slope. [m]"""


class Costs(NamedTuple):
    """What walking costs in time."""

    per_metre: float
    """On the flat. [s]"""
    per_metre_joined: float
    """Along joins. [s]"""
    per_crossing: float
    """For each crossing line. [s]"""


@dataclass(frozen=True, eq=False)
class Web:
    """Floors and the joins between them, ready to be asked."""

    nets: tuple[Net, ...]
    joins: tuple[Join, ...]
    first: IntArray
    """Number of each floor's first corner among all nodes, and of the first join's end. [-]"""
    floor_of: IntArray
    """The floor of each node. [-]"""
    points: FloatArray
    """The place of each node: corners by floor, then two ends a join, shape (N, 2). [m]"""
    starts: IntArray
    ends: IntArray
    lengths: FloatArray
    """Of each link between nodes. [m]"""
    crossings: IntArray
    """Crossing lines on each link. [-]"""
    is_join: IntArray
    """1 where a link is a join. [-]"""
    end_views: tuple[Views, ...]
    """Views all round from each end of a join."""


class Reach(NamedTuple):
    """Least times from one point to every node."""

    floor: int
    point: FloatArray
    """Where from, shape (2,). [m]"""
    views: Views
    """All round from there."""
    times: FloatArray
    """To each node, and last to the point itself, inf where there is no way. [s]"""
    before: IntArray
    """The node before each on its way, negative where there is none. [-]"""


def web_of(
    areas: tuple[shapely.Geometry, ...], lines: tuple[FloatArray, ...], joins: tuple[Join, ...]
) -> Web:
    """Make the graph of all taut lines on all floors.

    Parameters
    ----------
    areas : tuple of shapely geometry
        The free area of each floor. [m]
    lines : tuple of ndarray, shape (D, 2, 2)
        Crossing lines of each floor. [m]
    joins : tuple of Join
        Ways between floors; their ends lie inside the free areas.

    Returns
    -------
    Web
        Ready to be asked from any point.
    """
    return web_between(tuple(net_of(area, line) for area, line in zip(areas, lines, strict=True)), joins)


def web_between(nets: tuple[Net, ...], joins: tuple[Join, ...]) -> Web:
    """As `web_of`, from the taut lines of each floor.

    Parameters
    ----------
    nets : tuple of Net
        One for each floor.
    joins : tuple of Join
        Ways between floors; their ends lie inside the free areas.

    Returns
    -------
    Web
        Ready to be asked from any point.
    """
    counts = [len(net.corners.points) for net in nets]
    first = np.concatenate([[0], np.cumsum(counts)]).astype(np.int64)
    ends = [end for j in joins for end in ((j.floor_a, j.at_a), (j.floor_b, j.at_b))]
    end_floor = np.array([floor for floor, _ in ends], dtype=np.int64)
    end_point = np.array([point for _, point in ends], dtype=np.float64).reshape(-1, 2)
    end_views = tuple(
        views_round(point[None], nets[floor].corners, crossing_lines=nets[floor].crossing_lines)
        for floor, point in zip(end_floor, end_point, strict=True)
    )
    rows = [np.empty((0, 4))]
    for net, shift in zip(nets, first[:-1], strict=True):
        link = net.links
        rows.append(np.column_stack([link.starts + shift, link.ends + shift, link.lengths, link.crossings]))
    for i, (floor, point) in enumerate(zip(end_floor, end_point, strict=True)):
        number = int(first[-1]) + i
        later = np.flatnonzero((end_floor == floor) & (np.arange(len(end_floor)) > i))
        rows.append(_rows_from(nets, first, (int(floor), point), number=number))
        pair = (point, end_point[later])
        others = later + int(first[-1])
        rows.append(_rows_between(nets[floor], end_views[i], pair, number=number, others=others))
    numbers = first[-1] + np.arange(len(ends)).reshape(-1, 2)
    lengths = np.array([j.length for j in joins])
    row = np.concatenate([*rows, np.column_stack([numbers, lengths, np.zeros(len(joins))])])
    is_join = np.repeat([0, 1], [len(row) - len(joins), len(joins)])
    floor_of = np.concatenate([np.repeat(np.arange(len(nets)), counts), end_floor]).astype(np.int64)
    points = np.concatenate([np.empty((0, 2)), *(n.corners.points for n in nets), end_point])
    starts, stops, crossings = (row[:, i].astype(np.int64) for i in (0, 1, 3))
    return Web(nets, joins, first, floor_of, points, starts, stops, row[:, 2], crossings, is_join, end_views)


def reach_from(web: Web, floor: int, point: FloatArray, *, costs: Costs) -> Reach:
    """Least times from a point to every node.

    Parameters
    ----------
    web : Web
        The floors.
    floor : int
        Where the point is. [-]
    point : ndarray, shape (2,)
        Inside that floor's free area. [m]
    costs : Costs
        What walking costs.

    Returns
    -------
    Reach
        Times and ways.
    """
    net, count = web.nets[floor], len(web.points)
    views = views_round(point[None], net.corners, crossing_lines=net.crossing_lines)
    own = _to_corners(web, floor, (float(point[0]), float(point[1]))).copy()
    own[:, 0] = count
    others = np.flatnonzero(web.floor_of[web.first[-1] :] == floor) + int(web.first[-1])
    near = _rows_between(net, views, (point, web.points[others]), number=count, others=others)
    extra = np.concatenate([own, near])
    starts = np.concatenate([web.starts, extra[:, 0].astype(np.int64)])
    ends = np.concatenate([web.ends, extra[:, 1].astype(np.int64)])
    rate = np.where(web.is_join == 1, costs.per_metre_joined, costs.per_metre)
    time = np.concatenate(
        [
            web.lengths * rate + web.crossings * costs.per_crossing,
            extra[:, 2] * costs.per_metre + extra[:, 3] * costs.per_crossing,
        ]
    )
    # A stored zero would be no link at all to the solver.
    graph = csr_array((np.maximum(time, 1e-12), (starts, ends)), shape=(count + 1, count + 1))
    times, before = dijkstra(graph, directed=False, indices=[count], return_predecessors=True)
    return Reach(floor, point, views, times[0], before[0].astype(np.int64))


def way_to(
    web: Web, reach: Reach, place: tuple[int, FloatArray], *, costs: Costs
) -> tuple[float, list[int]] | None:
    """The least time to a point, and the nodes on the way.

    Parameters
    ----------
    web : Web
        The floors.
    reach : Reach
        Times to the nodes.
    place : tuple of int and ndarray, shape (2,)
        Its floor [-] and the point inside that floor's free area. [m]
    costs : Costs
        The same that the times were worked out with.

    Returns
    -------
    tuple or None
        Time [s] and the numbers of the nodes in order, without the two ends; None where there is no way.
    """
    floor, point = place
    net, origin = web.nets[floor], len(web.points)
    nodes = [_rows_to(web, floor, (float(point[0]), float(point[1])))]
    if reach.floor == floor:
        pair = (reach.point, point[None])
        nodes.append(_rows_between(net, reach.views, pair, number=-1, others=np.array([origin])))
    row = np.concatenate(nodes)
    if not len(row):
        return None
    last = row[:, 1].astype(np.int64)
    total = reach.times[last] + row[:, 2] * costs.per_metre + row[:, 3] * costs.per_crossing
    best = int(total.argmin())
    if not np.isfinite(total[best]):
        return None
    nodes_back, node = [], int(last[best])
    while node != origin:
        nodes_back.append(node)
        node = int(reach.before[node])
    return float(total[best]), nodes_back[::-1]


def times_on(web: Web, reach: Reach, floor: int, *, grid: Grid, costs: Costs) -> FloatArray:
    """Least times to the cells of one floor.

    Parameters
    ----------
    web : Web
        The floors.
    reach : Reach
        Times to the nodes.
    floor : int
        Which floor. [-]
    grid : Grid
        The cells.
    costs : Costs
        The same that the times were worked out with.

    Returns
    -------
    ndarray, shape (ny, nx)
        To the middle of each cell, inf outside the free area and where there is no way. [s]
    """
    values = np.full(grid.shape, np.inf)
    rates = {"per_metre": costs.per_metre, "per_crossing": costs.per_crossing}
    if reach.floor == floor:
        wedges = _all_round(grid, reach.views)
        paint_wedges(values, wedges, base=np.zeros(len(reach.views.origins)), **rates)
    for number, views in enumerate(web.end_views):
        node = int(web.first[-1]) + number
        # Only an end that was come to over its own join opens a new view.
        if web.floor_of[node] == floor and reach.before[node] == node + 1 - 2 * (number % 2):
            base = np.full(len(views.origins), reach.times[node])
            paint_wedges(values, _seen_from_end(web, number, grid), base=base, **rates)
    nodes = np.arange(web.first[floor], web.first[floor + 1])
    nodes = nodes[reach.before[nodes] >= 0]
    if len(nodes):
        views = web.nets[floor].views
        points = np.vstack([web.points, reach.point])
        corner = nodes - web.first[floor]
        # Come from the left sector: bend right, between the obstacle's edge and straight on; and the reverse.
        ahead = 2 * points[nodes] - points[reach.before[nodes]]
        right, left = angles_in(views, 2 * corner, ahead), angles_in(views, 2 * corner + 1, ahead)
        width = views.widths[2 * corner]
        bends_right = (right > -1e-6) & (right < width + 1e-6)
        sectors = np.where(bends_right, 2 * corner, 2 * corner + 1)
        low = np.where(bends_right, 0.0, np.clip(left, 0.0, width))
        high = np.where(bends_right, np.clip(right, 0.0, width), width)
        limits = np.stack([low, high], axis=1)
        wedges = _seen_from_corners(web, floor, grid, sectors=sectors.tobytes(), limits=limits.tobytes())
        paint_wedges(values, wedges, base=reach.times[nodes], **rates)
    return values


def _all_round(grid: Grid, views: Views) -> Wedges:
    sectors = np.arange(len(views.origins))
    limits = np.stack([np.zeros(len(sectors)), views.widths], axis=1)
    return wedges_of(grid, views, sectors=sectors, limits=limits)


@lru_cache(maxsize=16)
def _seen_from_end(web: Web, number: int, grid: Grid) -> Wedges:
    return _all_round(grid, web.end_views[number])


@lru_cache(maxsize=16)
def _seen_from_corners(web: Web, floor: int, grid: Grid, *, sectors: bytes, limits: bytes) -> Wedges:
    """What some corners see ahead; remembered, since on another storey all ways go on alike from the stairs."""
    return wedges_of(
        grid,
        web.nets[floor].views,
        sectors=np.frombuffer(sectors, dtype=np.int64),
        limits=np.frombuffer(limits).reshape(-1, 2),
    )


def _rows_from(
    nets: tuple[Net, ...], first: IntArray, place: tuple[int, FloatArray], *, number: int
) -> FloatArray:
    """Links from a point to the corners of its floor: rows of number, node, length, crossings."""
    floor, point = place
    links = links_from(nets[floor], point[None])
    fixed = np.full(len(links.ends), number)
    return np.column_stack([fixed, links.ends + first[floor], links.lengths, links.crossings])


@lru_cache(maxsize=256)
def _to_corners(web: Web, floor: int, place: tuple[float, float]) -> FloatArray:
    """Links between a point and the corners of its floor, whichever way they are walked; the point has no number."""
    return _rows_from(web.nets, web.first, (floor, np.array(place)), number=-1)


@lru_cache(maxsize=256)
def _rows_to(web: Web, floor: int, place: tuple[float, float]) -> FloatArray:
    """The last links to a point, from corners and ends of joins: the same wherever one comes from."""
    point = np.array(place)
    rows = [_to_corners(web, floor, place)]
    for end in np.flatnonzero(web.floor_of[web.first[-1] :] == floor):
        number = np.array([int(end) + int(web.first[-1])])
        pair = (web.points[number[0]], point[None])
        rows.append(_rows_between(web.nets[floor], web.end_views[end], pair, number=-1, others=number))
    return np.concatenate(rows)


def _rows_between(
    net: Net, views: Views, ends: tuple[FloatArray, FloatArray], *, number: int, others: IntArray
) -> FloatArray:
    """Straight links from one point to others that it sees: rows of number, node, length, crossings."""
    point, targets = ends
    sectors = np.tile(np.arange(len(views.origins)), len(targets))
    seen = sees(views, sectors, np.repeat(targets, len(views.origins), axis=0))
    kept = np.flatnonzero(seen.reshape(len(targets), len(views.origins)).any(axis=1))
    ways = np.stack([np.tile(point, (len(kept), 1)), targets[kept]], axis=1)
    lengths = np.linalg.norm(ways[:, 1] - ways[:, 0], axis=1)
    count = np.isfinite(crossed(ways, net.crossing_lines)).sum(axis=1)
    return np.column_stack([np.full(len(kept), number), others[kept], lengths, count])

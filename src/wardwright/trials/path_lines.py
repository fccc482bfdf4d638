"""A way through the house as lines, one for each stay on a storey."""

from __future__ import annotations

from collections.abc import Sequence

import shapely

from wardwright.model.record import Point2

STRAIGHT_M = 0.02
"""A line is told by its corners: how far it may be from the way. [m] (assumption)"""

Lines = tuple[tuple[str, tuple[Point2, ...]], ...]
"""A storey and points on it, [m], in the order walked."""


def by_storey(storeys: Sequence[str], points: Sequence[Sequence[float]]) -> Lines:
    """Cut a way where it comes to another storey.

    Parameters
    ----------
    storeys : sequence of str
        The storey of each point.
    points : sequence of point
        In the order walked. [m]

    Returns
    -------
    tuple of (str, tuple of point)
        One line for each stay on a storey, told by its corners; a stay of one point is no line.

    Examples
    --------
    >>> by_storey(["ground"] * 3 + ["first"] * 2, [(0, 0), (1, 0), (2, 0), (2, 1), (2, 2)])
    (('ground', ((0.0, 0.0), (2.0, 0.0))), ('first', ((2.0, 1.0), (2.0, 2.0))))
    """
    found, begun = [], 0
    for at in range(1, len(points) + 1):
        if at < len(points) and storeys[at] == storeys[begun]:
            continue
        if at - begun > 1:
            line = shapely.LineString(points[begun:at]).simplify(STRAIGHT_M)
            found.append((storeys[begun], tuple((float(x), float(y)) for x, y in line.coords)))
        begun = at
    return tuple(found)

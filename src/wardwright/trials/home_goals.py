"""Where somebody goes from bed, and where they stand there."""

from __future__ import annotations

from functools import lru_cache

import shapely

from wardwright.model.fabric import Space
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot

TOILETS = ("bathroom", "toilet")
"""Uses of a room that somebody who needs the toilet goes to."""


@lru_cache(maxsize=512)
def middle_of(space: Space) -> Spot:
    """A place well inside a space."""
    place = shapely.Polygon(space.outline_m).representative_point()
    return Spot(space.storey, float(place.x), float(place.y))


@lru_cache(maxsize=256)
def goals_from(house: Site, bed: Space) -> tuple[Spot, ...]:
    """Where one goes from bed: the nearest of the bathrooms and toilets, a kitchen, a living room."""
    found = (rooms_by(house, bed, uses) for uses in (TOILETS, ("kitchen",), ("living",)))
    return tuple(middle_of(rooms[0]) for rooms in found if rooms)


@lru_cache(maxsize=512)
def rooms_by(house: Site, bed: Space, uses: tuple[str, ...]) -> tuple[Space, ...]:
    """Rooms of ours of some uses, the nearest to a bedroom first; those of its own storey before all others.

    Parameters
    ----------
    house : Site
        The bare house.
    bed : Space
        Where one comes from.
    uses : tuple of str
        What the rooms are used as.

    Returns
    -------
    tuple of Space
        Equally near ones by id.
    """
    rooms = [space for space in house.spaces if space.use in uses and space.is_protected]
    rooms.sort(key=lambda one: (one.storey != bed.storey, _apart(one, bed), one.id))
    return tuple(rooms)


def _apart(one: Space, other: Space) -> float:
    # Rounded, so that a turned house chooses alike.
    return round(float(shapely.Polygon(one.outline_m).distance(shapely.Polygon(other.outline_m))), 6)

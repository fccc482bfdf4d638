"""What people call a thing that stands in the way of a radio path."""

from __future__ import annotations

from wardwright.model.placement import PROBE_M, direction, space_at
from wardwright.model.record import Point3
from wardwright.model.site import Site
from wardwright.physics.radio.from_site import Met, Thing


def thing_words(site: Site, met: Met) -> str:
    """A wall by the rooms on its two sides where it is met, an opening or a thing by its name.

    Parameters
    ----------
    site : Site
        The house.
    met : Met
        What a path meets, and where.

    Returns
    -------
    str
        Such as ``the wall between Hall and Living room``.
    """
    thing = met.thing
    match thing.kind:
        case "wall":
            return _wall_words(site, thing, met.at_m)
        case "floor":
            return f"the floor of {site.storey(thing.ident).name}"
        case "opening":
            return site.opening(thing.ident).name
        case _:
            return next((one.name for one in site.fixtures if one.id == thing.ident), thing.ident)


def _wall_words(site: Site, thing: Thing, at: Point3) -> str:
    wall = site.wall(thing.ident)
    _, (nx, ny), _ = direction(wall.line_m)
    beside = []
    for side in (1.0, -1.0):
        off = side * (wall.thickness_m / 2 + PROBE_M)
        space = space_at(site, wall.storey, (at[0] + nx * off, at[1] + ny * off))
        beside.append(None if space is None else space.name)
    names = [name for name in beside if name is not None]
    if len(names) == 2:
        return (
            f"the wall between {names[0]} and {names[1]}" if names[0] != names[1] else f"a wall in {names[0]}"
        )
    return f"the outer wall of {names[0]}" if names else f"wall {wall.id.removesuffix('-wall')}"

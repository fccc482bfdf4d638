"""A house of two storeys with a window high in its east wall, and things that stand before it."""

from __future__ import annotations

from typing import Any

from common.houses import one_room, window
from wardwright.model.fabric import Storey, Wall
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing
from wardwright.trials.climbs import Limits

LIMITS = Limits(2.4, 2.0, 1.0)


def box(
    ident: str, x: float, y: float, height: float, *, kind: Any = "flat-roof", **facts: Any
) -> GroundThing:
    """A thing 1 m square with its middle at (x, y)."""
    return GroundThing(
        id=ident, name=ident, kind=kind, height_m=height,
        outline_m=((x - 0.5, y - 0.5), (x + 0.5, y - 0.5), (x + 0.5, y + 0.5), (x - 0.5, y + 0.5)), **facts,
    )  # fmt: skip


def house(*things: GroundThing, sill: float = 0.9, **parts: Any) -> Site:
    """The room of 5 m by 4 m with another over it; a window of 1 m in the middle of the upper east wall.

    The wall's outer face is at x = 5.3 m; the sill of 0.9 m is 2.7 + 0.9 + 0.15 = 3.75 m above the ground.
    """
    first = Storey(id="first", name="first floor", elevation_m=2.7)
    bedroom = one_room().spaces[0].model_copy(update={"id": "bedroom", "name": "Bedroom", "storey": "first"})
    upper = Wall(id="upper-east", storey="first", line_m=((5.15, -0.15), (5.15, 4.15)), thickness_m=0.3)
    usual: dict[str, Any] = {
        "storeys": (*one_room().storeys, first),
        "spaces": (*one_room().spaces, bedroom),
        "walls": (*one_room().walls, upper),
        "openings": (window("window", "upper-east", 2.15, width_m=1.0, sill_m=sill, head_m=2.1),),
        "ground": Ground(things=things),
    }
    return one_room(**(usual | parts))

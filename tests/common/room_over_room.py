"""A bedroom over a living room, with the ground about them, for what hangs outside."""

from __future__ import annotations

from typing import Any

from common.houses import one_room, window
from wardwright.model.fabric import Space, Storey
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing


def room_over_room(**parts: Any) -> Site:
    """`one_room` twice, the upper one 2.7 m up, its walls `upper-south` and so on; a window in its north wall.

    The window is 1.2 m wide about x = 2.5; the ground lies 0.15 m below the lower floor.
    """
    below = one_room()
    usual: dict[str, Any] = {
        "storeys": (*below.storeys, Storey(id="upper", name="upper floor", elevation_m=2.7)),
        "spaces": (
            *below.spaces,
            Space(
                id="bedroom",
                name="Bedroom",
                storey="upper",
                use="bedroom",
                outline_m=((0, 0), (5, 0), (5, 4), (0, 4)),
            ),
        ),
        "walls": (
            *below.walls,
            *(w.model_copy(update={"id": f"upper-{w.id}", "storey": "upper"}) for w in below.walls),
        ),
        "openings": (window("bedroom-window", "upper-north", 2.65),),
    }
    return one_room(**(usual | parts))


def back_addition(x_low: float = 1.0, x_high: float = 4.0, **facts: Any) -> Ground:
    """A flat roof 2.6 m high that stands against the north wall and is 2.7 m deep."""
    usual: dict[str, Any] = {"id": "roof", "name": "flat roof", "kind": "flat-roof", "height_m": 2.6}
    outline = ((x_low, 4.3), (x_high, 4.3), (x_high, 7.0), (x_low, 7.0))
    return Ground(things=(GroundThing(outline_m=outline, **(usual | facts)),))

"""Houses for the rules with codes GLS."""

from __future__ import annotations

from typing import Any

from common.houses import on_opening, on_wall, one_room, window
from common.rule_houses.form import Houses
from wardwright.model.device import Device, Fixing
from wardwright.model.fabric import Space, Wall
from wardwright.model.site import Site

NORTH = {"covering": "none", "hinge": "fixed"}


def long_room(**parts: Any) -> Site:
    """A living room of 10 m by 4 m, its walls as in `one_room`; a window in the east wall, its middle at y = 2."""
    lines = {
        "south": ((-0.15, -0.15), (10.15, -0.15)),
        "east": ((10.15, -0.15), (10.15, 4.15)),
        "north": ((10.15, 4.15), (-0.15, 4.15)),
        "west": ((-0.15, 4.15), (-0.15, -0.15)),
    }
    usual: dict[str, Any] = {
        "name": "long room",
        "spaces": (
            Space(
                id="living",
                name="Living room",
                storey="ground",
                use="living",
                outline_m=((0, 0), (10, 0), (10, 4), (0, 4)),
            ),
        ),
        "walls": tuple(
            Wall(id=name, storey="ground", line_m=line, thickness_m=0.3) for name, line in lines.items()
        ),
        "openings": (window("east-window", "east", 2.15, covering="none"),),
    }
    return one_room(**(usual | parts))


def ear(offset_m: float, sheet: str = "ear") -> Device:
    """A glass-break detector on the south wall, 2 m up."""
    return on_wall("ear", sheet, "south", offset_m, height_m=2.0)


def heard(offset_m: float, **facts: Any) -> Site:
    """The long room with a detector at x = offset - 0.15, and facts of its window."""
    told: dict[str, Any] = {"covering": "none"}
    return long_room(
        openings=(window("east-window", "east", 2.15, **(told | facts)),), devices=(ear(offset_m),)
    )


def with_shock(sheet: str = "shock", surface: str = "timber", **facts: Any) -> Site:
    told: dict[str, Any] = {} if surface == "" else {"fixing": Fixing(by="screws", surface=surface)}
    device = on_opening("shock", "window", sheet).model_copy(update=told)
    return one_room(openings=(window("window", "north", 2.65, **facts),), devices=(device,))


LARGE = {"width_m": 2.0, "sill_m": 0.2, "head_m": 2.2, "hinge": "fixed"}

HOUSES: dict[str, Houses] = {
    "GLS101": Houses(fires=heard(1.15), silent=heard(8.15), cannot_run=long_room()),
    "GLS102": Houses(
        fires=heard(6.15, covering="curtain"),
        silent=heard(6.15),
        cannot_run=long_room(openings=(window("east-window", "east", 2.15),), devices=(ear(6.15),)),
    ),
    "GLS103": Houses(
        fires=heard(8.15, glazing="laminated"),
        silent=heard(8.15),
        cannot_run=long_room(),
    ),
    "GLS104": Houses(
        fires=long_room(openings=(window("pane", "east", 2.15, **LARGE),)),
        silent=long_room(openings=(window("pane", "east", 2.15, **LARGE),), devices=(ear(8.15),)),
        cannot_run=long_room(),
    ),
    "GLS105": Houses(
        fires=with_shock(width_m=1.8, sill_m=0.7),
        silent=with_shock(width_m=0.8),
        cannot_run=with_shock(surface="", width_m=0.8),
    ),
}

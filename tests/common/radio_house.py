"""A long house of three rooms in a row, for tests of radio: a control unit at one end, devices along it."""

from __future__ import annotations

from typing import Any

from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
ROOMS = ("west", "middle", "east")


def long_house(*devices: dict[str, Any], build: str = "concrete", **parts: Any) -> Site:
    """Rooms of 8 m by 4 m side by side, walls of one build between them; a control unit on the west wall."""
    ends = [(x, x + 8.0) for x in (0.0, 8.0, 16.0)]
    lines = {
        "south": ((0, 0), (24, 0)), "north": ((0, 4), (24, 4)), "outer-west": ((0, 0), (0, 4)),
        "outer-east": ((24, 0), (24, 4)), "west-middle": ((8, 0), (8, 4)), "middle-east": ((16, 0), (16, 4)),
    }  # fmt: skip
    return Site.model_validate(
        {
            "name": "long house",
            "storeys": [{"id": "g", "name": "Ground floor", "elevation_m": 0.0}],
            "spaces": [
                {"id": name, "name": f"Room {name}", "storey": "g",
                 "outline_m": [(a + 0.1, 0.1), (b - 0.1, 0.1), (b - 0.1, 3.9), (a + 0.1, 3.9)]}
                for name, (a, b) in zip(ROOMS, ends, strict=True)
            ],
            "walls": [
                {"id": name, "storey": "g", "line_m": line, "thickness_m": 0.2, "construction": build}
                for name, line in lines.items()
            ],
            "outlets": [
                {"id": f"socket-{name}", "name": f"socket {name}", "kind": "power", "storey": "g", "at_m": (x, 0.2)}
                for name, x in (("middle", 12.0), ("east", 20.0))
            ],
            "devices": [
                {"id": "unit", "name": "Control unit", "sheet": "control-unit-radio",
                 "mount": {"on": "free", "storey": "g", "at_m": (0.5, 2.0), "height_m": 1.5}},
                *devices,
            ],
            **parts,
        }
    )  # fmt: skip


def device(name: str, sheet: str, x: float, y: float = 2.0, **facts: Any) -> dict[str, Any]:
    """A device that stands free, 1 m up."""
    mount = {"on": "free", "storey": "g", "at_m": (x, y), "height_m": 1.0}
    return {"id": name, "name": name.capitalize(), "sheet": sheet, "mount": mount, **facts}


def behind_radiators() -> Site:
    """The better terrace with the kitchen's detector in the other corner: two radiators stand in its radio path."""
    site = read_sample("terrace-better")
    mount = site.device("kitchen-movement").mount.model_copy(update={"offset_m": 4.715})
    moved = site.device("kitchen-movement").model_copy(update={"mount": mount, "heading_deg": -135.0})
    devices = tuple(moved if one.id == moved.id else one for one in site.devices)
    return site.model_copy(update={"devices": devices})

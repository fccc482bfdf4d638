"""Small houses built in code, and the sheets of their devices, for tests of any folder."""

from __future__ import annotations

import tomllib
from typing import Any

from common.kit_sheets import KIT
from structure.source_tree import PACKAGE
from wardwright.model.camera_rows import Task
from wardwright.model.catalogue import Animal, Catalogue, Figure, Walker
from wardwright.model.device import CeilingMount, Device, FreeMount, OpeningMount, WallMount
from wardwright.model.device_sheets import (
    BeamRow,
    CameraSheet,
    ContactSheet,
    ControlSheet,
    DeviceSheet,
    FireSheet,
    GlassBreakSheet,
    MovementSheet,
    ShockSheet,
    WaterSheet,
)
from wardwright.model.fabric import OpenEdge, Space, Storey, Wall
from wardwright.model.fixture import Fixture
from wardwright.model.household import Person, Pet
from wardwright.model.limits import Limit
from wardwright.model.opening import Opening
from wardwright.model.power_sheets import Cell
from wardwright.model.programme import Zone
from wardwright.model.radio_rows import RadioMaterial, WallLoss
from wardwright.model.site import Site
from wardwright.model.sound_rows import Absorption, Spectrum, Transmission

ROWS = (
    BeamRow(name="far", pairs=11, depression_deg=5.71),
    BeamRow(name="middle", pairs=9, depression_deg=13.13),
    BeamRow(name="near", pairs=5, depression_deg=29.54),
    BeamRow(name="creep", pairs=3, depression_deg=61.39),
)
FAN: dict[str, Any] = {
    "reach_m": 12.0,
    "angle_deg": 90.0,
    "height_low_m": 2.0,
    "height_high_m": 2.4,
    "rows": ROWS,
}

EAR: dict[str, Any] = {
    "reach_m": 6.0,
    "curtained_reach_m": 3.0,
    "least_pane_m": 0.4,
    "glazings": ("double", "single"),
}
ANY_GLASS = {"least_pane_m": 0.2, "glazings": ("double", "single", "laminated")}


def sheet(sheet_id: str, kind: Any, **tables: Any) -> DeviceSheet:
    return DeviceSheet(id=sheet_id, name=sheet_id, source="own", mark="assumption", kind=kind, **tables)


def figures() -> tuple[Figure, ...]:
    return tuple(Figure(**row) for file in ("figures", "sound", "work") for row in rows(file)["figure"])


def rows(file: str) -> dict[str, Any]:
    """The tables of one file of the catalogue."""
    return tomllib.loads((PACKAGE / "catalogue" / f"{file}.toml").read_text(encoding="utf-8"))


def limits() -> tuple[Limit, ...]:
    return tuple(Limit(**row) for file in ("limits", "sound") for row in rows(file)["limit"])


def animals() -> tuple[Animal, ...]:
    text = (PACKAGE / "catalogue" / "pets.toml").read_text(encoding="utf-8")
    return tuple(Animal(**row) for row in tomllib.loads(text)["animal"])


def cells() -> tuple[Cell, ...]:
    text = (PACKAGE / "catalogue" / "cells.toml").read_text(encoding="utf-8")
    return tuple(Cell(**row) for row in tomllib.loads(text)["cell"])


def tasks() -> tuple[Task, ...]:
    text = (PACKAGE / "catalogue" / "tasks.toml").read_text(encoding="utf-8")
    return tuple(Task(**row) for row in tomllib.loads(text)["task"])


# As the fan, without the rows that come near the floor; its two rows are at 2.2 m - 0.0875 d and 2.2 m - 0.1405 d.
PET_FAN: dict[str, Any] = FAN | {
    "rows": (
        BeamRow(name="far", pairs=11, depression_deg=5.0),
        BeamRow(name="middle", pairs=9, depression_deg=8.0),
    ),
    "passes_animals_up_to_kg": 18.0,
}
CAMERA: dict[str, Any] = {"across_px": 1920, "down_px": 1080, "angle_deg": 90.0}


def walkers() -> tuple[Walker, ...]:
    text = (PACKAGE / "catalogue" / "people.toml").read_text(encoding="utf-8")
    return tuple(Walker(**row) for row in tomllib.loads(text)["walker"])


def radio_rows(table: str, kind: Any) -> tuple[Any, ...]:
    text = (PACKAGE / "catalogue" / "radio.toml").read_text(encoding="utf-8")
    return tuple(kind.model_validate(row) for row in tomllib.loads(text)[table])


CATALOGUE = Catalogue(
    sheets=(
        sheet("unit", "control-unit", control=ControlSheet(display_length=16)),
        sheet("unit-with-keypad", "control-unit", control=ControlSheet(display_length=16, has_keypad=True)),
        sheet("unit-with-room", "control-unit", control=ControlSheet(display_length=16, zones=64, users=40)),
        sheet("keypad", "keypad"),
        # Wanting room to be opened: for the cell, for the cover, for the screw at its side.
        sheet("unit-opened-below", "control-unit", service_clearance_m=0.4, service_side="below"),
        sheet("keypad-opened-above", "keypad", service_clearance_m=0.15, service_side="above"),
        sheet("sounder-opened-in-front", "sounder", service_clearance_m=0.3, service_side="front"),
        sheet("repeater-opened-beside", "repeater", service_clearance_m=0.2, service_side="beside"),
        sheet("fan", "movement-detector", movement=MovementSheet(**FAN, hot_clearance_m=1.0)),
        sheet("fan-silent-on-heat", "movement-detector", movement=MovementSheet(**FAN)),
        sheet("round", "movement-detector", movement=MovementSheet(**{**FAN, "angle_deg": 360.0})),
        sheet("fan-of-48-dm", "movement-detector", movement=MovementSheet(**FAN | {"reach_m": 4.8})),
        sheet("fan-of-200-lx", "movement-detector", movement=MovementSheet(**FAN, white_light_lux=200.0)),
        sheet("fan-of-2000-lx", "movement-detector", movement=MovementSheet(**FAN, white_light_lux=2000.0)),
        sheet("fan-passing-pets", "movement-detector", movement=MovementSheet(**PET_FAN)),
        sheet(
            "camera",
            "camera",
            camera=CameraSheet(**CAMERA, height_low_m=1.2, height_high_m=2.6, has_cover=True),
        ),
        sheet(
            "camera-outside",
            "camera",
            camera=CameraSheet(**CAMERA, height_low_m=2.2, height_high_m=4.5, is_outside=True),
        ),
        sheet("contact", "opening-contact", contact=ContactSheet(gap_m=0.02)),
        sheet("smoke", "smoke-alarm", fire=FireSheet(level_dba=86.0)),
        sheet("smoke-tender", "smoke-alarm", fire=FireSheet(level_dba=86.0, coldest_c=5.0, warmest_c=25.0)),
        sheet("heat", "heat-alarm", fire=FireSheet(level_dba=86.0)),
        sheet("co", "co-alarm", fire=FireSheet(level_dba=86.0)),
        sheet("water", "water-detector", water=WaterSheet()),
        sheet("water-lead", "water-detector", water=WaterSheet(lead_m=1.5)),
        sheet("water-high-lead", "water-detector", water=WaterSheet(lead_m=1.0, contact_height_m=0.004)),
        sheet("contact-roller", "opening-contact", contact=ContactSheet(gap_m=0.05, form="roller-door")),
        sheet("ear", "glass-break-detector", glass_break=GlassBreakSheet(**EAR), price=40.0),
        sheet(
            "ear-any-glass",
            "glass-break-detector",
            glass_break=GlassBreakSheet(**EAR | ANY_GLASS),
            price=60.0,
        ),
        sheet("shock", "shock-detector", shock=ShockSheet(radius_m=1.2, surfaces=("timber", "upvc"))),
        sheet(
            "shock-wide",
            "shock-detector",
            shock=ShockSheet(radius_m=2.0, surfaces=("timber", "upvc", "steel")),
        ),
        sheet("contact-outdoors", "opening-contact", contact=ContactSheet(gap_m=0.02, is_for_outdoors=True)),
        *KIT,
    ),
    figures=figures(),
    limits=limits(),
    transmissions=tuple(Transmission(**row) for row in rows("sound")["transmission"]),
    absorptions=tuple(Absorption(**row) for row in rows("sound")["absorption"]),
    spectrums=tuple(Spectrum(**row) for row in rows("sound")["spectrum"]),
    radio_materials=radio_rows("radio_material", RadioMaterial),
    wall_losses=radio_rows("wall_loss", WallLoss),
    walkers=walkers(),
    animals=animals(),
    cells=cells(),
    tasks=tasks(),
)
"""Values of our own; the figures, limits, walkers and animals are the package's."""


def opening(opening_id: str, wall: str, offset_m: float, **facts: Any) -> Opening:
    usual: dict[str, Any] = {"name": opening_id.replace("-", " "), "kind": "door", "width_m": 0.9}
    return Opening(id=opening_id, wall=wall, offset_m=offset_m, **(usual | facts))


def window(opening_id: str, wall: str, offset_m: float, **facts: Any) -> Opening:
    usual: dict[str, Any] = {
        "kind": "window",
        "width_m": 1.2,
        "sill_m": 0.9,
        "head_m": 2.1,
        "glazing": "double",
    }
    return opening(opening_id, wall, offset_m, **(usual | facts))


def on_wall(device_id: str, sheet_id: str, wall: str, offset_m: float, **facts: Any) -> Device:
    """A device on the left face of a wall, 2.2 m up, unless said otherwise."""
    mount = WallMount(
        on="wall",
        wall=wall,
        side=facts.pop("side", "left"),
        offset_m=offset_m,
        height_m=facts.pop("height_m", 2.2),
    )
    return Device(id=device_id, name=device_id.replace("-", " "), sheet=sheet_id, mount=mount, **facts)


def on_opening(device_id: str, opening_id: str, sheet_id: str = "contact", **mount: Any) -> Device:
    return Device(
        id=device_id,
        name=device_id.replace("-", " "),
        sheet=sheet_id,
        mount=OpeningMount(on="opening", opening=opening_id, **mount),
    )


def on_ceiling(device_id: str, sheet_id: str, x: float, y: float) -> Device:
    return Device(
        id=device_id,
        name=device_id,
        sheet=sheet_id,
        mount=CeilingMount(on="ceiling", storey="ground", at_m=(x, y)),
    )


def standing_free(device_id: str, sheet_id: str, x: float, y: float) -> Device:
    return Device(
        id=device_id, name=device_id, sheet=sheet_id, mount=FreeMount(on="free", storey="ground", at_m=(x, y))
    )


def on_floor(device_id: str, sheet_id: str, x: float, y: float, height_m: float) -> Device:
    mount = FreeMount(on="free", storey="ground", at_m=(x, y), height_m=height_m)
    return Device(id=device_id, name=device_id, sheet=sheet_id, mount=mount)


def radiator(x: float, y: float, **facts: Any) -> Fixture:
    usual: dict[str, Any] = {"id": "radiator", "name": "radiator", "kind": "radiator", "heat": "hot"}
    return Fixture(storey="ground", centre_m=(x, y), size_m=(1.0, 0.1), turn_deg=0.0, **(usual | facts))


def zone(number: int, name: str, *devices: str, behaviour: str = "instant", **facts: Any) -> Zone:
    return Zone(id=f"zone-{number}", number=number, name=name, devices=devices, behaviour=behaviour, **facts)


def person(name: str, **facts: Any) -> Person:
    return Person(id=name.lower(), name=name, **facts)


def pet(kind: Any, **facts: Any) -> Pet:
    return Pet(id=kind, name=kind.replace("-", " "), kind=kind, **facts)


def one_room(**parts: Any) -> Site:
    """A living room of 5 m by 4 m: outer walls south, east, north, west; the room is on the left of each line.

    The walls are 0.3 m thick and stand outside the inner rectangle (0, 0)-(5, 4); each begins 0.15 m before it.
    """
    lines = {
        "south": ((-0.15, -0.15), (5.15, -0.15)),
        "east": ((5.15, -0.15), (5.15, 4.15)),
        "north": ((5.15, 4.15), (-0.15, 4.15)),
        "west": ((-0.15, 4.15), (-0.15, -0.15)),
    }
    usual: dict[str, Any] = {
        "name": "one room",
        "storeys": (Storey(id="ground", name="ground floor", elevation_m=0.0),),
        "spaces": (
            Space(
                id="living",
                name="Living room",
                storey="ground",
                use="living",
                outline_m=((0, 0), (5, 0), (5, 4), (0, 4)),
            ),
        ),
        "walls": tuple(
            Wall(id=name, storey="ground", line_m=line, thickness_m=0.3) for name, line in lines.items()
        ),
    }
    return Site(**(usual | parts))


def two_rooms_and_hall(**parts: Any) -> Site:
    """A hall of 2 m by 6 m between a kitchen (west, 4 m by 6 m) and a study (east, 4 m by 6 m).

    Outer walls as in `one_room` round (0, 0)-(10.2, 6); inner walls `kitchen-wall` (x 4.0 to 4.1) and `study-wall`
    (x 6.1 to 6.2) run north; the hall is (4.1, 0)-(6.1, 6). The front door is in the south wall, at x = 5.1; doors
    of the rooms are at y = 4; the kitchen has a window in the west wall, the study one in the east wall.
    """
    outer = {
        "south": ((-0.15, -0.15), (10.35, -0.15)),
        "east": ((10.35, -0.15), (10.35, 6.15)),
        "north": ((10.35, 6.15), (-0.15, 6.15)),
        "west": ((-0.15, 6.15), (-0.15, -0.15)),
    }
    inner = {"kitchen-wall": ((4.05, 0.0), (4.05, 6.0)), "study-wall": ((6.15, 0.0), (6.15, 6.0))}
    rooms = {"kitchen": (0.0, 4.0, "Kitchen"), "hall": (4.1, 6.1, "Hall"), "study": (6.2, 10.2, "Study")}
    usual: dict[str, Any] = {
        "name": "two rooms and hall",
        "storeys": (Storey(id="ground", name="ground floor", elevation_m=0.0),),
        "spaces": tuple(
            Space(
                id=room,
                name=name,
                storey="ground",
                use=room,
                outline_m=((x0, 0), (x1, 0), (x1, 6), (x0, 6)),
            )
            for room, (x0, x1, name) in rooms.items()
        ),
        "walls": (
            *(Wall(id=name, storey="ground", line_m=line, thickness_m=0.3) for name, line in outer.items()),
            *(Wall(id=name, storey="ground", line_m=line, thickness_m=0.1) for name, line in inner.items()),
        ),
        "openings": (
            opening("front-door", "south", 5.25, is_entry_door=True),
            opening("kitchen-door", "kitchen-wall", 4.0),
            opening("study-door", "study-wall", 4.0),
            window("kitchen-window", "west", 3.15),
            window("study-window", "east", 3.15),
        ),
    }
    return Site(**(usual | parts))


def open_edge(first: str, second: str, line: Any) -> OpenEdge:
    return OpenEdge(id=f"{first}-{second}", spaces=(first, second), line_m=line)

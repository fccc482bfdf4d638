"""Houses for the rules with codes FIR."""

from __future__ import annotations

from typing import Any

from common.houses import on_wall, one_room, two_rooms_and_hall
from common.rule_houses.form import Houses
from wardwright.model.device import CeilingMount, Device
from wardwright.model.fabric import Slope, Space, Storey
from wardwright.model.fixture import Fixture
from wardwright.model.place import Place
from wardwright.model.site import Site

US = Place(rule_pack="us", country="US")


def hung(device_id: str, sheet: str, x: float, y: float, storey: str = "ground") -> Device:
    """An alarm on a ceiling."""
    return Device(id=device_id, name=device_id, sheet=sheet, mount=CeilingMount(storey=storey, at_m=(x, y)))


def thing(kind: Any, x: float, y: float, name: str = "", **facts: Any) -> Fixture:
    usual: dict[str, Any] = {
        "id": name.lower().replace(" ", "-") or kind,
        "name": name or kind,
        "size_m": (0.5, 0.5),
    }
    return Fixture(storey="ground", kind=kind, centre_m=(x, y), **(usual | facts))


def with_bedroom(*devices: Device, **parts: Any) -> Site:
    """Two rooms and a hall, the study slept in."""
    spaces = tuple(
        one.model_copy(update={"use": "bedroom"}) if one.id == "study" else one
        for one in two_rooms_and_hall().spaces
    )
    return two_rooms_and_hall(spaces=spaces, devices=devices, **parts)


def two_levels(*devices: Device, **parts: Any) -> Site:
    """The living room, and a bedroom of 4 m by 3 m above it."""
    ground = one_room()
    above = Space(
        id="above", name="Bedroom", storey="upper", use="bedroom", outline_m=((0, 0), (4, 0), (4, 3), (0, 3))
    )
    return one_room(
        storeys=(*ground.storeys, Storey(id="upper", name="upper floor", elevation_m=2.7)),
        spaces=(*ground.spaces, above),
        devices=devices,
        **parts,
    )


def under_a_ridge(*devices: Device, **parts: Any) -> Site:
    """The living room under two slopes: 1.9 m at the eaves, 3.4 m at the ridge, which runs along y = 2."""
    storey = Storey(
        id="ground",
        name="ground floor",
        elevation_m=0.0,
        height_m=3.4,
        slopes=(
            Slope(corners_m=((0, 0, 1.9), (5, 0, 1.9), (5, 2, 3.4), (0, 2, 3.4))),
            Slope(corners_m=((0, 4, 1.9), (5, 4, 1.9), (5, 2, 3.4), (0, 2, 3.4))),
        ),
    )
    return one_room(storeys=(storey,), devices=devices, **parts)


def with_stove(*devices: Device, **parts: Any) -> Site:
    """The living room with a stove, its near edge at x 0.75."""
    return one_room(fixtures=(thing("stove", 0.5, 2.0),), devices=devices, **parts)


COOKER = thing("appliance", 0.5, 0.5, "Cooker", size_m=(0.6, 0.6))
LOFT = tuple(one.model_copy(update={"use": "loft"}) for one in one_room().spaces)

HOUSES: dict[str, Houses] = {
    "FIR101": Houses(
        fires=with_bedroom(hung("smoke", "smoke", 1.0, 4.0)),
        silent=with_bedroom(hung("smoke", "smoke", 5.1, 4.0)),
        cannot_run=with_bedroom(),
    ),
    "FIR102": Houses(
        fires=two_levels(hung("smoke", "smoke", 2.5, 2.0)),
        silent=two_levels(hung("smoke", "smoke", 2.5, 2.0), hung("above", "smoke", 2.0, 1.5, "upper")),
        cannot_run=two_levels(),
    ),
    "FIR103": Houses(
        fires=one_room(devices=(hung("smoke", "smoke", 0.2, 2.0),)),
        silent=one_room(devices=(hung("smoke", "smoke", 0.3, 2.0), hung("co", "co", 2.5, 2.0))),
        cannot_run=one_room(devices=(hung("smoke", "smoke", 0.2, 2.0),), place=US),
    ),
    "FIR104": Houses(
        fires=one_room(devices=(on_wall("smoke", "smoke", "south", 2.65, height_m=1.5),)),
        silent=one_room(devices=(on_wall("smoke", "smoke", "south", 2.65, height_m=2.0),)),
        cannot_run=one_room(devices=(on_wall("heat", "heat", "south", 2.65, height_m=1.5),), place=US),
    ),
    "FIR105": Houses(
        fires=one_room(devices=(hung("smoke", "smoke", 2.0, 2.0),), fixtures=(COOKER,)),
        silent=one_room(devices=(hung("smoke", "smoke", 4.5, 3.5),), fixtures=(COOKER,)),
        cannot_run=one_room(fixtures=(COOKER,)),
    ),
    "FIR106": Houses(
        fires=two_rooms_and_hall(devices=(hung("heat", "heat", 0.5, 0.5),)),
        silent=two_rooms_and_hall(devices=(hung("heat", "heat", 2.0, 3.0),)),
        cannot_run=two_rooms_and_hall(devices=(hung("heat", "heat", 0.5, 0.5),), place=US),
    ),
    "FIR107": Houses(
        fires=under_a_ridge(hung("smoke", "smoke", 2.5, 0.5)),
        silent=under_a_ridge(hung("smoke", "smoke", 2.5, 1.5)),
        cannot_run=under_a_ridge(),
    ),
    "FIR108": Houses(
        fires=with_stove(), silent=with_stove(hung("co", "co", 2.25, 2.0)), cannot_run=one_room()
    ),
    "FIR109": Houses(
        fires=with_stove(hung("co", "co", 1.25, 2.0)),
        silent=with_stove(hung("co", "co", 2.25, 2.0)),
        cannot_run=with_stove(),
    ),
    "FIR110": Houses(
        fires=one_room(devices=(hung("smoke", "smoke-tender", 2.5, 2.0),)),
        silent=one_room(devices=(hung("smoke", "smoke", 2.5, 2.0),)),
        cannot_run=one_room(devices=(hung("smoke", "smoke", 2.5, 2.0),), spaces=LOFT),
    ),
}

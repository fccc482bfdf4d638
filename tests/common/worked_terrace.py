"""The trade's worked terrace as a house: its walking legs are those of the worked example, near enough.

Source: the worked example of six cases (assumption): intruder 2.5 m/s, stairs half, 1 s a door, 5 s to climb in,
10 s to break the control unit, 1 s radio, 10 s for a message. The plan is ours: the front door is 4 m from a unit
under the stairs; the kitchen window is one door and 7.5 m away; upstairs the unit stands one door off a landing.
"""

from __future__ import annotations

from typing import Any

from wardwright.model.device import Device, FreeMount, OpeningMount, WallMount
from wardwright.model.fabric import Space, Stair, Storey, Wall
from wardwright.model.opening import Opening
from wardwright.model.programme import STANDARD_BEHAVIOURS, Behaviour, Programme, Zone
from wardwright.model.site import Site

HALF = 0.05
DELAYED = Behaviour(id="instant-delayed", name="instant, message delayed", delays_message=True)

STOREYS = (
    Storey(id="ground", name="Ground", elevation_m=0.0, height_m=2.4),
    Storey(id="upper", name="Upper", elevation_m=2.7, height_m=2.4),
)
SPACES = (
    Space(id="hall", name="Hall", storey="ground", use="hall", outline_m=((0, 0), (2, 0), (2, 8), (0, 8))),
    Space(
        id="living", name="Living", storey="ground", use="living",
        outline_m=((2.1, 0), (8, 0), (8, 4.4), (2.1, 4.4)),
    ),
    Space(
        id="kitchen", name="Kitchen", storey="ground", use="kitchen",
        outline_m=((2.1, 4.5), (8, 4.5), (8, 8), (2.1, 8)),
    ),
    Space(
        id="landing", name="Landing", storey="upper", use="landing", outline_m=((0, 0), (2, 0), (2, 8), (0, 8))
    ),
    Space(
        id="bedroom", name="Bedroom", storey="upper", use="bedroom",
        outline_m=((2.1, 0), (8, 0), (8, 8), (2.1, 8)),
    ),
)  # fmt: skip


def _wall(wall_id: str, storey: str, a: tuple[float, float], b: tuple[float, float]) -> Wall:
    return Wall(id=wall_id, storey=storey, line_m=(a, b), thickness_m=0.1, construction="brick")


WALLS = tuple(
    _wall(f"{storey}-{name}", storey, a, b)
    for storey in ("ground", "upper")
    for name, a, b in (
        ("front", (-HALF, -HALF), (8 + HALF, -HALF)),
        ("right", (8 + HALF, -HALF), (8 + HALF, 8 + HALF)),
        ("back", (8 + HALF, 8 + HALF), (-HALF, 8 + HALF)),
        ("left", (-HALF, 8 + HALF), (-HALF, -HALF)),
        ("spine", (2 + HALF, 0), (2 + HALF, 8)),
        ("cross", (2 + HALF, 4.4 + HALF), (8, 4.4 + HALF)),
    )
    if not (storey == "upper" and name == "cross")
)


def _door(door_id: str, wall: str, offset: float, **facts: Any) -> Opening:
    return Opening(
        id=door_id,
        name=door_id.replace("-", " "),
        kind="door",
        wall=wall,
        offset_m=offset,
        width_m=0.9,
        **facts,
    )


OPENINGS = (
    _door("front-door", "ground-front", 1.45, is_entry_door=True, lock="latch"),
    _door("living-door", "ground-spine", 2.0),
    _door("kitchen-door", "ground-spine", 6.0),
    _door("bedroom-door", "upper-spine", 7.2),
    Opening(
        id="kitchen-window", name="kitchen window", kind="window", wall="ground-back", offset_m=0.75,
        width_m=1.2, sill_m=1.0, head_m=2.1, glazing="double-plain", lock="latch",
    ),
)  # fmt: skip
STAIR = Stair(
    id="stairs",
    lower="ground",
    upper="upper",
    line_m=((0.45, 1.6), (0.45, 5.2)),
    width_m=0.8,
    is_enclosed=False,
)
UNDER_STAIRS = FreeMount(storey="ground", at_m=(1.4, 4.3), height_m=1.4)
UPSTAIRS = FreeMount(storey="upper", at_m=(6.9, 1.2), height_m=1.4)


def worked_terrace(
    *,
    unit: FreeMount = UNDER_STAIRS,
    contacts: dict[str, str],
    movement: dict[str, tuple[WallMount, float, str]] | None = None,
    entry_time_s: float = 30.0,
    abort_delay_s: float = 0.0,
) -> Site:
    """The terrace with one of the example's six kits.

    Parameters
    ----------
    unit : FreeMount
        Where the control unit stands.
    contacts : dict
        Opening -> behaviour of its contact.
    movement : dict
        Name -> mount, heading [deg], behaviour of a movement detector.
    entry_time_s, abort_delay_s : float
        Of the programme. [s]
    """
    devices = [
        Device(id="unit", name="Control unit", sheet="control-unit-radio", mount=unit),
        Device(
            id="sounder", name="Sounder", sheet="sounder-inside", mount=FreeMount(storey="upper", at_m=(1, 7))
        ),
    ]
    zones = []
    for opening, behaviour in contacts.items():
        device = Device(
            id=f"{opening}-contact", name=f"{opening} contact", sheet="contact-radio",
            mount=OpeningMount(opening=opening),
        )  # fmt: skip
        devices.append(device)
        zones.append((device.id, behaviour))
    for name, (mount, heading, behaviour) in (movement or {}).items():
        devices.append(Device(id=name, name=name, sheet="movement-12m", mount=mount, heading_deg=heading))
        zones.append((name, behaviour))
    return Site(
        name="Worked terrace",
        storeys=STOREYS,
        spaces=SPACES,
        walls=WALLS,
        openings=OPENINGS,
        stairs=(STAIR,),
        devices=tuple(devices),
        behaviours=(*STANDARD_BEHAVIOURS, DELAYED),
        zones=tuple(
            Zone(id=f"zone-{i}", number=i, name=device, devices=(device,), behaviour=behaviour)
            for i, (device, behaviour) in enumerate(zones, start=1)
        ),
        programme=Programme(entry_time_s=entry_time_s, abort_delay_s=abort_delay_s),
    )


def shock_on(opening: str) -> Device:
    """A shock detector on an opening, on a frame that nobody told the stuff of."""
    return Device(
        id=f"{opening}-shock",
        name=f"{opening} shock",
        sheet="shock-radio",
        mount=OpeningMount(opening=opening),
    )


def ear_in_kitchen(offset_m: float = 5.7) -> Device:
    """A glass-break detector on the kitchen's wall opposite its window, 2.2 m up.

    At 5.7 m it stands at (7.75, 4.5): the far lower corner of the window, (6.7, 8.05, 1.0), is 3.9 m away. Its reach
    is 6 m, through a curtain 2.5 m.
    """
    mount = WallMount(wall="ground-cross", side="left", offset_m=offset_m, height_m=2.2)
    return Device(id="kitchen-ear", name="kitchen ear", sheet="glass-break-6m", mount=mount)


def with_watch(site: Site, device: Device, behaviour: str = "instant") -> Site:
    """The site with one device more, in a zone of its own."""
    number = len(site.zones) + 1
    zone = Zone(
        id=f"zone-{number}", number=number, name=device.name, devices=(device.id,), behaviour=behaviour
    )
    return site.model_copy(update={"devices": (*site.devices, device), "zones": (*site.zones, zone)})

"""Houses as straight as a ruler, so that every walk in them is a sum of whole figures that a reader can do by hand.

All rooms of a storey lie in one row, 4 m wide, from y = 0 (south) northward, and everybody walks on its middle line
x = 2. Whoever comes in stands 0.27 m inside the wall's face (a body's radius of 0.22 m and a step of 0.05 m). So a
way is what lies between two figures of y, and a door on it is at the middle of its wall.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from wardwright.model.device import Device, FreeMount, OpeningMount, WallMount
from wardwright.model.fabric import Space, SpaceUse, Stair, Storey, Wall
from wardwright.model.household import Person
from wardwright.model.opening import Opening
from wardwright.model.programme import STANDARD_BEHAVIOURS, STANDARD_PARTS, Behaviour, Programme, Zone
from wardwright.model.site import Site

WIDE_M, LONG_M = 4.0, 24.0
MIDDLE_M = WIDE_M / 2.0
OUTER_M, INNER_M = 0.3, 0.1
FIRST_M = 0.27
"""Where somebody stands who has just come in by the south end: y. [m]"""
LAST_M = LONG_M - FIRST_M
"""The same at the north end. [m]"""
RISE_M = 3.0
"""From floor to floor: with 4 m on the plan a flight is 5 m long, by 3, 4, 5. [m]"""
BEHAVIOURS: tuple[Behaviour, ...] = (
    *STANDARD_BEHAVIOURS,
    Behaviour(id="instant-delayed", name="instant, message delayed", delays_message=True),
)
UNIT = "control-unit-radio"


def unit_at(y: float, *, storey: str = "ground", sheet: str = UNIT, x: float = MIDDLE_M) -> Device:
    """A control unit on the middle line: whoever goes for it stands there."""
    mount = FreeMount(storey=storey, at_m=(x, y), height_m=1.4)
    return Device(id="unit", name="control unit", sheet=sheet, mount=mount)


def sounder_at(y: float = 12.0, *, sheet: str = "sounder-inside") -> Device:
    """A sounder somewhere: where it hangs makes no difference to a race."""
    mount = FreeMount(storey="ground", at_m=(0.3, y), height_m=2.2)
    return Device(id="sounder", name="sounder", sheet=sheet, mount=mount)


def contact_on(opening: str) -> Device:
    """A contact on an opening, called after it."""
    mount = OpeningMount(opening=opening, gap_m=0.006)
    return Device(id=f"{opening}-contact", name=f"{opening} contact", sheet="contact-radio", mount=mount)


def curtain_at(
    y: float, *, storey: str = "ground", name: str = "curtain", sheet: str = "movement-curtain-9m"
) -> Device:
    """A thin curtain straight across the rooms, from the west wall to the east, 2.2 m up."""
    # The west wall runs south from its first end, which lies half a wall beyond the room.
    mount = WallMount(wall=f"{storey}-west", side="left", offset_m=LONG_M + OUTER_M / 2 - y, height_m=2.2)
    return Device(id=name, name=name, sheet=sheet, mount=mount, heading_deg=0.0)


def keypad_at(y: float) -> Device:
    """A keypad on the middle line: whoever uses it stands there."""
    mount = FreeMount(storey="ground", at_m=(MIDDLE_M, y), height_m=1.4)
    return Device(id="keypad", name="keypad", sheet="keypad-radio", mount=mount)


def straight_house(
    *,
    doors: Mapping[float, str] | None = None,
    back: str | None = "window",
    upper: Mapping[float, str] | None = None,
    flight: float | None = None,
    uses: Sequence[SpaceUse] = (),
    kit: Iterable[tuple[Device, str]] = (),
    openings: Mapping[str, Mapping[str, Any]] | None = None,
    parts: Mapping[str, tuple[str, ...]] | None = None,
    programme: Programme | None = None,
    people: tuple[Person, ...] = (),
    **facts: Any,
) -> Site:
    """One straight house.

    Parameters
    ----------
    doors : mapping of float to str, optional
        The y of each cross wall's middle [m] and how its door stands; the doors are called `door-1`, `door-2`, ...
        from the south.
    back : {"window", "door"}, optional
        What the north end has: `back-window` or `back-door`; None: nothing.
    upper : mapping, optional
        The same upstairs, `upper-door-1`, ...; with a window at its north end, `upper-window`. None: one storey.
    flight : float, optional
        Where a flight begins, y; it ends 4 m further north, upstairs. [m]
    uses : sequence of str
        Of the rooms on the ground from the south; `other` where they end.
    kit : iterable of (Device, str)
        Devices with how their zones behave; "": in no zone.
    openings : mapping, optional
        More facts of openings by id.
    parts : mapping, optional
        In which parts a device's zone is active; otherwise `full`.
    programme, people
        As in the site.
    **facts
        More of the site.

    Returns
    -------
    Site
        The front door is `front-door`, at the south end.
    """
    told = openings or {}
    storeys = [Storey(id="ground", name="ground floor", elevation_m=0.0, height_m=2.4)]
    spaces, walls, holes = _storey("ground", doors or {}, uses=uses)
    holes.append(_hole("front-door", "door", "ground-south", is_entry_door=True, lock="latch"))
    if back is not None:
        holes.append(_hole(f"back-{back}", back, "ground-north", lock="latch"))
    stairs: tuple[Stair, ...] = ()
    if upper is not None:
        storeys.append(Storey(id="upper", name="upper floor", elevation_m=RISE_M, height_m=2.4))
        above = _storey("upper", upper, uses=("landing",))
        spaces, walls, holes = spaces + above[0], walls + above[1], holes + above[2]
        holes.append(_hole("upper-window", "window", "upper-north", lock="latch"))
    if flight is not None:
        line = ((MIDDLE_M, flight), (MIDDLE_M, flight + 4.0))
        stairs = (Stair(id="flight", lower="ground", upper="upper", line_m=line, width_m=0.8),)
    devices = tuple(kit)
    zones = tuple(
        Zone(
            id=f"zone-{number}", number=number, name=device.name, devices=(device.id,), behaviour=behaviour,
            parts=(parts or {}).get(device.id, ("full",)),
        )
        for number, (device, behaviour) in enumerate((one for one in devices if one[1]), 1)
    )  # fmt: skip
    return Site(
        name="straight house",
        storeys=tuple(storeys),
        spaces=tuple(spaces),
        walls=tuple(walls),
        openings=tuple(Opening.model_validate({**one, **told.get(one["id"], {})}) for one in holes),
        stairs=stairs,
        devices=tuple(device for device, _ in devices),
        behaviours=BEHAVIOURS,
        parts=STANDARD_PARTS,
        zones=zones,
        programme=programme or Programme(entry_time_s=30.0, exit_time_s=30.0, abort_delay_s=0.0),
        people=people,
        **facts,
    )


def _storey(
    storey: str, doors: Mapping[float, str], *, uses: Sequence[SpaceUse]
) -> tuple[list[Space], list[Wall], list[dict[str, Any]]]:
    """Rooms one behind the other, with a door in the middle of each wall between them."""
    half = OUTER_M / 2.0
    corners = (-half, -half), (WIDE_M + half, -half), (WIDE_M + half, LONG_M + half), (-half, LONG_M + half)
    sides = ("south", "east", "north", "west")
    walls = [
        Wall(
            id=f"{storey}-{side}",
            storey=storey,
            line_m=(corners[i], corners[(i + 1) % 4]),
            thickness_m=OUTER_M,
        )
        for i, side in enumerate(sides)
    ]
    holes, spaces = [], []
    cuts = sorted(doors)
    begins = [0.0, *(cut + INNER_M / 2 for cut in cuts)]
    ends = [*(cut - INNER_M / 2 for cut in cuts), LONG_M]
    for number, (low, high) in enumerate(zip(begins, ends, strict=True), 1):
        box = ((0.0, low), (WIDE_M, low), (WIDE_M, high), (0.0, high))
        name = f"room-{number}" if storey == "ground" else f"{storey}-room-{number}"
        use: SpaceUse = uses[number - 1] if number <= len(uses) else "other"
        spaces.append(Space(id=name, name=name, storey=storey, use=use, outline_m=box))
    for number, cut in enumerate(cuts, 1):
        wall = Wall(
            id=f"{storey}-cross-{number}",
            storey=storey,
            line_m=((0.0, cut), (WIDE_M, cut)),
            thickness_m=INNER_M,
        )
        walls.append(wall)
        name = f"door-{number}" if storey == "ground" else f"{storey}-door-{number}"
        holes.append(_hole(name, "door", wall.id, offset_m=MIDDLE_M, habit=doors[cut]))
    return spaces, walls, holes


def _hole(name: str, kind: str, wall: str, **facts: Any) -> dict[str, Any]:
    """A door or window in the middle of a wall."""
    told: dict[str, Any] = {
        "id": name, "name": name.replace("-", " "), "kind": kind, "wall": wall, "width_m": 0.9,
        "offset_m": (WIDE_M + OUTER_M) / 2.0,
    }  # fmt: skip
    if kind == "window":
        told |= {"width_m": 1.2, "sill_m": 0.9, "head_m": 2.1, "glazing": "double-plain"}
    return told | facts

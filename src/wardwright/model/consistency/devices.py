"""Devices that hang on nothing, look into their wall, or are fixed where they cannot work."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wardwright.model.consistency.identity import places
from wardwright.model.consistency.problem import Place, Problem, Register, nearest_space
from wardwright.model.device import USUAL_MOUNTS, Device, OpeningMount, WallMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.fabric import Wall
from wardwright.model.placement import ceiling_height, direction, standing

SLACK_M = 0.02
"""Within this, a device is taken to be on its wall or under its ceiling. [m] (assumption)"""
INSIDE_SLACK_M = 0.1
"""A device this near to a space is taken to be in it. [m] (assumption)"""
SAME_PLACE_M = 0.03
"""Two devices nearer than this are in each other's place. [m] (assumption)"""


def devices(book: Register) -> Iterator[Problem]:
    """Each device against its mount, and against the others."""
    taken: list[tuple[str, float, float, float, str]] = []
    for place, device in zip(places(book.site, "devices"), book.site.devices, strict=True):
        sheet = book.sheet_of(device)
        if sheet is not None:
            yield from _right_mount(place, device, sheet)
        if not _is_placeable(book, device):
            continue
        mount = device.mount
        if isinstance(mount, OpeningMount):
            yield from _on_opening(book, place, mount)
            continue
        if isinstance(mount, WallMount):
            off_wall = tuple(_off_wall(book, place, mount))
            yield from off_wall
            if off_wall:
                continue
            yield from _in_hole(book, place, mount)
            yield from _heading(place, device, mount=mount, wall=book.walls[mount.wall])
        yield from _in_space(book, place, device, sheet=sheet)
        yield from _in_the_way(book, place, device, taken=taken)
    yield from _one_control_unit(book)


def _is_placeable(book: Register, device: Device) -> bool:
    """Whether all that its mount names exists, so that its place can be worked out."""
    mount = device.mount
    if isinstance(mount, OpeningMount):
        opening = book.openings.get(mount.opening)
        wall = None if opening is None else book.walls.get(opening.wall)
        return wall is not None and wall.storey in book.storeys
    if isinstance(mount, WallMount):
        wall = book.walls.get(mount.wall)
        return wall is not None and wall.storey in book.storeys and direction(wall.line_m)[2] > 0.0
    return mount.storey in book.storeys


def _right_mount(place: Place, device: Device, sheet: DeviceSheet) -> Iterator[Problem]:
    kind, allowed = sheet.kind.replace("-", " "), sheet.mounts or USUAL_MOUNTS[sheet.kind]
    if device.mount.on in allowed:
        return
    if allowed == ("opening",):
        yield place.problem(
            f"an {kind} is not fixed to an opening", "Give it 'mount': {'on': 'opening', ...}"
        )
    elif device.mount.on == "opening":
        yield place.problem(
            f"a {kind} is fixed to an opening",
            "Fix it to a wall or ceiling, or name an opening contact's sheet",
        )
    else:
        yield place.problem(
            f"a {kind} is on a '{device.mount.on}' mount, which its sheet '{sheet.id}' does not have",
            "Mount it on " + " or ".join(f"'{one}'" for one in allowed) + ", or name another sheet",
        )


def _on_opening(book: Register, place: Place, mount: OpeningMount) -> Iterator[Problem]:
    opening = book.openings[mount.opening]
    if opening.hinge == "fixed":
        yield place.problem(
            f"it is fixed to '{opening.id}', a pane that never opens",
            "Fix it to an opening that opens, or correct that opening's 'hinge'",
        )
    elif opening.kind == "gap" or opening.leaves == 0:
        yield place.problem(
            f"it is fixed to '{opening.id}', which has no leaf", "Fix it to a door or window with a leaf"
        )


def _off_wall(book: Register, place: Place, mount: WallMount) -> Iterator[Problem]:
    wall = book.walls[mount.wall]
    length = direction(wall.line_m)[2]
    if not -SLACK_M <= mount.offset_m <= length + SLACK_M:
        yield place.problem(
            f"it is on no wall: {mount.offset_m:g} m along '{wall.id}', which is {length:.2f} m long",
            f"Give 'offset_m' between 0 and {length:.2f}, or name another wall",
        )
        return
    top = None if wall.height_m is None else wall.base_m + wall.height_m
    if mount.height_m < wall.base_m - SLACK_M or (top is not None and mount.height_m > top + SLACK_M):
        yield place.problem(
            f"it is on no wall: {mount.height_m:g} m high, beyond the wall '{wall.id}'",
            "Correct 'height_m', or name another wall",
        )


def _in_hole(book: Register, place: Place, mount: WallMount) -> Iterator[Problem]:
    for opening in book.site.openings:
        inside = abs(opening.offset_m - mount.offset_m) < opening.width_m / 2 - SLACK_M
        if opening.wall == mount.wall and inside and opening.sill_m < mount.height_m < opening.head_m:
            yield place.problem(
                f"it hangs in the hole of the opening '{opening.id}'", "Move it beside or above the opening"
            )


def _heading(place: Place, device: Device, *, mount: WallMount, wall: Wall) -> Iterator[Problem]:
    if device.heading_deg is None:
        return
    _, (nx, ny), _ = direction(wall.line_m)
    sign = 1.0 if mount.side == "left" else -1.0
    away = math.degrees(math.atan2(sign * ny, sign * nx)) % 360.0
    turn = (device.heading_deg - away + 180.0) % 360.0 - 180.0
    if abs(turn) > 90.0 + 0.5:
        yield place.problem(
            f"it looks into its wall '{wall.id}': heading {device.heading_deg:g} deg, but straight off the wall "
            f"is {away:.0f} deg",
            "Turn it to within 90 deg of that, fix it to the other side, or leave 'heading_deg' out",
        )


def _in_space(
    book: Register, place: Place, device: Device, *, sheet: DeviceSheet | None
) -> Iterator[Problem]:
    stands = standing(book.site, device)
    point = (stands.x_m, stands.y_m)
    ceiling = ceiling_height(book.site, stands.storey, point)
    space, far = nearest_space(book, stands.storey, point)
    is_outside = sheet is not None and sheet.is_outside
    if stands.height_m < 0.0 and not is_outside:
        yield place.problem(f"it is below the floor ({stands.height_m:g} m)", "Correct 'height_m'")
    if far > INSIDE_SLACK_M:
        # Without a catalogue nobody can say whether it is one for outdoors.
        if space is not None and sheet is not None and not is_outside:
            yield place.problem(
                f"it is outside every space: the nearest, '{space.id}', is {far:.1f} m away",
                "Correct its mount (the wall's other side?), or add the space that it is in",
                weight="noted" if sheet.kind in ("keypad", "keyfob") else "stops",
            )
        return
    if stands.height_m > ceiling + SLACK_M:
        yield place.problem(
            f"it is above the ceiling: {stands.height_m:g} m high, under a ceiling of {ceiling:.2f} m",
            "Lower it, or correct the height of the storey or space",
        )


def _in_the_way(
    book: Register, place: Place, device: Device, *, taken: list[tuple[str, float, float, float, str]]
) -> Iterator[Problem]:
    stands = standing(book.site, device)
    here = (stands.x_m, stands.y_m, stands.height_m)
    for storey, x, y, z, other in taken:
        if storey == stands.storey and math.dist(here, (x, y, z)) < SAME_PLACE_M:
            yield place.problem(
                f"it is in the place of the device '{other}'", "Move one of them", weight="noted"
            )
    taken.append((stands.storey, *here, device.id))


def _one_control_unit(book: Register) -> Iterator[Problem]:
    units = [
        place
        for place, device in zip(places(book.site, "devices"), book.site.devices, strict=True)
        if (sheet := book.sheet_of(device)) is not None and sheet.kind == "control-unit"
    ]
    for extra in units[1:]:
        yield extra.problem(
            f"there is already a control unit, '{units[0].ident}'",
            "Keep one; write a second alarm as a site of its own",
        )

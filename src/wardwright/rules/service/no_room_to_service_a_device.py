"""SRV101: a device without the room to open it or to slide it off."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount, Device
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.placement import standing
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.service_moves import has_room, shifted
from wardwright.rules.service_room import Free, room_to_serve
from wardwright.rules.suggestion import suggestions

CARRIED = ("keyfob",)
"""What hangs nowhere for long."""
SIDES = {"front": "before", "above": "above", "below": "below", "beside": "beside"}
"""Where the room is, as it is said."""


@rule(
    code="SRV101",
    name="no-room-to-service-a-device",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="must mend",
    sources=(),
)
def no_room_to_service_a_device(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Devices without the room that their sheets want to open them or to slide them off for the cell.

    What it checks
        For each device on a wall or ceiling, the free room on the side that its sheet names, to the next wall, the
        ceiling, the floor, a fixture, or a leaf as far as it opens, against the room on the sheet. Room beside it
        counts on whichever hand there is more. It begins 0.05 m from the device's middle.
    Why it matters
        Nobody finds out on the day of fitting: the unit is hung, then the shelf goes up. Two years later its cell
        cannot be changed without taking it off the wall, its aim with it.
    How to put it right
        Shift it by what is lacking, as given. Where no shift helps, move the fixture or choose another wall.
    What it cannot know
        How big the device really is; pipes, cornices and beading that nobody drew; where on its frame a contact sits.
        What stands free is taken to be picked up.

    Parameters
    ----------
    site : Site
        The house, its fixtures and devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each device without its room, with the room there is and the room wanted [m]: `must mend`, or
        `advise` where a leaf that can be shut is all that is in the way.

    Raises
    ------
    NotComputable
        If no device is there, or no sheet says what room its device wants.
    """
    this = no_room_to_service_a_device
    if not site.devices:
        raise NotComputable("no device", cure="Add the devices that are planned")
    silent, asked = 0, False
    for device in sorted(site.devices, key=lambda one: one.id):
        sheet = catalogue.sheet(device.sheet)
        if sheet.kind in CARRIED:
            continue
        if "service_clearance_m" not in sheet.model_fields_set:
            silent += 1
            continue
        asked = True
        free = room_to_serve(site, device, sheet)
        if free is not None and not has_room(site, device, sheet):
            yield _found(site, device, sheet=sheet, free=free)
    if silent or not asked:
        told = f"of {silent} devices the sheets do not say" if asked else "no sheet of its devices says"
        yield this.not_run(site.name, f"{told} what room service wants", cure="State it in those sheets")


def _found(site: Site, device: Device, *, sheet: DeviceSheet, free: Free) -> Finding:
    wanted = sheet.service_clearance_m
    mends = shifted(site, device, sheet, lacking_m=wanted - free.length_m)
    place = standing(site, device)
    where = "below" if isinstance(device.mount, CeilingMount) else SIDES[sheet.service_side]
    related = () if free.subject is None else (free.subject,)
    return no_room_to_service_a_device.finding(
        device.id,
        f"{device.name}: {free.what} leaves too little room {where} it to open it or slide it off",
        cure=_cure(free, mends),
        severity="advise" if free.is_leaf else "must mend",
        estimate=exactly(free.length_m, "m", weakest(device.basis_of("mount"), *_bases(site, free))),
        limit=wanted,
        mends=mends,
        sketches=(
            Sketch(role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=device.name),
            *suggestions(site, mends),
        ),
        related=related,
    )


def _bases(site: Site, free: Free) -> tuple[Basis, ...]:
    return tuple(one.basis_of("centre_m") for one in site.fixtures if one.id == free.subject)


def _cure(free: Free, mends: tuple[Mend, ...]) -> str:
    if mends:
        return "Shift it as given"
    return (
        f"Move {free.what} out of the way, or choose another wall" if free.subject else "Choose another wall"
    )

"""The device and zone schedule: every device and every zone in a row, for the job pack and the office."""

from __future__ import annotations

from collections import Counter
from datetime import date

from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Paper, Section, Table
from wardwright.documents.drawing.devices import Tag, device_tags
from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount, Device, DeviceKind, FreeMount, Mount, OpeningMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.lifetimes import end_of_life
from wardwright.model.placement import sides_of_opening, space_at, standing
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.rules.zone_names import display_length, shown_name

NOT_DECIDED, NOT_STATED, NONE, OUTSIDE = "not decided", "not stated", "none", "outside"

DEVICE_COLUMNS = (
    Column("On plan"), Column("Name", share=2.4), Column("Kind", share=1.6), Column("Device sheet", share=1.6),
    Column("Storey"), Column("Room", share=1.4), Column("Mounted on", share=1.6), Column("Height", "m"),
    Column("Heading", "deg"), Column("Tilt", "deg"), Column("Fixed by"), Column("Surface"),
    Column("Zone"), Column("Behaviour", share=1.2), Column("Link"), Column("Power"), Column("Grade"),
    Column("Environmental class"), Column("Stays from before"), Column("Made on"), Column("End of life"),
    Column("Security updates until"),
)  # fmt: skip
ZONE_COLUMNS = (
    Column("Zone"), Column("Name", share=2.4), Column("On the display", share=1.8), Column("Cut off"),
    Column("Behaviour", share=1.2), Column("Signal"), Column("Parts", share=1.6), Column("Devices", share=2.4),
    Column("Confirmation group"), Column("On soak test"), Column("Most alarms in one setting", "alarms"),
    Column("May be inhibited"),
)  # fmt: skip


def schedule(site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Put every device and every zone into rows.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        Devices in the site's order, zones by number; what nobody said is told as not known.
    """
    return Paper(
        title="Device and zone schedule",
        house=site.name,
        copy="fitter",
        drawn_up=drawn_up,
        sections=(
            Section("Devices", table=device_table(site, catalogue)),
            Section("Zones", table=zone_table(site, catalogue)),
        ),
        is_landscape=True,
    )


def device_table(site: Site, catalogue: Catalogue) -> Table:
    """One row a device."""
    tags = device_tags(site, catalogue)
    zones = {device: zone for zone in site.zones for device in zone.devices}
    rows = tuple(
        _device_row(site, catalogue, device, tag=tags[device.id], zone=zones.get(device.id))
        for device in site.devices
    )
    return Table("Devices", DEVICE_COLUMNS, rows)


def _device_row(
    site: Site, catalogue: Catalogue, device: Device, *, tag: Tag, zone: Zone | None
) -> tuple[Cell, ...]:
    sheet = sheet_of(catalogue, device)
    at = standing(site, device)
    fixing = device.fixing
    is_by_opening = isinstance(device.mount, OpeningMount)
    return (
        tag.text,
        device.name,
        tag.words,
        device.sheet if sheet is None else sheet.name,
        site.storey(at.storey).name,
        room_name(site, device),
        mount_words(site, device.mount),
        "on its opening" if is_by_opening else round(at.height_m, 3),
        round(at.heading_deg, 1) if tag.looks else NONE,
        device.tilt_deg,
        NOT_DECIDED if fixing is None else fixing.by,
        NOT_DECIDED if fixing is None else NOT_KNOWN if fixing.surface == "unknown" else fixing.surface,
        NONE if zone is None else zone.number,
        NONE if zone is None else site.behaviour(zone.behaviour).name,
        NOT_KNOWN if sheet is None else sheet.link,
        NOT_KNOWN if sheet is None else sheet.power,
        NOT_STATED if sheet is None or sheet.grade is None else sheet.grade,
        NOT_STATED if sheet is None else sheet.environmental_class or NOT_STATED,
        yes_or_no(is_so=device.is_existing),
        device.made_on or NOT_KNOWN,
        (None if sheet is None else end_of_life(device, sheet)) or NOT_KNOWN,
        (None if sheet is None else sheet.updates_until) or NOT_STATED,
    )


def zone_table(site: Site, catalogue: Catalogue) -> Table:
    """One row a zone, by number."""
    tags, length = device_tags(site, catalogue), display_length(site, catalogue)
    parts = {part.id: part.name for part in site.parts}
    rows: list[tuple[Cell, ...]] = []
    for zone in sorted(site.zones, key=lambda one: one.number):
        behaviour = site.behaviour(zone.behaviour)
        shown = shown_name(zone.name, length)
        rows.append(
            (
                zone.number,
                zone.name,
                shown,
                NOT_KNOWN if length is None else yes_or_no(is_so=shown != shown_name(zone.name, None)),
                behaviour.name,
                behaviour.signal,
                "always" if behaviour.is_always_active else ", ".join(parts.get(p, p) for p in zone.parts),
                ", ".join(tags[one].text for one in zone.devices if one in tags),
                zone.group or NONE,
                yes_or_no(is_so=zone.is_on_soak),
                zone.limit or "no limit",
                yes_or_no(is_so=behaviour.may_be_inhibited),
            )
        )
    return Table("Zones", ZONE_COLUMNS, tuple(rows))


def sheet_of(catalogue: Catalogue, device: Device) -> DeviceSheet | None:
    """What a device is; None where its sheet is not there."""
    try:
        return catalogue.sheet(device.sheet)
    except CatalogueError:
        return None


def room_name(site: Site, device: Device) -> str:
    """The room that a device is in; one on a leaf to outside is in the room that it leads into."""
    if isinstance(device.mount, OpeningMount):
        sides = sides_of_opening(site, site.opening(device.mount.opening))
        rooms = [site.space(side) for side in sides if side is not None]
        ours = [room for room in rooms if room.is_protected] or rooms
        return min(ours, key=lambda room: room.id).name if ours else OUTSIDE
    at = standing(site, device)
    space = space_at(site, at.storey, (at.x_m, at.y_m))
    return OUTSIDE if space is None else space.name


def kinds_fitted(site: Site, catalogue: Catalogue) -> Counter[DeviceKind]:
    """How many there are of each kind; a device whose sheet is not known is of none."""
    sheets = (sheet_of(catalogue, device) for device in site.devices)
    return Counter(sheet.kind for sheet in sheets if sheet is not None)


def mount_words(site: Site, mount: Mount) -> str:
    """What a device is fixed to."""
    if isinstance(mount, OpeningMount):
        return f"{site.opening(mount.opening).name}, electronics on the {mount.electronics_on}"
    return (
        "ceiling" if isinstance(mount, CeilingMount) else "free" if isinstance(mount, FreeMount) else "wall"
    )


def yes_or_no(*, is_so: bool) -> str:
    """A claim in a word."""
    return "yes" if is_so else "no"

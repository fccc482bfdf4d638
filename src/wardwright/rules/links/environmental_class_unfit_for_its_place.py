"""LNK103: a device in a place that is too cold, too hot or too wet for its class."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount, WallMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.fabric import SpaceUse
from wardwright.model.placement import sides_of_opening, space_at, standing
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend, Severity
from wardwright.rules.kit import sheets_in_use
from wardwright.rules.registry import rule
from wardwright.rules.replacement import replaced

CLASSES = ("I", "II", "III", "IV")
"""Environmental classes, the mildest first."""
UNHEATED: tuple[SpaceUse, ...] = ("garage", "loft", "conservatory")
"""Rooms that freeze in winter or pass 40 deg C in summer. (common practice)"""


@rule(
    code="LNK103",
    name="environmental-class-unfit-for-its-place",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("en-50130-5",),
)
def environmental_class_unfit_for_its_place(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Devices outside, or in unheated rooms, whose environmental class is for milder places.

    What it checks
        Where each device is: outside it wants class IV, or III under shelter; in a garage, a loft or a
        conservatory, III. The classes are from memory of EN 50130-5 (I heated rooms, II rooms, III shelter or hard
        rooms, IV the open air): check them with the standard.
    Why it matters
        Frost takes much of what a cell holds, and a housing for rooms lets rain and insects in. A loft is hotter in
        August than any device for rooms is tested for.
    How to put it right
        Replace it by one of the class, or move it into a heated room. The finding names the cheapest of the
        catalogue that fits the same place.
    What it cannot know
        Heating in a garage, insulation of a loft, shelter by a porch or by deep eaves that nobody drew.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such device: `must mend` where a device for rooms hangs outside, since that is its own sheet,
        else `check with the standard`. One of severity `not run` for each in such a place whose sheet names no class.

    Raises
    ------
    NotComputable
        If there is no device.
    """
    this = environmental_class_unfit_for_its_place
    used = sheets_in_use(site, catalogue)
    if not used:
        raise NotComputable("no device", cure="Add the devices that are planned")
    for device, sheet in used:
        needed, where = _needed(site, device)
        if needed is None:
            continue
        if sheet.environmental_class is None:
            yield this.not_run(
                device.id,
                f"{device.name}: it is {where}, and its sheet names no environmental class",
                cure="Add the class to its sheet",
            )
        elif CLASSES.index(sheet.environmental_class) < CLASSES.index(needed):
            least = needed
            yield this.finding(
                device.id,
                f"{device.name}: it is {where}, and is of class {sheet.environmental_class}",
                cure=f"Use one of class {needed}"
                + (", or move it under shelter" if _is_close(sheet) else ""),
                severity=_severity(sheet, where),
                mends=_mends(catalogue, device, least=least),
            )


def _needed(site: Site, device: Device) -> tuple[str | None, str]:
    """The class that a device's place wants, and the place in words; None for a heated room."""
    if isinstance(device.mount, OpeningMount):
        sides = sides_of_opening(site, site.opening(device.mount.opening))
        spaces = [site.space(side) for side in sides if side is not None and not site.space(side).is_outdoors]
        cold = [one for one in spaces if one.use in UNHEATED]
        return ("III", f"in {cold[0].name}") if cold and len(cold) == len(spaces) else (None, "")
    place = standing(site, device)
    space = space_at(site, place.storey, (place.x_m, place.y_m))
    if space is None:
        return ("IV", "outside") if isinstance(device.mount, WallMount) else (None, "")
    if space.is_outdoors:
        return "IV", f"on {space.name}"
    return ("III", f"in {space.name}") if space.use in UNHEATED else (None, "")


def _is_close(sheet: DeviceSheet) -> bool:
    return sheet.environmental_class == "III"


def _severity(sheet: DeviceSheet, where: str) -> Severity | None:
    is_outside = not where.startswith("in ")
    return "must mend" if is_outside and sheet.environmental_class in ("I", "II") else None


def _mends(catalogue: Catalogue, device: Device, *, least: str) -> tuple[Mend, ...]:
    def fits(sheet: DeviceSheet) -> bool:
        known = sheet.environmental_class
        return known is not None and CLASSES.index(known) >= CLASSES.index(least)

    return replaced(catalogue, device, fits=fits)

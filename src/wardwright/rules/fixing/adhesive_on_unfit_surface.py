"""FIX101: adhesive on a surface that will not hold it."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, Fixing
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.registry import exactly, rule

UNFIT = {
    "textured": "a textured coating, which may hold asbestos",
    "wallpaper": "wallpaper, which lets go of the wall",
    "masonry": "bare masonry, which is dusty and rough",
}
"""Surfaces that adhesive does not keep to. (common practice)"""
HOW = "clean it with alcohol, press the tape for 30 s, and wait 72 h before hard use"
"""How adhesive is put on. (common practice)"""


@rule(
    code="FIX101",
    name="adhesive-on-unfit-surface",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def adhesive_on_unfit_surface(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Devices held by adhesive on a surface that is unfit, too cold or too freshly painted.

    What it checks
        For each device that is held by adhesive: whether its surface is wallpaper, a textured coating or bare
        masonry; whether it is colder than 10 deg C on the day and not warmed first; whether it was painted less
        than 14 days before. These figures are common practice; no published source was found.
    Why it matters
        The tape lets go weeks later, by night: a tamper alarm, a dead contact, or a detector that looks at the
        floor.
    How to put it right
        Screw it, or warm a cold frame first. Clean the surface with alcohol, press the tape for 30 s, wait 72 h
        before hard use, and press it again on day 7. Old textured coatings may hold asbestos: neither drill nor
        glue there before it was tested, since pulling the device off later frees it too.
    What it cannot know
        Silk paint, silicone on a frame, wet edges of panes, dust; what the tape's own maker asks.

    Parameters
    ----------
    site : Site
        The devices, each with how it is fixed.
    catalogue : Catalogue
        The devices' sheets say whether screws may hold them.

    Yields
    ------
    Finding
        One for each device with a fault; one of severity `not run` for each whose surface nobody told.

    Raises
    ------
    NotComputable
        If nobody told how any device is held.
    """
    this = adhesive_on_unfit_surface
    pack = site.place.rule_pack
    coldest = catalogue.limit("adhesive-surface-least", pack)
    freshest = catalogue.limit("adhesive-paint-least", pack)
    for device, fixing in fixed_devices(site):
        if fixing.by != "adhesive":
            continue
        faults = [f"it would stick to {UNFIT[fixing.surface]}"] if fixing.surface in UNFIT else []
        is_cold = fixing.surface_c is not None and fixing.surface_c < coldest.value
        if is_cold and not fixing.is_heated_before:
            faults.append(
                f"its surface is at {fixing.surface_c:g} deg C, and tape wants {coldest.value:g} deg C"
            )
        is_fresh = fixing.paint_days is not None and fixing.paint_days < freshest.value
        if is_fresh:
            faults.append(
                f"its surface was painted {fixing.paint_days:g} days ago, and tape wants {freshest.value:g}"
            )
        if faults:
            is_only_cold = is_cold and len(faults) == 1
            yield this.finding(
                device.id,
                f"{device.name}: " + ", and ".join(faults),
                cure=_cure(fixing, is_only_cold=is_only_cold),
                estimate=exactly(fixing.surface_c, "deg C", device.basis_of("fixing"))
                if is_only_cold and fixing.surface_c is not None
                else None,
                limit=coldest.value if is_only_cold else None,
                mends=_mends(device, fixing, catalogue.sheet(device.sheet), is_only_cold=is_only_cold),
            )
        elif fixing.surface == "unknown":
            yield this.not_run(
                device.id,
                f"{device.name}: nobody told what its adhesive is to stick to",
                cure="Tell the surface",
                mends=(Mend(action="tell", subject=device.id, values=(("field", "surface"),)),),
            )


def fixed_devices(site: Site) -> list[tuple[Device, Fixing]]:
    """The devices of which it is told how they are held, by id.

    Raises
    ------
    NotComputable
        If there is none.
    """
    found = [(one, one.fixing) for one in sorted(site.devices, key=lambda d: d.id) if one.fixing is not None]
    if not found:
        raise NotComputable(
            "nobody told how any device is held",
            cure="Add the fixing to each device, such as 'fixed adhesive, surface upvc' in notes",
        )
    return found


def _cure(fixing: Fixing, *, is_only_cold: bool) -> str:
    if is_only_cold:
        return f"Warm it first; {HOW}"
    if fixing.surface == "textured":
        return "Choose a place off the coating; neither drill nor glue before it was tested for asbestos"
    return "Screw it"


def _mends(device: Device, fixing: Fixing, sheet: DeviceSheet, *, is_only_cold: bool) -> tuple[Mend, ...]:
    if is_only_cold:
        return (Mend(action="change-mount", subject=device.id, values=(("is_heated_before", True),)),)
    if fixing.surface == "textured" or "screws" not in sheet.fixings:
        return ()
    return (Mend(action="change-mount", subject=device.id, values=(("by", "screws"),)),)

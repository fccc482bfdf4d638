"""FIX102: adhesive where only screws will do."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, Fixing
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.fixing.adhesive_on_unfit_surface import fixed_devices
from wardwright.rules.registry import rule

REASONS: dict[DeviceKind, str] = {
    "movement-detector": "it has to keep its aim",
    "sounder": "it is heavy, and somebody will pull at it",
    "control-unit": "it is heavy, and somebody will pull at it",
    "keypad": "it is pressed every day",
    "camera": "it has to keep its aim",
}
"""Kinds that are screwed, and why. (common practice)"""
NOT_DRILLED = ("upvc", "steel", "aluminium", "glass")
"""What is not drilled for a contact: it may void a frame's warranty, or meet drainage. (common practice)"""


@rule(
    code="FIX102",
    name="adhesive-where-screws-are-needed",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def adhesive_where_screws_are_needed(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Devices held by adhesive that have to be screwed.

    What it checks
        For each device that is held by adhesive: whether its own sheet allows that; whether it is a movement
        detector, a sounder, a control unit, a keypad or a camera; whether it is to tell when it is taken off.
        Contacts on frames that are not drilled are left out of the last.
    Why it matters
        Tape creeps in warmth: the aim drops, and a false alarm or a miss follows. Under a tape the whole device
        comes off with its back, and its removal is never told.
    How to put it right
        Screw it to something solid. Look for hidden cables and pipes first: corners are where cables run.
    What it cannot know
        Whether the wall holds a screw; a screw through the back besides the tape.

    Parameters
    ----------
    site : Site
        The devices, each with how it is fixed.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such device: `must mend` where its own sheet does not allow adhesive, else `advise`.

    Raises
    ------
    NotComputable
        If nobody told how any device is held.
    """
    this = adhesive_where_screws_are_needed
    for device, fixing in fixed_devices(site):
        if fixing.by != "adhesive":
            continue
        sheet = catalogue.sheet(device.sheet)
        is_forbidden = "adhesive" not in sheet.fixings
        why = "its sheet allows screws only" if is_forbidden else _why(device, fixing, sheet)
        if why:
            can_be_screwed = "screws" in sheet.fixings and fixing.surface != "textured"
            yield this.finding(
                device.id,
                f"{device.name}: it is held by adhesive, and {why}",
                cure="Screw it" if can_be_screwed else "Move it to where it can be screwed",
                severity="must mend" if is_forbidden else None,
                mends=(Mend(action="change-mount", subject=device.id, values=(("by", "screws"),)),)
                if can_be_screwed
                else (),
            )


def _why(device: Device, fixing: Fixing, sheet: DeviceSheet) -> str:
    if sheet.kind in REASONS:
        return REASONS[sheet.kind]
    is_on_frame = device.mount.on == "opening" and fixing.surface in NOT_DRILLED
    return "its removal is to be told" if sheet.detects_removal and not is_on_frame else ""

"""PRG108: more users or zones than the control unit has room for."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import ControlSheet, DeviceSheet
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import control_units, devices_of
from wardwright.rules.registry import exactly, rule


@rule(
    code="PRG108",
    name="more-users-or-zones-than-the-control-unit-has",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the control unit's own sheet
    severity="must mend",
    sources=(),
)
def more_users_or_zones_than_the_control_unit_has(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Control units with less room for users or zones than the site needs.

    What it checks
        The people who are told of and the keyfobs together against the users on the control unit's sheet, and the
        zones against its zones. Each keyfob counts as a user, as most units count them.
    Why it matters
        It shows on the day of handing over: the last child has no code, or two detectors share a zone and nobody
        can say which of them rang.
    How to put it right
        Choose a control unit with more room; the finding names the smallest of the catalogue that has it.
    What it cannot know
        Cleaners, neighbours and carers who will want a code; whether this unit counts keyfobs apart; how many wired
        zones need an extension.

    Parameters
    ----------
    site : Site
        The house, its people, devices and zones.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each control unit that is too small, with the number that is over and its limit [-].

    Raises
    ------
    NotComputable
        If there is no control unit, or neither people nor zones are told.
    """
    this = more_users_or_zones_than_the_control_unit_has
    units = control_units(site, catalogue)
    if not site.people and not site.zones:
        raise NotComputable("neither people nor zones are told", cure="Add who uses the alarm, and the zones")
    users = len(site.people) + len(devices_of(site, catalogue, "keyfob"))
    zones = len(site.zones)
    for unit, sheet in units:
        if sheet is None or (users <= sheet.users and zones <= sheet.zones):
            continue
        what, count, most = (
            ("users", users, sheet.users) if users > sheet.users else ("zones", zones, sheet.zones)
        )
        bigger = _smallest_with(catalogue, sheet, users=users, zones=zones)
        yield this.finding(
            unit.id,
            f"{unit.name}: it has room for {most} {what}, and {count} are planned",
            cure=f"Choose a control unit with room for {users} users and {zones} zones",
            estimate=exactly(float(count), "-", unit.basis_of("sheet")),
            limit=float(most),
            mends=()
            if bigger is None
            else (Mend(action="replace-device", subject=unit.id, values=(("sheet", bigger.id),)),),
        )


def _smallest_with(
    catalogue: Catalogue, present: ControlSheet, *, users: int, zones: int
) -> DeviceSheet | None:
    """The control unit with the least room that has enough, with a keypad of its own if the present one has."""
    found = [
        (sheet.control.users, sheet.control.zones, sheet.id, sheet)
        for sheet in catalogue.sheets
        if sheet.control is not None
        and sheet.control.users >= users
        and sheet.control.zones >= zones
        and sheet.control.has_keypad == present.has_keypad
        and sheet.control.display_length >= present.display_length
    ]
    return min(found)[3] if found else None

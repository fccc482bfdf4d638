"""LNK102: a device of a lower grade than the whole is to have."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.kit import sheets_in_use
from wardwright.rules.registry import rule
from wardwright.rules.replacement import replaced

UNGRADED: tuple[DeviceKind, ...] = (
    "router",
    "camera",
    "smoke-alarm",
    "heat-alarm",
    "co-alarm",
    "water-detector",
)
"""Kinds that are no part of a graded intruder alarm. (from memory)"""


@rule(
    code="LNK102",
    name="device-grade-below-the-grade-aimed-at",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("en-50131-1",),
)
def device_grade_below_the_grade_aimed_at(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Devices whose grade is lower than the grade that is aimed at.

    What it checks
        The grade on the sheet of each device of the intruder alarm against the grade that the site's needs name.
        Cameras, routers, and fire, CO and water devices are left out.
    Why it matters
        The component of the lowest grade sets the grade of the whole: one cheap contact takes the other devices
        down with it, and what was promised on paper is not what hangs on the wall.
    How to put it right
        Replace it by one of the grade, or aim at the lower grade, and say so in writing. The finding names the
        cheapest of the catalogue that fits the same place.
    What it cannot know
        Whether a part of the alarm has a grade of its own; what an insurer asks beyond the grade.

    Parameters
    ----------
    site : Site
        The devices and the grade that is aimed at.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such device: `must mend` where the grade was told, else `check with the standard`. One of
        severity `not run` for the devices whose sheets name no grade, together. Nothing where no grade is aimed at.

    Raises
    ------
    NotComputable
        If there is no device of the intruder alarm.
    """
    this = device_grade_below_the_grade_aimed_at
    grade = site.needs.grade
    if grade is None:
        return
    used = [(device, sheet) for device, sheet in sheets_in_use(site, catalogue) if sheet.kind not in UNGRADED]
    if not used:
        raise NotComputable("no device of the intruder alarm", cure="Add the devices that are planned")
    is_told = site.needs.basis_of("grade") in ("told", "measured")
    for device, sheet in used:
        if sheet.grade is not None and sheet.grade < grade:
            yield this.finding(
                device.id,
                f"{device.name}: it is of grade {sheet.grade}, and grade {grade} is aimed at",
                cure="Replace it by one of the grade, or aim at the lower grade",
                severity="must mend" if is_told else None,
                mends=replaced(catalogue, device, fits=partial(_is_of, least=grade)),
            )
    silent = [device.name for device, sheet in used if sheet.grade is None]
    if silent:
        yield this.not_run(
            site.name,
            f"the sheets of these name no grade: {', '.join(silent)}",
            cure="Add the grade to their sheets",
        )


def _is_of(sheet: DeviceSheet, *, least: int) -> bool:
    return sheet.grade is not None and sheet.grade >= least

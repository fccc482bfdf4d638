"""LNK101: a radio device that is missed too late for the grade."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.limits import Limit
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.held_to import severity_by
from wardwright.rules.kit import sheets_in_use
from wardwright.rules.limits import limit_by_grade
from wardwright.rules.registry import exactly, rule
from wardwright.rules.replacement import replaced

NEVER_CHECK_IN = ("control-unit", "keyfob", "router", "transmitter", "camera")
"""Kinds that are not expected to check in by radio. (common practice)"""


@rule(
    code="LNK101",
    name="check-in-slower-than-the-grade-asks",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("en-50131-1",),
)
def check_in_slower_than_the_grade_asks(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Radio devices, or a programme, by which a lost device is missed later than the grade asks.

    What it checks
        How often each radio device tells the control unit that it is there, by its sheet, and how long the
        programme lets one stay silent, against the time for the grade that is aimed at: 240 min, 120 min, 100 s, 10
        s for grades 1 to 4. These are from memory of EN 50131-1: check them with the standard.
    Why it matters
        A device that was taken, jammed or has an empty cell is only missed when it fails to check in.
    How to put it right
        Set the programme's time to the figure given, or use devices that check in more often. It costs cell life.
        Where no grade is needed, drop the need.
    What it cannot know
        Settings inside the device that change how often it checks in; check-ins lost on a weak radio path.

    Parameters
    ----------
    site : Site
        The devices, the programme, and the grade that is aimed at.
    catalogue : Catalogue
        The devices' sheets, and the times for each grade.

    Yields
    ------
    Finding
        One for each such device, and one for the programme, with the time [min]. One of severity `not run` for the
        devices whose sheets are silent, together, and one where the programme's time is not decided. Nothing where no
        grade is aimed at, or the need was dropped.

    Raises
    ------
    NotComputable
        If there is no radio device, or the rule pack has no times by grade.
    """
    this = check_in_slower_than_the_grade_asks
    grade = site.needs.grade
    if grade is None or not site.needs.check_in_by_grade:
        return
    limit = limit_by_grade(catalogue, f"check-in-grade-{grade}", site, what="times")
    used = [
        (device, sheet)
        for device, sheet in sheets_in_use(site, catalogue)
        if sheet.link == "radio" and sheet.kind not in NEVER_CHECK_IN
    ]
    if not used:
        raise NotComputable("no radio device that checks in", cure="Add the devices that are planned")
    for device, sheet in used:
        if sheet.check_in_min is not None and sheet.check_in_min > limit.value:
            yield this.finding(
                device.id,
                f"{device.name}: it checks in less often than grade {grade} asks",
                cure="Use a device that checks in more often, or drop the need",
                severity=severity_by(limit),
                estimate=exactly(sheet.check_in_min, "min", "told"),
                limit=limit.value,
                mends=replaced(catalogue, device, fits=partial(_checks_in, most_min=limit.value)),
            )
    silent = [device for device, sheet in used if sheet.check_in_min is None]
    if silent:
        names = ", ".join(device.name for device in silent)
        yield this.not_run(
            site.name,
            f"the sheets do not say how often these check in: {names}",
            cure="Add check_in_min to their sheets",
        )
    yield from _of_programme(site, limit)


def _of_programme(site: Site, limit: Limit) -> Iterator[Finding]:
    this = check_in_slower_than_the_grade_asks
    told = site.programme.check_in_min
    if told is None:
        yield this.not_run(
            "programme",
            "it is not decided how long a device may stay silent",
            cure="Add the time, such as 'programme check-in 60 min' in notes",
        )
    elif told > limit.value:
        yield this.finding(
            "programme",
            f"the programme lets a device stay silent longer than grade {site.needs.grade} asks",
            cure="Set it to the time given",
            severity=severity_by(limit),
            estimate=exactly(told, "min", site.programme.basis_of("check_in_min")),
            limit=limit.value,
            mends=(
                Mend(action="change-programme", subject="programme", values=(("check_in_min", limit.value),)),
            ),
        )


def _checks_in(sheet: DeviceSheet, *, most_min: float) -> bool:
    return sheet.check_in_min is not None and sheet.check_in_min <= most_min

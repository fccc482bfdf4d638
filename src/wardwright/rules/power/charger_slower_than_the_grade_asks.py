"""PWR103: a charger that does not fill its battery in time."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.site import Site
from wardwright.physics.power.standby import charging_time
from wardwright.rules.finding import Finding
from wardwright.rules.held_to import severity_by
from wardwright.rules.kit import some_of
from wardwright.rules.limits import limit_by_grade
from wardwright.rules.registry import exactly, rule
from wardwright.rules.replacement import replaced


@rule(
    code="PWR103",
    name="charger-slower-than-the-grade-asks",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("en-50131-6",),
    follows="nothing",
)
def charger_slower_than_the_grade_asks(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Control units whose charger takes longer than the grade asks to fill the battery again.

    What it checks
        How long each control unit's charger takes to give its battery back 80 % of what it is rated for, against 72 h
        for grades 1 and 2 and 24 h for grades 3 and 4, from memory of EN 50131-6: check with the standard.
    Why it matters
        Power cuts come in twos: a battery that is still flat from the first carries nobody through the second.
    How to put it right
        Use a control unit with a stronger charger. Where no grade is needed, drop the need.
    What it cannot know
        What the unit takes from the charger for itself meanwhile, unless its sheet has left that out already.

    Parameters
    ----------
    site : Site
        The devices, and the grade that is aimed at.
    catalogue : Catalogue
        The devices' sheets, and the hours for each grade.

    Yields
    ------
    Finding
        One for each such control unit, with its hours [h]. Of severity `not run` where its sheet is silent. Nothing
        where no grade is aimed at.

    Raises
    ------
    NoneOfAKind
        If there is no control unit.
    NotComputable
        If the rule pack has no hours by grade.
    """
    this = charger_slower_than_the_grade_asks
    grade = site.needs.grade
    used = some_of(site, catalogue, "control-unit")
    if grade is None:
        return
    limit = limit_by_grade(catalogue, f"recharge-grade-{grade}", site, what="hours")
    for device, sheet in used:
        hours = _hours(sheet)
        if hours is None:
            yield this.not_run(
                device.id,
                f"{device.name}: its sheet does not say how its battery is charged",
                cure="Add charge_a to [sheet.standby] of its sheet",
            )
        elif hours > limit.value:
            yield this.finding(
                device.id,
                f"{device.name}: its battery is charged again later than grade {grade} asks",
                cure="Use one with a stronger charger, or drop the need",
                severity=severity_by(limit),
                estimate=exactly(hours, "h", "told"),
                limit=limit.value,
                mends=replaced(catalogue, device, fits=partial(_charges, most=limit.value)),
            )


def _hours(sheet: DeviceSheet) -> float | None:
    if sheet.standby is None or sheet.standby.charge_a is None:
        return None
    return float(charging_time(sheet.standby.battery_ah, sheet.standby.charge_a))


def _charges(sheet: DeviceSheet, *, most: float) -> bool:
    hours = _hours(sheet)
    return hours is not None and hours <= most

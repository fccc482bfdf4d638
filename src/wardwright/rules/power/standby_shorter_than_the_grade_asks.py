"""PWR102: a control unit that goes dark too soon when the mains fails."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.physics.power.from_site import standby_of
from wardwright.rules.finding import Finding
from wardwright.rules.held_to import severity_by
from wardwright.rules.kit import some_of
from wardwright.rules.limits import limit_by_grade
from wardwright.rules.registry import rule
from wardwright.rules.replacement import replaced


@rule(
    code="PWR102",
    name="standby-shorter-than-the-grade-asks",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("en-50131-1", "bs-5839-1"),
    follows="nothing",
)
def standby_shorter_than_the_grade_asks(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Control units whose battery carries on for less than the grade asks, with an alarm at the end.

    What it checks
        How long each control unit goes on without mains with a battery at the end of its life, and then still sounds
        a quarter of an hour: by the form of BS 5839-1 Annex E, turned round. Held against 12 h for grades 1 and 2 and
        60 h for grades 3 and 4, from memory of EN 50131-1; editions and countries differ: check with the standard.
    Why it matters
        A power cut takes the lights, the router and the neighbours' lights with it. Whoever waits for the battery to
        end has the house to themselves.
    How to put it right
        Use a control unit with a larger battery. Where no grade is needed, drop the need.
    What it cannot know
        What else was wired to its supply, and how old its battery really is.

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
    this = standby_shorter_than_the_grade_asks
    grade = site.needs.grade
    used = some_of(site, catalogue, "control-unit")
    if grade is None:
        return
    limit = limit_by_grade(catalogue, f"standby-grade-{grade}", site, what="hours")
    for device, sheet in used:
        hours = standby_hours(sheet, catalogue, pack=site.place.rule_pack)
        if hours is None:
            yield this.not_run(
                device.id,
                f"{device.name}: its sheet does not say how large its battery is and what it feeds",
                cure="Add [sheet.standby] to its sheet",
            )
        elif hours.value < limit.value:
            yield this.finding(
                device.id,
                f"{device.name}: its battery ends sooner than grade {grade} asks",
                cure="Use one with a larger battery, or drop the need",
                severity=severity_by(limit),
                estimate=hours,
                limit=limit.value,
                mends=replaced(
                    catalogue,
                    device,
                    fits=partial(_lasts, catalogue=catalogue, pack=site.place.rule_pack, least=limit.value),
                ),
            )


def standby_hours(sheet: DeviceSheet, catalogue: Catalogue, *, pack: str) -> Estimate | None:
    """How long a device goes on without mains: with an old battery and an alarm at the end, up to a new one. [h]"""
    ageing, alarm = catalogue.limit("battery-ageing", pack).value, catalogue.figure("alarm-sounding")
    hours = standby_of(sheet, alarm_time=[alarm.value, alarm.low], ageing=[ageing, 1.0])
    if hours is None:
        return None
    old, new = float(hours[0]), float(hours[1])
    return Estimate(value=old, low=old, high=max(old, new), unit="h", basis="told")


def _lasts(sheet: DeviceSheet, *, catalogue: Catalogue, pack: str, least: float) -> bool:
    hours = standby_hours(sheet, catalogue, pack=pack)
    return hours is not None and hours.value >= least

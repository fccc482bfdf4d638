"""The days by which batteries are changed: several in one visit, or each by its own where its day is known."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate
from wardwright.model.lifetimes import after_years
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.visit_plan import Visit, visit_plan

BATTERIES = 15
"""Number of the question about batteries."""
SERVICE = "service-interval"
"""The row of limits that says how long it is from one service to the next."""


class BatteryDay(Record):
    """A day by which the batteries of some devices are changed."""

    on: str
    """As ISO 8601 has it."""
    names: tuple[str, ...]
    """Of the devices."""
    is_counted: bool
    """Whether it is counted from today, since nobody said since when they have their cells."""
    is_past: bool


def battery_days(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, today: date
) -> tuple[BatteryDay, ...]:
    """List the days by which batteries are changed.

    Parameters
    ----------
    site : Site
        Its devices, with the day since when they have their cells where somebody said.
    catalogue : Catalogue
        Says how long it is from one service to the next.
    answers : tuple of Answer
        Those of question 15; without them no battery has a day.
    today : date
        From which visits are counted where nothing else is known.

    Returns
    -------
    tuple of BatteryDay
        The soonest first.
    """
    found = [
        (after_years(today, visit.year), tuple(site.device(name).name for name in visit.devices), True)
        for visit in visits_of(site, catalogue, answers)
    ]
    for name, life in lives(site, answers).items():
        device = site.device(name)
        if device.cells_since is not None:
            found.append((change_by(device, life, drawn_up=today), (device.name,), False))
    return tuple(
        BatteryDay(on=on.isoformat(), names=names, is_counted=is_counted, is_past=on < today)
        for on, names, is_counted in sorted(found)
    )


def lives(site: Site, answers: tuple[Answer, ...]) -> Mapping[str, Estimate]:
    """How long the battery of each device lasts, where that could be worked out. [a]"""
    ids = {device.id for device in site.devices}
    return {
        one.subject_id: one.estimate
        for one in answers
        if one.question == BATTERIES and one.estimate is not None and one.subject_id in ids
    }


def visits_of(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]) -> tuple[Visit, ...]:
    """Visits for the devices of which nobody said since when they have their cells."""
    undated = {one.id for one in site.devices if one.cells_since is None}
    lows = {name: one.low for name, one in lives(site, answers).items() if name in undated}
    plan = visit_plan(lows, interval=catalogue.limit(SERVICE, site.place.rule_pack).value)
    return () if plan is None else plan.visits


def change_by(device: Device, life: Estimate, *, drawn_up: date) -> date:
    """The day by which its battery is changed, counted from some day where nobody said since when it has it."""
    return after_years(device.cells_since or drawn_up, life.low)

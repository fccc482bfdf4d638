"""The battery and end-date plan: what ends when, which visit changes it, and the days for a calendar."""

from __future__ import annotations

from datetime import date
from typing import NamedTuple

from wardwright.documents.content.battery_days import BATTERIES, SERVICE, change_by, lives, visits_of
from wardwright.documents.content.care_list import CareList, care_list
from wardwright.documents.content.discretion import discreet_name
from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Paper, Section, Table
from wardwright.documents.content.quantities import joined, with_range
from wardwright.model.catalogue import Catalogue
from wardwright.model.lifetimes import after_years
from wardwright.model.site import Site
from wardwright.questions.answer import Answer

COUNTED = (
    "Counted from the day of this paper where nobody said since when a device has its cells: put it right once "
    "fitted."
)


class Event(NamedTuple):
    """One day for a calendar."""

    on: date
    title: str
    words: str = ""
    every_years: int | None = None
    """How often it comes again; None: never. [a]"""


def dates_paper(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, drawn_up: date) -> Paper:
    """Put all that ends on paper.

    Parameters
    ----------
    site : Site
        Its devices.
    catalogue : Catalogue
        Says how long each lives.
    answers : tuple of Answer
        Those of question 15 say how long batteries last.
    drawn_up : date
        The day the paper is made, from which visits are counted where nothing else is known.

    Returns
    -------
    Paper
        What has no date is named too.
    """
    care = care_list(site, catalogue, today=drawn_up)
    undated = [f"Nobody said when it was made: {name}." for name in care.undated]
    silent = [f"Its sheet says nothing of a life or of updates, which is no promise: {joined(care.lasting)}."]
    return Paper(
        title="Batteries and end dates",
        house=site.name,
        copy="fitter",
        drawn_up=drawn_up,
        foot=COUNTED,
        sections=(
            Section("Visits", table=_visit_table(site, catalogue, answers, drawn_up=drawn_up)),
            Section("Batteries", table=battery_table(site, answers, drawn_up=drawn_up)),
            Section("Lives and security updates", table=_ends(care)),
            Section("Without a date", points=(*undated, *(silent if care.lasting else ()))),
        ),
    )


def battery_table(site: Site, answers: tuple[Answer, ...], *, drawn_up: date) -> Table:
    """One row for each device with a battery, the soonest first."""
    columns = (
        Column("Device", share=2.2),
        Column("Lasts", share=2.0),
        Column("Cells", share=2.1),
        Column("Has them since", share=1.3),
        Column("Change by", share=1.5),
    )
    rows: list[tuple[Cell, ...]] = []
    by_device = {one.subject_id: one for one in answers if one.question == BATTERIES}
    for device in site.devices:
        answer = by_device.get(device.id)
        if answer is None:
            continue
        life = answer.estimate
        rows.append(
            (
                device.name,
                answer.reason or NOT_KNOWN if life is None else with_range(life),
                answer.notes[0] if answer.notes else NOT_KNOWN,
                device.cells_since or NOT_KNOWN,
                NOT_KNOWN if life is None else change_by(device, life, drawn_up=drawn_up),
            )
        )
    rows.sort(key=lambda row: (not isinstance(row[-1], date), str(row[-1]), str(row[0])))
    return Table("Batteries", columns, tuple(rows))


def _visit_table(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, drawn_up: date) -> Table:
    rows = tuple(
        (after_years(drawn_up, visit.year), joined([site.device(name).name for name in visit.devices]))
        for visit in visits_of(site, catalogue, answers)
    )
    return Table(
        "Visits", (Column("On or before", share=1.0), Column("Change the batteries of", share=5.0)), rows
    )


def _ends(care: CareList) -> Table:
    rows = tuple(
        (date.fromisoformat(one.on), one.name, one.what + (": it is past" if one.is_past else ""))
        for one in care.dates
    )
    return Table("Ends", (Column("On"), Column("Device", share=2.4), Column("What", share=2.4)), rows)


def events_of(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, drawn_up: date, is_open: bool
) -> tuple[Event, ...]:
    """The days for a calendar, the soonest first.

    Parameters
    ----------
    site, catalogue : Site, Catalogue
        Its devices, and how long each lives.
    answers : tuple of Answer
        Those of question 15; without them no battery has a day.
    drawn_up : date
        From which visits are counted where nothing else is known.
    is_open : bool
        Whether it goes to the customer\u2019s files: what is withheld has its kind for a name.

    Returns
    -------
    tuple of Event
        The yearly service first of its day.
    """
    told = {one.id: discreet_name(one, site, catalogue) if is_open else one.name for one in site.devices}
    interval = catalogue.limit(SERVICE, site.place.rule_pack).value
    found = [Event(after_years(drawn_up, interval), "Alarm: service", every_years=max(1, round(interval)))]
    for visit in visits_of(site, catalogue, answers):
        names = joined([told[name] for name in visit.devices])
        found.append(
            Event(after_years(drawn_up, visit.year), "Alarm: change batteries", f"{names}. {COUNTED}")
        )
    for name, life in lives(site, answers).items():
        device = site.device(name)
        if device.cells_since is not None:
            found.append(
                Event(
                    change_by(device, life, drawn_up=drawn_up), f"Alarm: change the battery of {told[name]}"
                )
            )
    found += [
        Event(date.fromisoformat(one.on), f"Alarm: {told[one.device]}: {one.what}")
        for one in care_list(site, catalogue, today=drawn_up).dates
    ]
    return tuple(sorted(dict.fromkeys(found), key=lambda one: (one.on, one.title)))

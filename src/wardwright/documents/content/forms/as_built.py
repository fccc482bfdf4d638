"""The fitter's full as-fitted record: plan, devices, zones and programme as they are on the wall."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from wardwright.documents.content.forms.slots import FITTER_SIGNS
from wardwright.documents.content.paper import Column, Paper, Section, Table
from wardwright.documents.content.schedule import device_table, zone_table
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site

OF_DEVICES = (
    "On plan", "Name", "Device sheet", "Room", "Height", "Fixed by", "Zone", "Made on", "End of life",
)  # fmt: skip
OF_ZONES = ("Zone", "Name", "On the display", "Behaviour", "Parts", "Devices", "On soak test")
"""The columns of the schedule that fit an upright page; the spreadsheet has all."""
FULL = (
    "This one has the control unit\u2019s place and all times: the customer\u2019s own is as-fitted.pdf in the "
    "open folder."
)


def as_built(site: Site, catalogue: Catalogue, *, plan: Paper, programming: Paper, drawn_up: date) -> Paper:
    """Record all that is on the wall.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    plan : Paper
        The plan for fitting, whose sheets come first.
    programming : Paper
        The programming sheet, whose tables come last, without boxes to tick.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        It is as fitted only once somebody has compared it with the wall and signed.
    """
    unticked = [
        replace(one, table=replace(one.table, is_ticked=False))
        for one in programming.sections[1:]
        if one.table is not None
    ]
    return Paper(
        title="As-fitted record, full",
        house=site.name,
        copy="fitter",
        drawn_up=drawn_up,
        foot=FULL,
        is_landscape=plan.is_landscape,
        sections=(
            *plan.sections,
            Section("Devices", table=_slim(device_table(site, catalogue), OF_DEVICES), is_form=True),
            Section("Zones", table=_slim(zone_table(site, catalogue), OF_ZONES)),
            *unticked,
            Section(
                "Where the wall differs from the proposal",
                rules=5,
                blanks=("Compared with the wall on", FITTER_SIGNS),
            ),
        ),
    )


WIDE = {"Parts": 1.6, "On the display": 1.6, "Devices": 1.4, "Name": 2.2, "Device sheet": 2.0, "Room": 1.4}


def _slim(table: Table, wanted: tuple[str, ...]) -> Table:
    chosen = [j for j, column in enumerate(table.columns) if column.heading in wanted]
    columns = [table.columns[j] for j in chosen]
    return Table(
        table.name,
        tuple(Column(one.heading, one.unit, WIDE.get(one.heading, 1.0)) for one in columns),
        tuple(tuple(row[j] for j in chosen) for row in table.rows),
    )

"""The open logbook: every alarm, cause, fault, test, visit and change, on ruled pages."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.discretion import discreet
from wardwright.documents.content.forms.slots import NO_CODES, checklist, empty_rows
from wardwright.documents.content.paper import MONTHS, Column, Paper, Section
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site

SYSTEM = (
    "Fitted by, and on",
    "Looked after by",
    "Ring for a fault",
    "Receiving centre, if any",
    "Told to the council, where it must be",
)
HOW = (
    "Write down every alarm, fault, test, visit and change on the day, also when the cause is not known. "
    + NO_CODES
)
EVENTS = 24
"""Rows on a page of events. [-]"""
PAGES = 2


def logbook(site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Rule a logbook.

    Parameters
    ----------
    site : Site
        Its name.
    catalogue : Catalogue
        Says which names give something away.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        The system\u2019s own record first, then a year of tests, then pages for events.
    """
    columns = (
        Column("Date", share=0.9), Column("What: alarm, fault, visit, change", share=2.0),
        Column("Device", share=1.6),
        Column("Cause, and what was done", share=3.0), Column("By", share=0.9),
    )  # fmt: skip
    tests = (Column("Device tried", share=2.0), Column("Good, or what was wrong", share=2.4), Column("By"))
    return Paper(
        title="Logbook",
        house=discreet(site.name, site, catalogue),
        copy="open",
        drawn_up=drawn_up,
        foot=HOW,
        sections=(
            Section("The alarm", blanks=SYSTEM),
            Section(
                "One device tried each month",
                table=checklist("Tests", MONTHS, head=Column("Month"), slots=tests),
            ),
            *(
                Section(
                    f"Events, page {page + 1}",
                    table=empty_rows(f"Events {page + 1}", columns, count=EVENTS),
                    is_form=True,
                )
                for page in range(PAGES)
            ),
        ),
    )

"""The fitter's records after the handover: service, activation, change and complaint, a page each."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.forms.slots import FITTER_SIGNS, NO_CODES, SIGNED, checklist, with_slots
from wardwright.documents.content.paper import Column, Paper, Section, Table
from wardwright.documents.content.quantities import with_range
from wardwright.documents.content.results_told import Results
from wardwright.documents.drawing.devices import device_tags
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.works.site_result import SiteResult

LINKS, CELLS = 6, 15
"""Numbers of the questions that say what is expected of links and cells."""
SERVICE = (
    "Compared with the as-fitted record; what changed in house, people, pets",
    "Event log: set every day; devices that were never seen; low margins",
    "Lenses and housings cleaned, holes sealed",
    "Every lid, and what is off its wall, told by name",
    "Sounders inside and outside; how long they go on",
    "Times with who is slowest; part set at night",
    "Batteries under load; mains off and on",
    "Each event by each message path",
    "Keyholders, users and remote access brought up to date",
    "Telephone line, mobile network and updates: until when",
    "Advice given, locks and lights first",
)
CAUSES = (
    (
        "same clock hour on clear days, gone in cloud",
        "sun through a pane",
        "where the sun stood in that minute",
    ),
    ("same minute each day in the cold months", "heating", "shift the heating and see"),
    ("windy nights", "curtain, letterbox, loose leaf", "fan, tug, gap"),
    ("late summer, one device", "insect on or in it", "clean it, seal its holes"),
    ("soon after setting or before unsetting", "somebody of the house", "which device came first"),
    ("two rooms apart in the same second", "radio or mains", "noise and mains log"),
    ("wet or cold nights", "weak link or cell", "readings, load"),
    ("after building work or new furniture", "moved, dusty, in view", "look at the room again"),
    ("rooms in walking order, or damage", "somebody was there", "treat as real until shown otherwise"),
)
INVESTIGATED = (
    "When: date, clock time; set, part set or unset",
    "First device, then which, how long after",
    "Since setting; weather and sun; heating",
    "Battery and radio as logged",
    "What changed lately",
)
FOUND = (
    "Cause: true, false or not known, and how sure",
    "What settled it",
    "What was done; on soak test until",
    FITTER_SIGNS,
)
VARIATION = (
    "What changes, and who asked",
    "Answers that fail now (compare with the one as signed)",
    "Tests to repeat, and their results",
    "Papers brought up to date",
    "Price, tax",
    *SIGNED,
)
COMPLAINT = (
    "From, on, by which way",
    "About",
    "Taken by; answered on",
    "What was found",
    "What was done, and offered",
    "Closed on, content or not",
    "What we change so that it does not happen again",
)


def aftercare(
    site: Site,
    catalogue: Catalogue,
    answers: tuple[Answer, ...],
    *,
    drawn_up: date,
    results: tuple[SiteResult, ...] = (),
) -> Paper:
    """Set up the records of the years after.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Says what each device is.
    answers : tuple of Answer
        What is expected of links and cells stands beside what is read.
    drawn_up : date
        The day the paper is made.
    results : tuple of SiteResult, default ()
        What was written down on site: what radio read at first stands where later readings are set beside it.

    Returns
    -------
    Paper
        Each record begins a page.
    """
    causes = Table(
        "Patterns",
        (
            Column("It goes off", share=2.0),
            Column("First suspect", share=1.4),
            Column("Cheapest test", share=1.6),
        ),
        CAUSES,
    )
    return Paper(
        title="Records after the handover",
        house=site.name,
        copy="fitter",
        drawn_up=drawn_up,
        foot=NO_CODES,
        sections=(
            Section("Visit", blanks=("On, and next on", *SIGNED)),
            Section(
                "Service report",
                table=checklist(
                    "Service",
                    SERVICE,
                    head=Column("What", share=3.4),
                    slots=(Column("Found", share=2.0), Column("Done", share=2.0)),
                ),
            ),
            Section(
                "Device by device",
                table=_devices(site, catalogue, answers, read=Results(results)),
            ),
            Section("Activation investigation record", blanks=INVESTIGATED, is_form=True),
            Section("What it may have been", table=causes),
            Section("Finding", blanks=FOUND),
            Section("Variation record", blanks=VARIATION, rules=3, is_form=True),
            Section("Complaint record", blanks=COMPLAINT, rules=4, is_form=True),
        ),
    )


def _devices(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, read: Results) -> Table:
    expected = {
        (one.question, one.subject_id): with_range(one.estimate)
        for one in answers
        if one.question in (LINKS, CELLS) and one.estimate is not None
    }
    known = (
        Column("On plan", share=0.6), Column("Device", share=1.8), Column("Margin expected", share=1.3),
        Column("Cells last", share=1.3),
    )  # fmt: skip
    slots = (
        Column("Margin at first, now", share=1.2),
        Column("Cells changed"),
        Column("Tried, found", share=1.6),
    )
    tags = device_tags(site, catalogue)
    rows = [
        (
            tags[one.id].text,
            one.name,
            expected.get((LINKS, one.id), "none worked out"),
            expected.get((CELLS, one.id), "none worked out"),
            read.reading("radio", one.id),
        )
        for one in site.devices
    ]
    return with_slots("Devices", known, rows, slots=slots)

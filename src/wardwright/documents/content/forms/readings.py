"""The radio test sheet and the commissioning test record: what was worked out, and room beside it for readings."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.forms.slots import FITTER_SIGNS, NO_CODES, checklist, with_slots
from wardwright.documents.content.forms.timed_readings import (
    EXPECTED,
    READ,
    RESULT,
    answers_of,
    entry_table,
    expected_words,
    nights_table,
    part_of,
)
from wardwright.documents.content.names import names_of
from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Paper, Section, Table
from wardwright.documents.content.proving_list import proving_list
from wardwright.documents.content.proving_plan_words import walk_named
from wardwright.documents.content.results_told import Results, told_elsewhere
from wardwright.documents.content.schedule import sheet_of
from wardwright.documents.content.wording import DANGERS
from wardwright.documents.drawing.devices import device_tags
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import kind_words
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.rules.dangers import FIRE_KINDS
from wardwright.works.site_result import SiteResult

LINKS, LEVELS, LOSSES = 6, 13, 12
"""Numbers of the questions whose answers are set beside readings."""
ABOUT = (
    "Date, begun and ended",
    "Read by",
    "Instruments, and when they were last checked",
    "Receiving centre told \u201con test\u201d, and told that it is over",
    "Who is at home",
)
RADIO_HOW = (
    "Every device in its place, all doors shut, lights and appliances on, somebody in the path. Write the mean of "
    "five readings, signal and noise. Margin is signal above noise, or above what the receiver needs."
)
WALK_HOW = (
    "Test mode on; let each detector warm up as its sheet says. Walk across, toward, slow and fast, and through what "
    "must stay quiet. A detector that sleeps looks dead: stay out of its sight before each walk."
)
EVENTS = ("Intruder", "Tamper", "Mains lost", "Mains back", "Battery low", "Set", "Unset", "Device lost")
POWER = (
    "Mains off: told, and by whom",
    "Battery volts with all sounders on",
    "Battery volts after a message",
    "Mains back: told, and clears",
    "Sounder by itself when the control unit falls silent",
)
LAST = (
    "Clock, day and time zone are right",
    "Event log read; begins empty of what is not of today",
    "No code that came from the maker is left",
    "Everybody with remote access is wanted, and knows of the others",
    "Names on the display are those of the schedule",
)
CAUTIONS = (
    DANGERS["mains"],
    "Sounders near the ear hurt: wear ear protectors, warn the house and the neighbours, keep tests short.",
    DANGERS["ladder"],
)


def readings(
    site: Site,
    catalogue: Catalogue,
    answers: tuple[Answer, ...],
    *,
    drawn_up: date,
    results: tuple[SiteResult, ...] = (),
) -> Paper:
    """Set up the test record of a site.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    answers : tuple of Answer
        What is expected of radio, sound, times and nights.
    drawn_up : date
        The day the paper is made.
    results : tuple of SiteResult, default ()
        What was written down on site: it stands where else a hand writes.

    Returns
    -------
    Paper
        A reading, not a tick, beside every expected value; where none could be worked out the reason stands.
    """
    names = names_of(site, catalogue)
    read = Results(results, walk_named=lambda key: walk_named(key, names))
    return Paper(
        title="Radio and commissioning tests",
        house=site.name,
        copy="fitter",
        drawn_up=drawn_up,
        foot="Readings, not ticks: next year they are what is compared with. " + NO_CODES,
        sections=(
            Section("Before you begin", text=read.counted(), points=CAUTIONS, blanks=ABOUT),
            Section("Radio", text=(RADIO_HOW,), table=_radio(answers, read), is_form=True),
            Section(
                "Walk test and contacts",
                text=(WALK_HOW,),
                table=_walks(site, catalogue, answers, read=read),
                is_form=True,
            ),
            Section("Tamper", table=_tampers(site, catalogue)),
            Section("Sound", table=_sound(answers, read)),
            Section("Coming in and going out", table=entry_table(site, answers, read)),
            Section("Part set at night", table=nights_table(answers, read)),
            Section("Without mains", table=_losses(answers)),
            Section("Power", table=_checks("Power", POWER)),
            Section("Messages, by each path", table=_messages()),
            *_fire(site, catalogue, read),
            *_elsewhere(told_elsewhere(results, names)),
            Section("Last of all", table=_checks("Last", LAST), rules=3, blanks=(FITTER_SIGNS,)),
        ),
        is_landscape=True,
    )


def _radio(answers: tuple[Answer, ...], read: Results) -> Table:
    known = (
        Column("Device", share=2.2),
        Column("Level expected", share=1.1),
        Column("Noise expected", share=1.1),
        Column("Margin expected", share=1.8),
        Column("Heard by", share=2.2),
    )
    slots = (Column("Level read", "dBm"), Column("Noise read", "dBm"), Column("Margin read", "dB"), RESULT)
    rows: list[tuple[Cell, ...]] = []
    for one in answers_of(answers, LINKS):
        heard = next((note for note in one.notes if note.startswith("heard by ")), "").removeprefix(
            "heard by "
        )
        levels = [part_of(one, name) for name in ("level that arrives", "noise at the receiver")]
        told = read.told("radio", one.subject_id)
        rows.append((one.subject, *levels, expected_words(one), heard or NOT_KNOWN, "", "", "", told))
    return with_slots("Radio", known, rows, slots=slots)


def _walks(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, read: Results) -> Table:
    known = (Column("On plan", share=0.6), Column("Device", share=1.6), Column("To show", share=5.0))
    rows = [
        (line.tag, line.name, " ".join(line.facts), read.of_device(line.device))
        for storey in proving_list(site, catalogue, answers)
        for line in storey.devices
    ]
    return with_slots("Walk test", known, rows, slots=(Column("Shown, or what was done", share=2.4),))


def _tampers(site: Site, catalogue: Catalogue) -> Table:
    known = (
        Column("On plan", share=0.6),
        Column("Device", share=2.4),
        Column("Its sheet says of removal", share=1.6),
    )
    tags = device_tags(site, catalogue)
    rows = [
        (
            tags[device.id].text,
            device.name,
            NOT_KNOWN if sheet is None else "it is told" if sheet.detects_removal else "nothing",
        )
        for device in site.devices
        for sheet in (sheet_of(catalogue, device),)
    ]
    return with_slots(
        "Tamper", known, rows, slots=(Column("Lid"), Column("Off its wall"), Column("Shown as"))
    )


def _sound(answers: tuple[Answer, ...], read: Results) -> Table:
    rows = [
        (one.subject, one.measure, expected_words(one), *read.both("sound", one.subject_id))
        for one in answers_of(answers, LEVELS)
    ]
    return with_slots("Sound", EXPECTED, rows, slots=(Column("Read", "dBA"), RESULT))


def _losses(answers: tuple[Answer, ...]) -> Table:
    rows = [
        (one.subject, one.measure, expected_words(one))
        for one in answers_of(answers, LOSSES)
        if one.subject_id == "mains"
    ]
    return with_slots("Without mains", EXPECTED, rows, slots=(READ, RESULT))


def _checks(name: str, lines: tuple[str, ...]) -> Table:
    return checklist(name, lines, head=Column("What", share=3.0), slots=(READ, RESULT))


def _messages() -> Table:
    slots = (
        Column("Broadband: arrived", share=1.2), Column("after", "s", share=0.7),
        Column("Mobile: arrived", share=1.2), Column("after", "s", share=0.7), RESULT,
    )  # fmt: skip
    return checklist("Messages", EVENTS, head=Column("Event", share=1.4), slots=slots)


def _elsewhere(told: tuple[str, ...]) -> tuple[Section, ...]:
    return (Section("Also written down on site", points=told),) if told else ()


def _fire(site: Site, catalogue: Catalogue, read: Results) -> tuple[Section, ...]:
    rows = [
        (device.name, kind_words(sheet.kind), "", "", "", read.told("operation", device.id))
        for device in site.devices
        if (sheet := sheet_of(catalogue, device)) is not None and sheet.kind in FIRE_KINDS
    ]
    if not rows:
        return ()
    slots = (Column("Tested with"), Column("Others sound too"), Column("Heard in each bedroom"), RESULT)
    table = with_slots("Fire and CO", (Column("Device", share=2.0), Column("Kind")), rows, slots=slots)
    return (Section("Smoke, heat and CO alarms", text=(DANGERS["fire"],), table=table),)

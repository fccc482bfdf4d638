"""The client's papers of a change of hands: takeover, release of the installer code, removal and waste."""

from __future__ import annotations

from collections import Counter
from datetime import date

from wardwright.documents.content.discretion import discreet
from wardwright.documents.content.forms.slots import NO_CODES, SIGNED, checklist, with_slots
from wardwright.documents.content.paper import Column, Paper, Section, Table
from wardwright.documents.content.quantities import joined
from wardwright.documents.content.quote_words import without_numbers
from wardwright.documents.content.schedule import sheet_of
from wardwright.documents.content.wording import DANGERS
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind, kind_words
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.site import Site

RELEASE = (
    "We release the alarm to whom it belongs. The installer code is given face to face, or the control unit is put "
    "back to the state in which its maker sends it; it stands in no letter."
)
RELEASED = (
    "To: whose it is, and how that was shown",
    "From: who looked after it until now",
    "Given over on: code, or state of the maker",
    "As-fitted record and logbook handed over on",
    "Remote access, messages and receiving centre ended or taken over on",
    *SIGNED,
)
TAKEN = (
    "Whose it is was shown; no code of the maker left",
    "Users, keyfobs and remote access of those before removed",
    "Every device tried, every cell of unknown age changed",
    "Radio read, times taken, messages sent",
    "As-fitted record drawn up anew; insurer told",
)
STEPS = (
    "Receiving centre, police, insurer, council told",
    "The log that the customer wants is handed over",
    "Users, remote access and pairings deleted; mobile contract ended",
    "Mains off first, then batteries of sounders: they sound when they lose it",
    "Taken down, holes filled; the box outside removed, or left by choice",
    "Our files destroyed, or kept until (date)",
)
CAUTIONS = (
    DANGERS["mains"],
    DANGERS["ladder"],
    DANGERS["old-coating"],
    "What is glued to an old coating tears it when pulled off.",
)
REMAINS = "The dwelling\u2019s own smoke, heat and CO alarms stay."


def leaving(site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Set up the papers of the end.

    Parameters
    ----------
    site : Site
        Its devices, by kind.
    catalogue : Catalogue
        Says what each device is and runs on.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        A page each; nothing of where devices are.
    """
    done = (Column("On"), Column("By"), Column("Remarks", share=1.6))
    return Paper(
        title="Takeover, release and removal",
        house=discreet(site.name, site, catalogue),
        copy="client",
        drawn_up=drawn_up,
        foot=NO_CODES,
        sections=(
            Section("Release of the installer code", text=(RELEASE,), blanks=RELEASED),
            Section(
                "Takeover",
                table=checklist("Takeover", TAKEN, head=Column("What", share=3.0), slots=done),
            ),
            Section(
                "Removal",
                points=(*CAUTIONS, REMAINS),
                table=checklist("Removal", STEPS, head=Column("In this order", share=3.0), slots=done),
                is_form=True,
            ),
            Section("Waste", table=_waste(site, catalogue), blanks=SIGNED),
        ),
    )


def _waste(site: Site, catalogue: Catalogue) -> Table:
    """All devices, told by kind, and batteries by what they are made of, each with where it is to go."""
    counted: Counter[tuple[str, str]] = Counter()
    kinds: Counter[DeviceKind] = Counter()
    for device in site.devices:
        sheet = sheet_of(catalogue, device)
        if sheet is None:
            continue
        kinds[sheet.kind] += 1
        battery = _battery(catalogue, sheet)
        if battery is not None:
            counted["batteries, their ends taped", battery[0]] += battery[1]
    if kinds:
        what = joined([f"{kind_words(kind)}: {count}" for kind, count in sorted(kinds.items())])
        counted["electronics", what] = kinds.total()
    rows = [(stream, which, count) for (stream, which), count in sorted(counted.items())]
    known = (Column("Stream", share=1.4), Column("What", share=2.2), Column("How many", share=0.8))
    return with_slots("Waste", known, rows, slots=(Column("Taken by"), Column("Receipt")))


def _battery(catalogue: Catalogue, sheet: DeviceSheet) -> tuple[str, int] | None:
    if sheet.cells is not None:
        return without_numbers(catalogue.cell(sheet.cells.cell).name), sheet.cells.count
    return None if sheet.standby is None else (without_numbers(catalogue.cell(sheet.standby.battery).name), 1)

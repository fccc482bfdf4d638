"""The client's handover record: what was done, who was shown it, who holds keys, what cameras see, what ends when."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.discretion import discreet, discreet_name
from wardwright.documents.content.forms.slots import (
    NO_CODES,
    SIGNED,
    TO_FILL,
    checklist,
    empty_rows,
    with_slots,
)
from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Paper, Section, Table
from wardwright.documents.content.protection_words import LIMITS
from wardwright.documents.content.schedule import NOT_STATED, kinds_fitted, room_name, sheet_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind, kind_words
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.questions.answer import Answer

CAMERAS = 19
"""Number of the question about what cameras show."""
BEYOND = ("street that it sees", "other ground beyond the boundary")
CONNECTED: tuple[DeviceKind, ...] = ("control-unit", "transmitter", "router", "camera")
"""Kinds that are on the network, or may be."""
DONE = (
    "Every detector walked, every contact opened",
    "Radio read with all doors shut",
    "Sounders heard in each bedroom and outside",
    "Every way in and out timed with who is slowest",
    "Mains off and on again",
    "Each message sent by each path, and arrived",
    "No code that came from the maker is left",
    "As-fitted record compared with the wall",
)
SHOWN = (
    "Sets and unsets, twice",
    "Part sets, and walks at night",
    "Leaves a window open and sets",
    "Makes the mistake on purpose, and cancels",
    "Reads the display afterwards",
    "Knows what a hold-up button does, and when",
    "Knows what to do when it sounds, and whom to ring",
    "Chose a code of their own, unseen by us",
)
LEAST, MOST = 3, 6
"""How many columns there are for people. [-]"""
KEYHOLDERS = (
    "Two who live near and can come at once; each has agreed, and knows how to unset. Nobody goes in alone. Keep "
    "this sheet "
    "sealed. " + NO_CODES
)
CAMERA_DUTIES = (
    "What lies beyond the boundary is other people\u2019s: mask it, or say why it is needed, put up a sign, keep "
    "it no longer than needed, and answer who asks for their picture. Everybody in the house knows of each camera"
    " inside, and who can look."
)


def handover(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, drawn_up: date) -> Paper:
    """Set up what is signed at the end.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    answers : tuple of Answer
        Only whether a camera sees beyond the boundary is told, never how far.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        A page for each record; without cameras theirs is left out.
    """
    return Paper(
        title="Handover record",
        house=discreet(site.name, site, catalogue),
        copy="client",
        drawn_up=drawn_up,
        sections=(
            Section("Completion record", table=_fitted(site, catalogue)),
            Section(
                "What was proved",
                table=checklist(
                    "Proved",
                    DONE,
                    head=Column("What", share=2.4),
                    slots=(Column("On"), Column("By"), Column("Left open", share=2.0)),
                ),
            ),
            Section("Connected products", table=_connected(site, catalogue)),
            Section("Limits", points=LIMITS, blanks=("Differs from the proposal in", *SIGNED)),
            Section(
                "User training record",
                text=("All adults are there. " + NO_CODES,),
                table=_training(site),
                is_form=True,
            ),
            Section("Shown by, and on", blanks=SIGNED),
            Section("Keyholders", text=(KEYHOLDERS,), table=_keyholders(), is_form=True),
            *_cameras(site, catalogue, answers),
        ),
    )


def _fitted(site: Site, catalogue: Catalogue) -> Table:
    rows = [(kind_words(kind), count) for kind, count in sorted(kinds_fitted(site, catalogue).items())]
    known = (Column("Device", share=2.0), Column("Proposed", share=0.8))
    return with_slots("Fitted", known, rows, slots=(Column("Fitted"), Column("Remarks", share=3.0)))


def _training(site: Site) -> Table:
    count = min(max(len(site.people), LEAST), MOST)
    people = tuple(Column("Initials") for _ in range(count))
    return checklist("Training", SHOWN, head=Column("Each of them", share=3.0), slots=people)


def _keyholders() -> Table:
    columns = (
        Column("Name", share=2.0), Column("Telephone, day and night", share=2.4), Column("Has a key"),
        Column("Was shown"),
        Column("Since, until", share=1.2),
    )  # fmt: skip
    return empty_rows("Keyholders", columns, count=6)


def _sees_beyond(answer: Answer | None) -> str:
    """Whether a camera sees beyond the boundary: in a word, without how much."""
    if answer is None:
        return NOT_KNOWN
    found: list[Estimate | None] = [part.estimate for part in answer.parts if part.name in BEYOND]
    if not found or any(one is None for one in found):
        return NOT_KNOWN
    return "yes" if any(one is not None and one.high > 0 for one in found) else "no"


def _cameras(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]) -> tuple[Section, ...]:
    by_device = {one.subject_id: one for one in answers if one.question == CAMERAS}
    rows: list[tuple[Cell, ...]] = []
    for device in site.devices:
        sheet = sheet_of(catalogue, device)
        if sheet is None or sheet.kind != "camera":
            continue
        covered = (
            "outside"
            if sheet.is_outside
            else {True: "yes", False: "no", None: "not decided"}[device.is_covered_when_home]
        )
        rows.append(
            (
                discreet(device.name, site, catalogue),
                discreet(room_name(site, device), site, catalogue),
                _sees_beyond(by_device.get(device.id)),
                covered,
            )
        )
    if not rows:
        return ()
    known = (
        Column("Camera", share=1.6), Column("Room", share=1.2), Column("Sees beyond the boundary", share=1.1),
        Column("Covered when at home", share=1.1),
    )  # fmt: skip
    slots = (
        Column("Why it is there", share=1.6),
        Column("Masked, sign up"),
        Column("Kept for"),
        Column("Who can look", share=1.3),
    )
    table = with_slots("Cameras", known, rows, slots=slots)
    agreed = ("View shown to the customer on", *SIGNED)
    return (
        Section("Cameras and the boundary", text=(CAMERA_DUTIES,), table=table, blanks=agreed, is_form=True),
    )


def _connected(site: Site, catalogue: Catalogue) -> Table:
    known = (Column("Product", share=2.2), Column("Security updates until", share=1.4))
    rows: list[tuple[Cell, ...]] = []
    for device in site.devices:
        sheet = sheet_of(catalogue, device)
        if sheet is None or (sheet.kind not in CONNECTED and sheet.updates_until is None):
            continue
        rows.append((discreet_name(device, site, catalogue), sheet.updates_until or NOT_STATED))
    rows = rows or [("none known", TO_FILL)]
    slots = (
        Column("Maker\u2019s statement handed over", share=1.6),
        Column("Changed by then for", share=1.6),
    )
    return with_slots("Connected products", known, rows, slots=slots)

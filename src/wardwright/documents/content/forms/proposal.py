"""The client's design proposal: what is fitted where and what for, how it is used, and what it does not protect."""

from __future__ import annotations

from collections import Counter
from datetime import date

from wardwright.documents.content.discretion import WITHHELD, discreet, withheld
from wardwright.documents.content.forms.living import entry_doors, keypad_rooms, signal_words
from wardwright.documents.content.forms.slots import SIGNED
from wardwright.documents.content.paper import Cell, Column, Paper, Section, Table
from wardwright.documents.content.protection_sections import (
    LIMITS_SECTION,
    added_sections,
    cover_sections,
    locks_section,
)
from wardwright.documents.content.protection_words import AGREED
from wardwright.documents.content.quantities import joined, sentence
from wardwright.documents.content.schedule import OUTSIDE, kinds_fitted, room_name, sheet_of
from wardwright.documents.content.wording import DANGERS
from wardwright.documents.drawing.devices import letters_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind, kind_words
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.rules.dangers import FIRE_KINDS

DOES: dict[DeviceKind, str] = {
    "control-unit": "hears all devices and decides what follows",
    "keypad": "sets and unsets, and says what happened",
    "keyfob": "sets and unsets from the hand",
    "hold-up-button": "calls for help when somebody is threatened",
    "movement-detector": "notices somebody who walks in its room",
    "opening-contact": "tells that its door or window is opened",
    "shock-detector": "tells of blows to a door, window or wall",
    "glass-break-detector": "hears a pane break",
    "water-detector": "tells of water on the floor",
    "smoke-alarm": "tells of smoke; it does not replace the alarms that the code asks for",
    "heat-alarm": "tells of heat; it does not replace the alarms that the code asks for",
    "co-alarm": "tells of carbon monoxide; it does not replace the alarms that the code asks for",
    "sounder": "makes the noise",
    "camera": "shows what is before it",
    "repeater": "carries weak radio on",
    "transmitter": "sends messages out of the house",
    "router": "the household\u2019s own way out for messages",
}
"""What each kind of device is for, in the customer\u2019s words."""
NOT_PLACED = "agreed with you on site"
HOW_PLACED = (
    "Where the control unit and what sends its messages go is told on site, and stands on no copy but the "
    "fitter\u2019s: whoever knows it goes there first."
)
BEFORE_WORK = (
    DANGERS["mains"],
    DANGERS["drilling"],
    DANGERS["old-coating"],
    "Tell us of pipes and cables you know of, of old coatings, and of fresh paint: things stick to it badly.",
    "We agree beforehand: parking, where furniture is moved, who is at home, and when the mains is off.",
)
YOURS = (
    "Shut and lock; set it every time, also for a short way out.",
    "Tell us before building work, moved furniture, a new pet, new windows, a new router.",
    "Codes are yours: choose your own, and give them to nobody on paper.",
    "Name two keyholders who live near, and keep the list up to date.",
)


def proposal(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, drawn_up: date) -> Paper:
    """Tell the customer what is proposed, how one lives with it, and what it does not do.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    answers : tuple of Answer
        Only their mends are told, and those without numbers or places.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        No time, length, way or shape, and nothing of where the control unit is.
    """
    fire = (DANGERS["fire"],) if FIRE_KINDS & kinds_fitted(site, catalogue).keys() else ()
    return Paper(
        title="Design proposal",
        house=discreet(site.name, site, catalogue),
        copy="client",
        drawn_up=drawn_up,
        sections=(
            locks_section(site, catalogue, answers),
            Section("What we propose", text=(HOW_PLACED, *fire), table=_devices(site, catalogue)),
            Section("How you live with it", points=_living(site, catalogue)),
            Section("What happens then", table=_signals(site)),
            *cover_sections(site, catalogue),
            *added_sections(site, catalogue, answers),
            LIMITS_SECTION,
            Section("Before we begin", points=BEFORE_WORK),
            Section("Your part", points=YOURS),
            Section("Agreed", blanks=(AGREED[0], *SIGNED)),
        ),
    )


def _devices(site: Site, catalogue: Catalogue) -> Table:
    """By room what is fitted; kinds whose place is withheld come last, counted."""
    columns = (
        Column("Room", share=1.4),
        Column("Device", share=1.6),
        Column("How many", share=0.6),
        Column("What for", share=2.6),
    )
    hidden = withheld(site, catalogue)
    placed: Counter[tuple[str, str, str]] = Counter()
    counted: Counter[DeviceKind] = Counter()
    for device in site.devices:
        sheet = sheet_of(catalogue, device)
        if sheet is None:
            continue
        if device.id in hidden:
            counted[sheet.kind] += 1
        else:
            room = discreet(room_name(site, device), site, catalogue)
            placed[room, letters_of(sheet)[1], DOES[sheet.kind]] += 1
    order = sorted(placed.items(), key=lambda one: (one[0][0] == OUTSIDE, one[0]))
    rows: list[tuple[Cell, ...]] = [(room, kind, count, does) for (room, kind, does), count in order]
    rows += [(NOT_PLACED, kind_words(kind), counted[kind], DOES[kind]) for kind in WITHHELD if counted[kind]]
    return Table("Devices", columns, tuple(rows))


def _living(site: Site, catalogue: Catalogue) -> tuple[str, ...]:
    doors, keypads = entry_doors(site, catalogue), keypad_rooms(site, catalogue)
    parts = joined([part.name for part in site.parts])
    come = (
        f"you come in by {joined(doors)}, and by nothing else while it is set: any other way in is an alarm"
        if doors
        else "which door gives time to unset is not decided"
    )
    unset = (
        f"you set and unset at the keypad: {joined(keypads)}"
        if keypads
        else "where you set and unset is not decided: no keypad is drawn in a room"
    )
    refuses = (
        "with something open it does not set, and says what is open"
        if site.programme.if_open_when_setting == "refuse"
        else "what stands open when you set is left out until you next unset"
    )
    return tuple(sentence(one) for one in (come, unset, f"it can be set as: {parts}", refuses))


def _signals(site: Site) -> Table:
    columns = (
        Column("What it is about"),
        Column("Set as", share=1.0),
        Column("Noise", share=1.2),
        Column("Who is told", share=2.0),
    )
    return Table("What happens then", columns, signal_words(site))

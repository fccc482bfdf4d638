"""Days as a calendar file (RFC 5545): whole days, folded and escaped, the same bytes each time."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from datetime import date, timedelta

from wardwright.documents.content.forms.dates import Event

FOLDED_AT = 75
"""A line is at most so long. [octets]"""
ESCAPES = {"\\": "\\\\", ";": "\\;", ",": "\\,", "\r": "", "\n": "\\n"}


def write_ics(name: str, events: Iterable[Event], *, drawn_up: date) -> bytes:
    """Write a calendar.

    Parameters
    ----------
    name : str
        Of the calendar.
    events : iterable of Event
        Each a whole day.
    drawn_up : date
        The day that stands for its making, so that the same content gives the same bytes.

    Returns
    -------
    bytes
        UTF-8 with the line ends of the standard. What names an event is worked out from what is printed alone.
    """
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Wardwright//Papers//EN",
        "CALSCALE:GREGORIAN",
        f"X-WR-CALNAME:{_escaped(name)}",
    ]
    for one in events:
        lines += _event(name, one, drawn_up=drawn_up)
    return "".join(_folded(line) + "\r\n" for line in (*lines, "END:VCALENDAR")).encode()


def _event(name: str, one: Event, *, drawn_up: date) -> list[str]:
    again = [] if one.every_years is None else [f"RRULE:FREQ=YEARLY;INTERVAL={one.every_years}"]
    words = [f"DESCRIPTION:{_escaped(one.words)}"] if one.words else []
    return [
        "BEGIN:VEVENT",
        f"UID:{_unique(name, one)}@wardwright.invalid",
        f"DTSTAMP:{drawn_up:%Y%m%d}T000000Z",
        f"DTSTART;VALUE=DATE:{one.on:%Y%m%d}",
        f"DTEND;VALUE=DATE:{one.on + timedelta(days=1):%Y%m%d}",
        f"SUMMARY:{_escaped(one.title)}",
        *words,
        *again,
        "TRANSP:TRANSPARENT",
        "END:VEVENT",
    ]


def _unique(name: str, one: Event) -> str:
    """A name in letters alone that is the same for the same event and tells nothing that is not printed."""
    digest = hashlib.sha256(f"{name}\n{one.title}\n{one.on.isoformat()}".encode()).hexdigest()[:32]
    return "".join(chr(ord("a") + int(digit, 16)) for digit in digest)


def _escaped(words: str) -> str:
    return "".join(ESCAPES.get(letter, letter) for letter in words)


def _folded(line: str) -> str:
    """A long line as several, each but the first beginning with a space; no letter is cut in two."""
    found, length = [""], 0
    for letter in line:
        size = len(letter.encode())
        if length + size > FOLDED_AT:
            found.append(" ")
            length = 1
        found[-1] += letter
        length += size
    return "\r\n".join(found)

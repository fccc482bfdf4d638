from __future__ import annotations

from datetime import date, timedelta

import icalendar
from hypothesis import given
from hypothesis import strategies as st

from common.fitted import DAY
from wardwright.documents.content.forms.dates import Event
from wardwright.documents.writers.ics import FOLDED_AT, write_ics

WORDS = st.text(
    st.characters(exclude_categories=("Cc", "Cs", "Zl", "Zp"), include_characters="\n"), max_size=200
)


def read(content: bytes) -> icalendar.Calendar:
    return icalendar.Calendar.from_ical(content.decode())


def test_another_reader_finds_the_days_and_how_often_they_come() -> None:
    events = (
        Event(DAY, "Alarm: service", every_years=2),
        Event(date(2028, 2, 29), "Alarm: end", "A; b, c\nd"),
    )
    calendar = read(write_ics("House", events, drawn_up=DAY))
    assert calendar["VERSION"] == "2.0"
    first, second = calendar.walk("VEVENT")
    assert first["DTSTART"].dt == DAY
    assert first["DTEND"].dt == DAY + timedelta(days=1)
    assert first["RRULE"] == {"FREQ": ["YEARLY"], "INTERVAL": [2]}
    assert "RRULE" not in second
    assert second["DTSTART"].dt == date(2028, 2, 29)
    assert second["DESCRIPTION"] == "A; b, c\nd"
    assert not [part.errors for part in calendar.walk() if part.errors]


@given(name=WORDS, title=WORDS, words=WORDS)
def test_any_words_come_back_and_no_line_is_too_long(name: str, title: str, words: str) -> None:
    content = write_ics(name, (Event(DAY, title, words),), drawn_up=DAY)
    assert all(len(line) <= FOLDED_AT for line in content.split(b"\r\n"))
    assert b"\n" not in content.replace(b"\r\n", b"")
    (event,) = read(content).walk("VEVENT")
    assert event["SUMMARY"] == title
    assert event.get("DESCRIPTION", "") == words


def test_events_have_names_of_their_own_that_stay() -> None:
    events = [Event(DAY, "a"), Event(DAY, "b"), Event(date(2027, 1, 1), "a")]
    names = [str(one["UID"]) for one in read(write_ics("h", events, drawn_up=DAY)).walk("VEVENT")]
    assert len(set(names)) == 3
    later = read(write_ics("h", events, drawn_up=date(2027, 5, 5))).walk("VEVENT")
    assert [str(one["UID"]) for one in later] == names

"""When the sun disturbs a detector: a calendar, and the dates and clock hours in words."""

from __future__ import annotations

from datetime import date, timedelta

from wardwright.documents.content.names import Names
from wardwright.documents.drawing.calendar import Kind, Stretch, calendar_of_sun
from wardwright.documents.drawing.recording import Drawing
from wardwright.questions.answer import Answer
from wardwright.questions.sunshine import Spell, Sunshine

YEAR = 2026
"""Any year of 365 days: only its days and months are told."""
ONTO = {"lens": "straight on its lens", "view": "on floor in its view"}
WHOLE_YEAR_DAYS = 363
"""A spell this long is all year. [d]"""


def sun_calendar(answer: Answer, *, key: str) -> Drawing | None:
    """Draw the calendar of the sun on a detector.

    Parameters
    ----------
    answer : Answer
        To question 9.
    key : str
        Unique on the page.

    Returns
    -------
    Drawing or None
        None where no sun shines on it.
    """
    stretches = tuple(
        Stretch(_kind(one), day, start, end)
        for one in answer.sunshine
        for day, start, end in zip(one.days, one.starts_min, one.ends_min, strict=True)
    )
    if not stretches:
        return None
    return calendar_of_sun(
        stretches,
        key=key,
        title=f"The sun on {answer.subject}, day by day",
        description="Days of the year across, hours by the clock up: where it is solid the sun shines straight on "
        "the lens, where it is hatched it lies on floor in view, a dotted edge is what a curtain or blind keeps out.",
    )


def _kind(one: Sunshine) -> Kind:
    return "covered" if one.is_covered else one.onto


def sun_words(answer: Answer, names: Names) -> tuple[str, ...]:
    """Say when the sun shines, pane by pane, those on the lens first; what a covering keeps out is left out.

    Parameters
    ----------
    answer : Answer
        To question 9.
    names : Names
        What people call the openings.

    Returns
    -------
    tuple of str
        Sentences; empty for an answer that no sun is in.
    """
    told = [one for one in answer.sunshine if not one.is_covered]
    told.sort(key=lambda one: (one.onto != "lens", -one.minutes, one.opening))
    return tuple(
        f"Through {names.of(one.opening)} {ONTO[one.onto]}: {'; '.join(map(spell_words, one.spells))}."
        for one in told
    )


def spell_words(spell: Spell) -> str:
    """A spell in words.

    Examples
    --------
    >>> spell_words(Spell(first_day=70, last_day=90, from_min=372.0, to_min=410.0))
    '12 March to 1 April, between 06:12 and 06:50'
    """
    hours = f"between {_clock(spell.from_min)} and {_clock(spell.to_min)}"
    if spell.last_day - spell.first_day >= WHOLE_YEAR_DAYS:
        return f"all year, {hours}"
    if spell.first_day == spell.last_day:
        return f"{_day(spell.first_day)}, {hours}"
    return f"{_day(spell.first_day)} to {_day(spell.last_day)}, {hours}"


def _day(day: int) -> str:
    when = date(YEAR, 1, 1) + timedelta(days=day)
    return f"{when.day} {MONTH_NAMES[when.month - 1]}"


MONTH_NAMES = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip


def _clock(minutes: float) -> str:
    whole = round(minutes) % 1440
    return f"{whole // 60:02d}:{whole % 60:02d}"

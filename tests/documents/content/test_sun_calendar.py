"""The sun's dates and hours in words."""

from __future__ import annotations

from wardwright.documents.content.names import Names
from wardwright.documents.content.sun_calendar import spell_words, sun_calendar, sun_words
from wardwright.questions.answer import Answer, unanswered
from wardwright.questions.sunshine import Onto, Spell, Sunshine

MARCH = Spell(first_day=59, last_day=89, from_min=390.0, to_min=424.6)


def shine(onto: Onto, opening: str, minutes: float, *, is_covered: bool = False) -> Sunshine:
    return Sunshine(
        onto=onto, opening=opening, is_covered=is_covered, minutes=minutes, spells=(MARCH,),
        days=(59, 60), starts_min=(390.0, 392.0), ends_min=(420.0, 424.6),
    )  # fmt: skip


def answer(*sunshine: Sunshine) -> Answer:
    return unanswered(9, "sun", subject="Hall", subject_id="hall", reason="none").model_copy(
        update={"sunshine": sunshine}
    )


def test_a_spell_is_told_in_days_and_clock_hours() -> None:
    assert spell_words(MARCH) == "1 March to 31 March, between 06:30 and 07:05"
    one_day = MARCH.model_copy(update={"last_day": 59})
    assert spell_words(one_day) == "1 March, between 06:30 and 07:05"
    over = Spell(first_day=350, last_day=9, from_min=600.0, to_min=660.0)
    assert spell_words(over) == "17 December to 10 January, between 10:00 and 11:00"
    assert spell_words(Spell(first_day=0, last_day=364, from_min=600.0, to_min=660.0)).startswith("all year")


def test_the_lens_comes_first_and_what_a_blind_keeps_out_is_not_said() -> None:
    names = Names({"tall": "Tall window", "side": "Side window"})
    told = answer(
        shine("view", "tall", 900.0), shine("lens", "side", 30.0), shine("lens", "hid", 9.0, is_covered=True)
    )
    assert sun_words(told, names) == (
        "Through Side window straight on its lens: 1 March to 31 March, between 06:30 and 07:05.",
        "Through Tall window on floor in its view: 1 March to 31 March, between 06:30 and 07:05.",
    )


def test_there_is_a_calendar_only_where_there_is_sun() -> None:
    assert sun_calendar(answer(), key="k") is None
    drawing = sun_calendar(answer(shine("lens", "side", 30.0)), key="k")
    assert drawing is not None
    assert drawing.title == "The sun on Hall, day by day"

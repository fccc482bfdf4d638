"""Every question has its words."""

from __future__ import annotations

from wardwright.documents.content.question_words import QUESTION_HEADINGS, QUESTION_SHORT
from wardwright.questions.table import QUESTIONS


def test_every_question_of_the_table_has_a_short_name_and_a_heading() -> None:
    numbers = {question.number for question in QUESTIONS}
    assert set(QUESTION_SHORT) == set(QUESTION_HEADINGS) == numbers

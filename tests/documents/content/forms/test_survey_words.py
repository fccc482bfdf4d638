from __future__ import annotations

from wardwright.documents.content.forms.survey_words import ENQUIRY, OUTSIDE, TECHNICAL


def test_nothing_is_asked_twice_and_nobody_is_asked_when_they_are_away() -> None:
    asked = (*ENQUIRY, *OUTSIDE, *TECHNICAL)
    assert len(set(asked)) == len(asked)
    assert not [one for one in asked if "holiday" in one or "away" in one or "code" in one.split()]

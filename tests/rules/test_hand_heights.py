"""Spans of heights, who says them, and the height that suits them all."""

from __future__ import annotations

from common.houses import CATALOGUE, person, two_rooms_and_hall
from wardwright.model.device_sheets import ButtonSheet
from wardwright.rules.hand_heights import Span, best_height, of_limits, of_people, of_sheet


def test_a_sheet_may_be_silent_or_half_silent() -> None:
    assert of_sheet(None) == of_sheet(ButtonSheet()) == ()
    (span,) = of_sheet(ButtonSheet(height_high_m=1.4))
    assert (span.low_m, span.high_m, span.severity) == (0.0, 1.4, "must mend")


def test_the_shortest_reach_of_the_household_counts_and_children_do_not() -> None:
    people = (person("Mother"), person("Grandmother", pace="slow"), person("Tom", is_child=True))
    (span,) = of_people(two_rooms_and_hall(people=people), CATALOGUE)
    assert (span.low_m, span.high_m) == (0.7, 1.2)
    assert span.words == "Grandmother reaches with ease"
    assert of_people(two_rooms_and_hall(people=people[2:]), CATALOGUE) == ()


def test_english_and_american_figures_are_as_grave_as_they_are_known() -> None:
    spans = [
        of_limits(
            CATALOGUE.limit("control-height-least", pack), CATALOGUE.limit("control-height-most", pack)
        )[0]
        for pack in ("uk-eu", "us")
    ]
    assert [(one.low_m, one.high_m, one.severity) for one in spans] == [
        (0.45, 1.2, "check with the standard"),
        (0.38, 1.22, "advise"),
    ]


def test_a_span_that_cannot_be_had_with_the_ones_before_is_left_out() -> None:
    spans = (Span(1.3, 1.5, "", "must mend"), Span(0.5, 1.2, "", "advise"), Span(0.0, 1.4, "", "advise"))
    assert best_height(spans, 2.0) == 1.4
    assert spans[0].holds(1.3)
    assert not spans[0].holds(1.29)

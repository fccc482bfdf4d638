"""What question 14 draws."""

from __future__ import annotations

import pytest

from common.climb_house import LIMITS, box, house
from common.houses import CATALOGUE
from wardwright.questions.climb_sketches import climb_sketches
from wardwright.questions.reach_from_outside import answers
from wardwright.trials.climbs import climb_to


def test_a_line_over_the_roof_and_the_height_of_each_step() -> None:
    site = house(box("roof", 5.9, 2.0, 2.3))
    sketches = climb_sketches(site.bare, site.openings[0], climb_to(site.bare, site.openings[0], LIMITS))
    line, *steps = sketches
    assert (line.role, line.storey, len(line.rings)) == ("climb", "first", 1)
    assert line.points[0] == pytest.approx((5.9, 2.0))
    assert [step.label for step in steps] == ["roof 2.3 m", "3.8 m"]
    assert all(step.role == "climb-step" for step in steps)


def test_where_nothing_is_climbed_only_the_height_of_the_opening() -> None:
    (answer,) = (one for one in answers(house(), CATALOGUE) if one.subject_id == "window")
    assert [sketch.role for sketch in answer.sketches] == ["climb-step"]


def test_a_wall_drawn_as_a_line_has_no_ring() -> None:
    site = house(
        box("wall", 5.9, 2.0, 2.3, kind="wall").model_copy(update={"outline_m": ((5.6, 0.0), (5.6, 4.0))})
    )
    line, *_ = climb_sketches(site.bare, site.openings[0], climb_to(site.bare, site.openings[0], LIMITS))
    assert (line.points[0], line.rings) == ((5.6, 2.0), ())

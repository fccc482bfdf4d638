"""When the sun shines, put together from steps."""

from __future__ import annotations

import numpy as np

from wardwright.physics.sunlight.shine import Beam, Sun
from wardwright.physics.sunlight.year import Year
from wardwright.questions.sunshine import sunshine


def shining(days: list[int], minutes: list[float], *, shift: float = 0.0) -> tuple[Sun, Beam]:
    count = len(days)
    new = (np.diff(days, prepend=-1) != 0) | (np.diff(minutes, prepend=0.0) != 2.0)
    year = Year(
        np.array(days),
        np.array(minutes),
        np.full(count, 0.2),
        np.full(count, 1.0),
        2.0,
        np.nonzero(new)[0],
    )
    beam = Beam(opening="pane", is_covered=False, steps=np.arange(count), bearings=np.zeros(count))
    return Sun(year, np.full(365, shift), "Europe/London", 0.0), beam


def test_steps_one_after_another_are_one_stretch_by_the_clock() -> None:
    found = sunshine(*shining([3, 3, 3, 4], [480.0, 482.0, 484.0, 480.0], shift=60.0), onto="lens")
    assert found.days == (3, 4)
    assert found.starts_min == (539.0, 539.0)
    assert found.ends_min == (545.0, 541.0)
    assert found.minutes == 8.0
    (spell,) = found.spells
    assert (spell.first_day, spell.last_day, spell.from_min, spell.to_min) == (3, 4, 539.0, 545.0)


def test_a_break_in_a_day_makes_two_stretches_and_one_in_the_year_two_spells() -> None:
    found = sunshine(*shining([3, 3, 40], [480.0, 500.0, 480.0]), onto="view")
    assert found.days == (3, 3, 40)
    assert [(one.first_day, one.last_day) for one in found.spells] == [(3, 3), (40, 40)]


def test_a_spell_goes_over_the_turn_of_the_year() -> None:
    found = sunshine(*shining([2, 100, 361], [480.0, 500.0, 470.0]), onto="view")
    assert [(one.first_day, one.last_day) for one in found.spells] == [(361, 2), (100, 100)]
    assert found.spells[0].from_min == 469.0

"""The year at a place and its order before a wall."""

from __future__ import annotations

import math

import numpy as np

from wardwright.physics.sunlight.orders import THIN_DAYS, THIN_STEP_MIN, order_at, year_at
from wardwright.physics.sunlight.year import DAYS, facing

PLACE = (51.5, -3.0)


def test_the_thinned_year_has_some_days_and_some_steps() -> None:
    thin = year_at(*PLACE, is_thin=True)
    assert set(thin.day.tolist()) == set(range(0, DAYS, THIN_DAYS))
    assert set(np.unique(thin.minute % THIN_STEP_MIN).tolist()) == {0.0}
    assert thin.step_min == THIN_STEP_MIN * THIN_DAYS


def test_a_wall_that_may_face_two_ways_has_the_steps_of_both() -> None:
    thin = year_at(*PLACE, is_thin=True)
    both = order_at(PLACE, (170.0, 260.0), spread=0.0, is_thin=True)
    assert (np.diff(both.turn) >= 0.0).all()
    for place, azimuth in enumerate((170.0, 260.0)):
        alone = facing(thin, math.radians(azimuth), spread=0.0)
        part = both.steps // len(thin.day) == place
        one, other = np.argsort(both.steps[part]), np.argsort(alone.steps)
        assert (both.steps[part][one] % len(thin.day) == alone.steps[other]).all()
        for name in ("turn", "profile", "lowest", "highest", "bins"):
            assert (getattr(both, name)[part][one] == getattr(alone, name)[other]).all()


def test_it_is_remembered() -> None:
    one = order_at(PLACE, (170.0,), spread=0.0, is_thin=True)
    assert order_at(PLACE, (170.0,), spread=0.0, is_thin=True) is one
    assert order_at(PLACE, (170.0,), spread=0.0, is_thin=False) is not one

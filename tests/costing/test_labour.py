"""How long the work takes."""

from __future__ import annotations

import numpy as np
import pytest

from common.houses import one_room
from common.priced_room import priced_room
from wardwright.costing.labour import labour_of, likely_minutes
from wardwright.costing.tasks import tasks_of
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def test_without_a_device_there_is_no_work() -> None:
    assert labour_of(one_room(), CATALOGUE) is None


def test_the_phases_make_the_whole_and_all_of_it_has_a_range() -> None:
    labour = labour_of(priced_room(), CATALOGUE)
    assert labour is not None
    assert labour.hours.value == pytest.approx(sum(labour.likely_min(one) for one in labour.by_phase) / 60)
    assert labour.hours.low < labour.hours.value < labour.hours.high
    assert labour.hours.drivers
    assert np.all(labour.minutes > 0)


def test_likely_minutes_are_those_of_the_tasks_and_the_spare_time() -> None:
    """176 min on site, 5 % spare, 60 min of survey, 42 of preparing, four journeys of 30 min."""
    labour = labour_of(priced_room(), CATALOGUE)
    assert labour is not None
    plain = likely_minutes(tasks_of(priced_room(), CATALOGUE), CATALOGUE)
    assert plain == pytest.approx(176 + 60 + 42)
    assert labour.minutes[0] == pytest.approx(plain + 0.05 * 176 + 120)


def test_a_job_of_more_than_a_day_is_travelled_to_again() -> None:
    one, two = labour_of(priced_room(), CATALOGUE), labour_of(read_sample("bungalow"), CATALOGUE)
    assert one is not None
    assert two is not None
    assert (one.days, one.journeys) == (1, 4)
    assert two.days > 1
    assert two.journeys == 2 + 2 * two.days

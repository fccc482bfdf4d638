"""Times of the programme: told or not, in range or not."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, one_room, zone
from wardwright.errors import NotComputable
from wardwright.model.programme import Programme
from wardwright.rules.limits import limit_for
from wardwright.rules.programme.entry_time_outside_its_range import entry_time_outside_its_range as rule
from wardwright.rules.programme_times import behaviours_used, out_of_range, told_time


def test_a_default_time_was_decided_by_nobody() -> None:
    with pytest.raises(NotComputable, match="nobody told the entry time"):
        told_time(one_room(), "entry_time_s", words="entry time")
    assert (
        told_time(one_room(programme=Programme(entry_time_s=30.0)), "entry_time_s", words="entry time")
        == 30.0
    )


def test_zones_come_in_the_order_of_their_numbers() -> None:
    site = one_room(zones=(zone(2, "b", behaviour="instant"), zone(1, "a", behaviour="fire")))
    assert [(one.number, behaviour.id) for one, behaviour in behaviours_used(site)] == [
        (1, "fire"),
        (2, "instant"),
    ]
    with pytest.raises(NotComputable, match="no zone is programmed"):
        behaviours_used(one_room())


@pytest.mark.parametrize(("value", "limits"), [(29.0, [30.0]), (30.0, []), (45.0, []), (46.0, [45.0])])
def test_the_mend_is_the_nearest_time_in_range(value: float, limits: list[float]) -> None:
    site = one_room(programme=Programme(entry_time_s=value))
    least = limit_for(CATALOGUE, "entry-time-most", site).model_copy(update={"value": 30.0})
    most = limit_for(CATALOGUE, "entry-time-most", site)
    found = list(
        out_of_range(rule, site, CATALOGUE, field="entry_time_s", words="entry time", least=least, most=most)
    )
    assert [one.limit for one in found] == limits
    assert [one.mends[0].values for one in found] == [(("entry_time_s", limit),) for limit in limits]

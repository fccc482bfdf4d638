"""PRG101: 45 s in Europe, 30 to 240 s in America."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, one_room, zone
from common.rule_houses.programme import BRITISH, US, timed
from wardwright.model.place import Place
from wardwright.rules.programme.entry_time_outside_its_range import entry_time_outside_its_range as rule
from wardwright.rules.registry import findings_of


@pytest.mark.parametrize(
    ("place", "time_s", "limit"),
    [(BRITISH, 45.5, 45.0), (BRITISH, 10.0, None), (US, 29.0, 30.0), (US, 60.0, None), (US, 241.0, 240.0)],
)
def test_each_pack_has_its_own_range(place: Place, time_s: float, limit: float | None) -> None:
    found = findings_of(rule, timed(place, entry_time_s=time_s), CATALOGUE)
    assert [(one.limit, one.severity) for one in found] == [(limit, "check with the standard")] * (
        limit is not None
    )
    for one in found:
        assert one.estimate is not None
        assert one.estimate.value == time_s
        assert dict(one.mends[0].values) == {"entry_time_s": limit}


def test_where_no_zone_starts_it_there_is_nothing_to_check() -> None:
    (found,) = findings_of(rule, one_room(zones=(zone(1, "Living movement", "fan"),)), CATALOGUE)
    assert (found.severity, found.message) == ("not run", "no zone starts the entry time")

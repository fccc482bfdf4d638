"""FIR109: 1 to 3 m in Britain, at least 15 ft in America."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, one_room
from common.rule_houses.fire import US, hung, thing
from common.rule_houses.glass import long_room
from wardwright.rules.fire.co_alarm_at_the_wrong_distance_from_its_appliance import (
    co_alarm_at_the_wrong_distance_from_its_appliance as rule,
)
from wardwright.rules.registry import findings_of

BRITAIN: dict[str, Any] = {}
AMERICA: dict[str, Any] = {"place": US}


@pytest.mark.parametrize(
    ("pack", "x", "limit"),
    [
        (BRITAIN, 1.74, 1.0),
        (BRITAIN, 1.75, None),
        (BRITAIN, 3.75, None),
        (BRITAIN, 3.76, 3.0),
        (AMERICA, 3.76, 4.6),
        (AMERICA, 5.36, None),
    ],
)
def test_the_pack_decides(pack: dict[str, Any], x: float, limit: float | None) -> None:
    """The stove's edge is at x 0.75."""
    site = long_room(fixtures=(thing("stove", 0.5, 2.0),), devices=(hung("co", "co", x, 2.0),), **pack)
    found = findings_of(rule, site, CATALOGUE)
    assert [one.limit for one in found] == ([] if limit is None else [limit])
    for one in found:
        assert one.estimate is not None
        assert one.estimate.value == pytest.approx(x - 0.75)
        assert one.severity == "check with the standard"


def test_in_america_a_cooker_keeps_5_feet() -> None:
    site = one_room(
        fixtures=(thing("appliance", 0.5, 2.0, "Hob"),), devices=(hung("co", "co", 1.5, 2.0),), place=US
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.limit == 1.5


def test_without_what_burns_it_cannot_be_run() -> None:
    (found,) = findings_of(rule, one_room(devices=(hung("co", "co", 1.5, 2.0),)), CATALOGUE)
    assert found.severity == "not run"

"""FIR104: below a ceiling of 2.4 m, by kind and pack."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room, opening
from common.rule_houses.fire import US, hung
from wardwright.model.place import Place
from wardwright.rules.fire.alarm_height_outside_its_range import alarm_height_outside_its_range as rule
from wardwright.rules.registry import findings_of


@pytest.mark.parametrize(
    ("sheet", "height_m", "place", "limit"),
    [
        ("smoke", 1.79, Place(), 0.6),
        ("smoke", 1.8, Place(), None),
        ("smoke", 2.38, Place(), 0.025),
        ("smoke", 2.0, US, 0.3),
        ("heat", 2.2, Place(), 0.15),
        ("heat", 2.3, Place(), None),
        ("co", 2.3, Place(), 0.15),
        ("co", 2.2, Place(), None),
    ],
)
def test_each_kind_has_its_own_range(sheet: str, height_m: float, place: Place, limit: float | None) -> None:
    site = one_room(devices=(on_wall("alarm", sheet, "south", 2.65, height_m=height_m),), place=place)
    found = findings_of(rule, site, CATALOGUE)
    assert [one.limit for one in found] == ([] if limit is None else [limit])
    for one in found:
        assert one.estimate is not None
        assert one.estimate.value == pytest.approx(2.4 - height_m)
        assert dict(one.mends[0].values)["height_m"] == pytest.approx(2.4 - (limit or 0.0))


def test_a_co_alarm_stays_above_the_heads_of_doors() -> None:
    site = one_room(
        devices=(on_wall("co", "co", "south", 1.0, height_m=1.9),), openings=(opening("door", "north", 2.65),)
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert "below the head of a door or window" in found.message


def test_on_a_ceiling_all_is_well() -> None:
    assert (
        findings_of(
            rule, one_room(devices=(hung("s", "smoke", 2.0, 2.0), hung("c", "co", 3.0, 2.0))), CATALOGUE
        )
        == ()
    )

"""PRG108: people and keyfobs, and zones, against the control unit's sheet."""

from __future__ import annotations

from common.houses import CATALOGUE, on_wall, sheet, standing_free, zone
from common.rule_houses.programme import users
from wardwright.rules.programme.more_users_or_zones_than_the_control_unit_has import (
    more_users_or_zones_than_the_control_unit_has as rule,
)
from wardwright.rules.registry import findings_of

WITH_FOBS = CATALOGUE.model_copy(update={"sheets": (*CATALOGUE.sheets, sheet("keyfob", "keyfob"))})
UNIT = on_wall("unit", "unit", "south", 2.65, height_m=1.5)


def test_a_keyfob_counts_as_a_user() -> None:
    fob = standing_free("fob", "keyfob", 2.0, 2.0)
    site = users(16).model_copy(update={"devices": (UNIT, fob)})
    (found,) = findings_of(rule, site, WITH_FOBS)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit, found.severity) == (17.0, 16.0, "must mend")
    assert found.mends[0].values == (("sheet", "unit-with-room"),)


def test_zones_are_counted_too() -> None:
    site = users(2, zones=tuple(zone(i, f"Zone {i}", behaviour="instant") for i in range(1, 34)))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert (found.limit, found.message) == (32.0, "unit: it has room for 32 zones, and 33 are planned")


def test_where_no_unit_is_large_enough_there_is_no_mend() -> None:
    (found,) = findings_of(rule, users(41), CATALOGUE)
    assert found.mends == ()

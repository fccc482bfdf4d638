"""The sun that something smooth throws on a detector."""

from __future__ import annotations

from common.houses import CATALOGUE, one_room
from common.rule_houses.sunlight import LONDON, LOOKING_WEST, POLISHED, SOUTH
from wardwright.rules.sun_thrown import thrown_on


def test_only_what_lies_in_its_fan_counts() -> None:
    site = one_room(devices=(LOOKING_WEST,), openings=(SOUTH,), place=LONDON, spaces=POLISHED)
    ((thing, beam),) = thrown_on(site, CATALOGUE, LOOKING_WEST)
    assert (thing.id, beam.opening) == ("living", "south-window")
    away = LOOKING_WEST.model_copy(update={"heading_deg": 130.0})
    assert sum(len(one.steps) for _, one in thrown_on(site, CATALOGUE, away)) < len(beam.steps)


def test_a_covered_pane_throws_nothing() -> None:
    covered = SOUTH.model_copy(update={"covering": "curtain"})
    site = one_room(devices=(LOOKING_WEST,), openings=(covered,), place=LONDON, spaces=POLISHED)
    assert thrown_on(site, CATALOGUE, LOOKING_WEST) == ()

"""Races that a reader can do by hand: each says its arithmetic."""

from __future__ import annotations

import pytest

from common.straight_houses import contact_on, straight_house, unit_at
from hand_worked.intruders import INTRUDERS, Intruder
from wardwright.errors import NotComputable
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.alarm import alarm_of
from wardwright.trials.likely_race import likely_race
from wardwright.trials.race import Race, race
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import WayIn, ways_in
from wardwright.trials.ways_on_foot import spot_of

CATALOGUE = load_catalogue()


def way_of(one: Intruder) -> WayIn:
    found = (w for w in ways_in(one.site, CATALOGUE)[0] if (w.opening.id, w.manner) == one.way)
    return next(found)


def goal_of(one: Intruder) -> Spot:
    return spot_of(one.site, control_units(one.site, CATALOGUE)[0])


def run(one: Intruder) -> Race:
    return race(one.site, CATALOGUE, way=way_of(one), goal=goal_of(one), part=one.part)


@pytest.mark.parametrize("one", INTRUDERS, ids=lambda one: one.name)
def test_the_race_is_as_by_hand(one: Intruder) -> None:
    """First device, notice, sounder, message, at the unit, unit broken; within what the case says, and why."""
    found = run(one)
    assert found.first_watcher == one.first, one.working
    assert found.sounder is not None
    told = [found.first_notice, found.sounder, found.message, found.reached, found.broken]
    expected = [one.notice, one.sounder, one.message, one.reached, one.broken]
    assert [float(row[0]) for row in told] == pytest.approx(expected, abs=one.tolerance), one.working


@pytest.mark.parametrize("one", INTRUDERS, ids=lambda one: one.name)
def test_the_likely_race_alone_is_the_same(one: Intruder) -> None:
    """The short form that choices are made by."""
    found = likely_race(
        one.site.bare, CATALOGUE, alarm_of(one.site, CATALOGUE, one.part), way=way_of(one), goal=goal_of(one)
    )
    told = [found.sounder, found.message, found.reached, found.broken]
    assert told == pytest.approx([one.sounder, one.message, one.reached, one.broken], abs=one.tolerance)


def test_no_stairs_no_race() -> None:
    """A unit on a storey that nothing leads to: not computable, not lost and not won."""
    kit = [(unit_at(10.0, storey="upper"), ""), (contact_on("front-door"), "instant")]
    site = straight_house(upper={}, kit=kit)
    way = next(w for w in ways_in(site, CATALOGUE)[0] if w.opening.id == "front-door")
    with pytest.raises(NotComputable, match="no way on foot"):
        race(site, CATALOGUE, way=way, goal=Spot("upper", 2.0, 10.0))


def test_there_are_at_least_twenty() -> None:
    assert len({one.name for one in INTRUDERS}) == len(INTRUDERS) >= 20

"""The tables of a house: legs that agree with the walking and detection engines, leg by leg."""

from __future__ import annotations

import math

import numpy as np
import pytest

from common.houses import CATALOGUE
from common.small_campaign import watched_hall
from wardwright.trials.campaign.ground import doors_otherwise
from wardwright.trials.campaign.legs import REACHES, STEP_M, SURELY_M
from wardwright.trials.campaign.setting import setting_of
from wardwright.trials.race import race
from wardwright.trials.ways_on_foot import on_foot

SITE = watched_hall()
SETTING = setting_of(SITE, CATALOGUE)
GROUND = SETTING.ground


def test_the_last_place_of_a_leg_is_its_goal() -> None:
    """Metres and doors at the end of each leg from a way in are those of the fastest way on foot."""
    for number, way in enumerate(SETTING.ways):
        for to, goal in enumerate(SETTING.goals):
            leg = int(GROUND.starts[number]) * GROUND.goals + to
            first = race(SITE, CATALOGUE, way=way, goal=goal.spot).course.foot
            end = int(GROUND.last[0, leg])
            assert GROUND.flat[end] == pytest.approx(first.progress.flat[-1])
            assert GROUND.doors[end] == first.progress.doors[-1]
            places = end - int(GROUND.first[0, leg]) + 1
            assert places == math.ceil(first.progress.plan[-1] / STEP_M - 1e-9) + 1


def test_no_way_leads_from_a_place_to_itself() -> None:
    sources = GROUND.first.shape[1] // GROUND.goals
    for number in range(GROUND.goals):
        leg = (sources - GROUND.goals + number) * GROUND.goals + number
        assert GROUND.last[:, leg].tolist() == [-1, -1]


def test_noticing_is_the_races() -> None:
    """In the usual room at a hurried pace, each detector notices where the race has it."""
    for number, way in enumerate(SETTING.ways):
        found = race(SITE, CATALOGUE, way=way, goal=SETTING.goals[0].spot)
        leg = int(GROUND.starts[number]) * GROUND.goals
        whole = GROUND.noticed[0, 0, 0, :, leg, REACHES.index(1.0)]
        if found.first_watcher in SETTING.who.movement:
            place = whole[list(SETTING.who.movement).index(found.first_watcher)]
            walked = found.course.foot.progress.plan
            assert found.first_index is not None
            assert walked[found.first_index] >= place - STEP_M
        assert whole.shape == (2,)


def test_a_warmer_room_and_a_shorter_reach_notice_no_sooner() -> None:
    """Over all legs: contrast falls from room to room, and each reach lies within the next."""
    noticed = np.minimum(GROUND.noticed, 1e9)
    assert (np.diff(noticed, axis=5) <= 1e-9).all()
    for room in range(1, noticed.shape[2]):
        assert (noticed[:, :, room] >= noticed[:, :, room - 1] - 1e-9).all()


def test_surely_is_a_walk_inside_the_shape() -> None:
    """Never before 1.5 m of the leg are behind one, unless it is never."""
    some = GROUND.surely[np.isfinite(GROUND.surely)]
    assert some.size
    assert (some >= SURELY_M - 1e-9).all()


def test_a_contact_tells_where_its_leaf_is_opened() -> None:
    """The window's contact notices its way in at once; no leg opens a door that has one."""
    contacts = list(SETTING.who.at_openings)
    window = [way.opening.id for way in SETTING.ways].index("kitchen-window")
    assert GROUND.at_once[contacts.index("window-contact"), window]
    assert not GROUND.at_once[contacts.index("front-contact"), window]
    assert (GROUND.opened == -1).all()


def test_doors_otherwise_turns_inside_doors_only() -> None:
    """Shut stands open and the other way round; ways in stay; a second time gives the first again."""
    other = doors_otherwise(SITE.bare)
    states = {one.id: one.habit for one in other.openings}
    assert states["kitchen-door"] == states["study-door"] == "open"
    assert states["front-door"] == "shut"
    assert {one.id: one.habit for one in doors_otherwise(other).openings} == {
        one.id: one.habit for one in SITE.openings
    }
    # A door that stands open costs no time: fewer doors on each leg.
    assert (GROUND.doors[GROUND.last[1]] <= GROUND.doors[GROUND.last[0]]).all()


def test_rooms_that_are_always_one_temperature() -> None:
    """A warm room no warmer than the usual one leaves one temperature."""
    place = SITE.place.model_copy(update={"warm_room_c": 20.0, "usual_room_c": 20.0})
    assert setting_of(SITE.model_copy(update={"place": place}), CATALOGUE).ground.rooms_c == (20.0,)


def test_legs_are_ways_on_foot() -> None:
    """From the window to each goal there is one, and the tables know it."""
    for to, goal in enumerate(SETTING.goals):
        start = race(
            SITE, CATALOGUE, way=SETTING.ways[0], goal=SETTING.goals[0].spot
        ).course.foot.route.points[0]
        assert len(start) == 2
        assert goal.spot.storey == "ground"
        leg = int(GROUND.starts[0]) * GROUND.goals + to
        assert GROUND.last[0, leg] >= 0
    assert on_foot(SITE.bare, CATALOGUE, start=SETTING.goals[0].spot, goal=SETTING.goals[1].spot) is not None

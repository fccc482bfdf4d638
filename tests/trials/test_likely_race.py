"""The likely case alone is the first row of the race run whole, whatever the alarm."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.worked_terrace import UNDER_STAIRS, UPSTAIRS, worked_terrace
from wardwright.errors import NotComputable
from wardwright.model.device import WallMount
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.alarm import Alarm, alarm_of
from wardwright.trials.likely_race import likely_race
from wardwright.trials.race import race_against
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import WayIn, ways_in
from wardwright.trials.ways_on_foot import spot_of

CATALOGUE = load_catalogue()
PLACES = {
    "hall": (WallMount(wall="ground-back", side="left", offset_m=7.8, height_m=2.2), -60.0),
    "kitchen": (WallMount(wall="ground-cross", side="left", offset_m=5.7, height_m=2.2), 135.0),
    "landing": (WallMount(wall="upper-left", side="left", offset_m=1.0, height_m=2.2), 0.0),
}
BEHAVIOURS = ("instant", "instant-delayed", "entry-exit", "entry-route", "log-only")
OPENINGS = ("front-door", "kitchen-door", "kitchen-window")
GOALS = tuple(Spot(mount.storey, *mount.at_m) for mount in (UNDER_STAIRS, UPSTAIRS))


def assert_alike(site: Site, alarm: Alarm, *, way: WayIn, goal: Spot) -> None:
    likely = likely_race(site.bare, CATALOGUE, alarm, way=way, goal=goal)
    whole = race_against(site.bare, CATALOGUE, alarm, way=way, goal=goal)
    assert likely.reached == float(whole.reached[0])
    assert likely.broken == float(whole.broken[0])
    assert likely.message == float(whole.message[0])
    assert (likely.sounder is None) == (whole.sounder is None)
    if whole.sounder is not None:
        assert likely.sounder == float(whole.sounder[0])


@given(
    st.dictionaries(st.sampled_from(OPENINGS), st.sampled_from(BEHAVIOURS), max_size=3),
    st.dictionaries(st.sampled_from(sorted(PLACES)), st.sampled_from(BEHAVIOURS), max_size=3),
    st.sampled_from([0.0, 20.0]),
)
def test_any_alarm_on_any_way(contacts: dict[str, str], movement: dict[str, str], abort: float) -> None:
    chosen: dict[str, Any] = {name: (*PLACES[name], behaviour) for name, behaviour in movement.items()}
    site = worked_terrace(contacts=contacts, movement=chosen, abort_delay_s=abort)
    for way in ways_in(site, CATALOGUE)[0]:
        for goal in GOALS:
            assert_alike(site, alarm_of(site, CATALOGUE), way=way, goal=goal)


@given(st.lists(st.sampled_from(BEHAVIOURS), min_size=2, max_size=4), st.sampled_from([0.0, 20.0]))
def test_contacts_that_are_opened_at_one_moment(behaviours: list[str], abort: float) -> None:
    site = worked_terrace(contacts={"front-door": "instant"}, abort_delay_s=abort)
    known = {one.id: one for one in site.behaviours}
    contact = site.device("front-door-contact")
    heard = tuple(
        (contact.model_copy(update={"id": f"contact-{number}"}), known[behaviour])
        for number, behaviour in enumerate(behaviours)
    )
    alarm = alarm_of(site, CATALOGUE)._replace(heard=heard)
    way = next(one for one in ways_in(site, CATALOGUE)[0] if one.opening.id == "front-door")
    assert_alike(site, alarm, way=way, goal=GOALS[0])


@pytest.mark.parametrize("sample", ["terrace", "terrace-better", "one-room"])
def test_the_samples(sample: str) -> None:
    site = read_sample(sample)
    for unit in control_units(site, CATALOGUE):
        for way in ways_in(site, CATALOGUE)[0]:
            assert_alike(site, alarm_of(site, CATALOGUE), way=way, goal=spot_of(site, unit))


def test_nothing_heard_never_rings() -> None:
    site = worked_terrace(contacts={})
    way = ways_in(site, CATALOGUE)[0][0]
    likely = likely_race(site.bare, CATALOGUE, alarm_of(site, CATALOGUE), way=way, goal=GOALS[0])
    assert math.isinf(likely.message)
    assert np.isfinite(likely.reached)


def test_a_goal_that_cannot_be_walked_to_is_said_so() -> None:
    site = worked_terrace(contacts={})
    way = ways_in(site, CATALOGUE)[0][0]
    no_stairs = site.model_copy(update={"stairs": ()}).bare
    with pytest.raises(NotComputable, match="no way on foot from front door"):
        likely_race(no_stairs, CATALOGUE, alarm_of(site, CATALOGUE), way=way, goal=GOALS[1])

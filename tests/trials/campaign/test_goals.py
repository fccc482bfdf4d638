"""Where intruders go: the control unit, and targets by their place or by their room."""

from __future__ import annotations

from common.houses import CATALOGUE, two_rooms_and_hall
from common.small_campaign import watched_hall
from wardwright.trials.campaign.goals import UNIT, goals_of
from wardwright.trials.campaign.setting import setting_of
from wardwright.trials.ways_in import ways_in


def test_a_target_without_a_place_is_where_its_room_is_come_to_first() -> None:
    """From the first way in: the front door, so just inside the kitchen's door at y = 4."""
    tools = next(goal for goal in setting_of(watched_hall(), CATALOGUE).goals if goal.id == "target tools")
    assert 3.4 < tools.spot.x < 4.0
    assert 3.0 < tools.spot.y < 5.0


def test_a_bare_house_has_nothing_to_go_for() -> None:
    site = two_rooms_and_hall()
    assert goals_of(site, CATALOGUE, ways_in(site, CATALOGUE)[0]) == ()


def test_a_target_with_a_place_is_there() -> None:
    site = watched_hall()
    found = {goal.id: goal for goal in goals_of(site, CATALOGUE, ways_in(site, CATALOGUE)[0])}
    assert found["target silver"].spot == ("ground", 9.5, 5.0)
    assert found[UNIT].target is None


def test_an_unplaced_target_without_any_way_in_is_left_out() -> None:
    """Nobody comes to its room, so nobody knows where they would."""
    names = [goal.id for goal in goals_of(watched_hall(), CATALOGUE, ())]
    assert names == [UNIT, "target silver"]

"""What a campaign is run on: ways, goals, kit; and what makes it impossible."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, one_room, two_rooms_and_hall
from common.small_campaign import fitted_hall, watched_hall
from wardwright.errors import NotComputable
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.campaign.goals import UNIT
from wardwright.trials.campaign.setting import room_of, setting_of


def test_goals_and_devices_stand_in_the_order_of_ids() -> None:
    found = setting_of(watched_hall(), CATALOGUE)
    assert [goal.id for goal in found.goals] == [UNIT, "target silver", "target tools"]
    assert found.ground.unit == 0
    assert [one.id for one in found.devices] == ["hall-fan", "kitchen-fan", "front-contact", "window-contact"]
    assert found.who.movement == ("hall-fan", "kitchen-fan")
    assert found.kit.sounds
    assert len(set(found.kit.groups.tolist())) == 4


def test_without_targets_only_the_unit_is_gone_for() -> None:
    found = setting_of(fitted_hall(), CATALOGUE)
    assert [goal.id for goal in found.goals] == [UNIT]
    assert not found.kit.sounds


def test_what_makes_it_impossible_is_named() -> None:
    with pytest.raises(NotComputable, match="nothing to go for"):
        setting_of(two_rooms_and_hall(), CATALOGUE)
    with pytest.raises(NotComputable, match="no way in"):
        setting_of(one_room(), CATALOGUE)


def test_a_battery_detector_sleeps_and_a_wired_one_does_not() -> None:
    catalogue, site = load_catalogue(), read_sample("terrace-better")
    sleeps = setting_of(site, catalogue).kit.sleeps
    told = [catalogue.sheet(one.sheet) for one in setting_of(site, catalogue).devices[: len(sleeps)]]
    assert sleeps.tolist() == [
        one.movement.sleep_s if one.power == "cell" and one.movement is not None else 0.0 for one in told
    ]
    assert sleeps.max() > 0.0


def test_devices_of_one_zone_or_group_are_one_notice() -> None:
    site = watched_hall()
    zones = tuple(
        one.model_copy(update={"group": "x"}) if one.number in (2, 3) else one for one in site.zones
    )
    groups = setting_of(site.model_copy(update={"zones": zones}), CATALOGUE).kit.groups.tolist()
    assert groups[0] == groups[1]
    assert len(set(groups)) == 3


def test_rooms_are_as_warm_as_the_warm_room_once_in_twenty() -> None:
    place = watched_hall().place
    found = room_of(place)
    assert (found.value, found.high) == (place.usual_room_c, place.warm_room_c)
    cold = room_of(place.model_copy(update={"warm_room_c": 10.0}))
    assert cold.high == cold.value == place.usual_room_c

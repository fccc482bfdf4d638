"""Which devices are one notice, and which confirm nothing."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_floor, on_opening, on_wall, two_rooms_and_hall, zone
from wardwright.model.device import Device
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.trials.independent import confirmation_window, is_outside, notices_of

KITCHEN = on_wall("kitchen", "fan", "north", 10.0)
STUDY = on_wall("study", "fan", "north", 0.4)
DOOR = on_opening("door", "front-door")
GARDEN = on_floor("garden", "fan", 5.0, -4.0, 2.2)


def house(*zones: Zone, pack: str = "uk-eu") -> Site:
    site = two_rooms_and_hall(devices=(KITCHEN, STUDY, DOOR, GARDEN), zones=zones)
    return site.model_copy(update={"place": site.place.model_copy(update={"rule_pack": pack})})


def test_each_zone_is_one_notice_and_a_device_in_none_is_its_own() -> None:
    site = house(zone(1, "rooms", "kitchen", "study"))
    assert notices_of(site, (KITCHEN, STUDY, DOOR)) == {
        "kitchen": "zone zone-1",
        "study": "zone zone-1",
        "door": "door",
    }


def test_zones_of_one_group_do_not_confirm_each_other() -> None:
    zones = (
        zone(1, "a", "kitchen", group="rooms"),
        zone(2, "b", "study", group="rooms"),
        zone(3, "c", "door"),
    )
    found = notices_of(house(*zones), (KITCHEN, STUDY, DOOR))
    assert found["kitchen"] == found["study"] != found["door"]


@pytest.mark.parametrize(("pack", "counts"), [("uk-eu", False), ("us", True)])
def test_outside_the_premises_a_detector_confirms_nothing_in_the_uk_and_the_eu(
    pack: str, counts: bool
) -> None:
    found = notices_of(house(pack=pack), (KITCHEN, GARDEN))
    assert (found["garden"] is not None) == counts
    assert found["kitchen"] is not None


@pytest.mark.parametrize(("device", "outside"), [(KITCHEN, False), (DOOR, False), (GARDEN, True)])
def test_outside_is_where_no_space_of_the_house_is(device: Device, outside: bool) -> None:
    assert is_outside(house().bare, device) == outside


def test_the_house_is_left_as_it_is() -> None:
    site = house()
    notices_of(site, site.devices)
    assert site == house()
    assert CATALOGUE.sheet("fan").kind == "movement-detector"


def test_the_window_is_the_rule_packs() -> None:
    limit = confirmation_window(house(), CATALOGUE)
    assert limit is not None
    assert (limit.pack, limit.unit) == ("uk-eu", "s")
    assert confirmation_window(house(), CATALOGUE.model_copy(update={"limits": ()})) is None

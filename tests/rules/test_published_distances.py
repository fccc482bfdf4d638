import pytest

from common.houses import CATALOGUE, on_ceiling, on_floor, one_room, two_rooms_and_hall
from wardwright.model.fixture import Fixture
from wardwright.model.place import Place
from wardwright.rules.fire_alarms import alarms
from wardwright.rules.published_distances import (
    distance_of_room,
    distances_of_alarm,
    distances_of_water,
)
from wardwright.rules.water_detectors import water_detectors

BOILER = Fixture(
    id="boiler", name="Boiler", storey="ground", kind="boiler", centre_m=(1.0, 2.0), size_m=(0.4, 0.4)
)


def test_a_smoke_alarm_on_a_ceiling_is_held_to_the_wall() -> None:
    site = one_room(devices=(on_ceiling("s", "smoke", 0.2, 2.0),))
    (one,) = distances_of_alarm(site, CATALOGUE, alarms(site, CATALOGUE, "smoke-alarm")[0])
    assert (one.what, one.limit.value, one.is_least) == ("to the nearest wall", 0.3, True)
    assert one.value_m == pytest.approx(0.2)
    assert one.margin_m == pytest.approx(-0.1)
    assert one.to == pytest.approx((0.0, 2.0))


def test_a_heat_alarm_is_held_to_the_farthest_corner() -> None:
    site = one_room(devices=(on_ceiling("h", "heat", 1.0, 1.0),))
    found = {d.what: d for d in distances_of_alarm(site, CATALOGUE, alarms(site, CATALOGUE, "heat-alarm")[0])}
    corner = found["to the farthest corner of its room"]
    assert corner.value_m == pytest.approx(5.0)
    assert corner.margin_m == pytest.approx(0.3)


def test_a_co_alarm_is_held_to_both_ends_in_europe_and_to_one_in_america() -> None:
    site = one_room(devices=(on_ceiling("c", "co", 4.0, 2.0),), fixtures=(BOILER,))
    european = distances_of_alarm(site, CATALOGUE, alarms(site, CATALOGUE, "co-alarm")[0])
    margins = {(d.what, d.is_least): round(d.margin_m, 3) for d in european}
    assert margins["to Boiler", True] == 1.8
    assert margins["to Boiler", False] == 0.2
    american = site.model_copy(update={"place": Place(rule_pack="us")})
    (one,) = distances_of_alarm(american, CATALOGUE, alarms(american, CATALOGUE, "co-alarm")[0])
    assert one.margin_m == pytest.approx(2.8 - 4.6)


def test_water_is_held_to_what_may_leak_or_to_nothing() -> None:
    site = one_room(devices=(on_floor("w", "water", 3.0, 2.0, 0.0),), fixtures=(BOILER,))
    (one,) = distances_of_water(site, CATALOGUE, water_detectors(site, CATALOGUE)[0])
    assert (one.what, one.value_m) == ("to Boiler", pytest.approx(1.8))
    bare = site.model_copy(update={"fixtures": ()})
    assert distances_of_water(bare, CATALOGUE, water_detectors(bare, CATALOGUE)[0]) == ()


def test_a_room_is_held_to_the_walk_from_the_nearest_alarm() -> None:
    site = two_rooms_and_hall(devices=(on_ceiling("s", "smoke", 5.1, 3.0),))
    smoke = alarms(site, CATALOGUE, "smoke-alarm")
    study = distance_of_room(site, CATALOGUE, site.space("study"), smoke=smoke)
    assert study is not None
    assert study.limit.value == 7.5
    assert 1.0 < study.value_m < 2.0
    assert distance_of_room(site, CATALOGUE, site.space("hall"), smoke=smoke) is None

from common.worked_terrace import worked_terrace
from wardwright.model.device import FreeMount, WallMount
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.alarm import (
    NO_MATTER_WHERE,
    alarm_of,
    as_met,
    detectors_alone,
    without_abort_delay,
)

CATALOGUE = load_catalogue()
HALL = WallMount(wall="ground-back", side="left", offset_m=7.8, height_m=2.2)
SITE = worked_terrace(
    contacts={"kitchen-window": "instant", "front-door": "log-only"},
    movement={"hall": (HALL, -60.0, "instant")},
)


def moved(site: Site, device_id: str, mount: FreeMount | WallMount) -> Site:
    devices = tuple(
        one.model_copy(update={"mount": mount}) if one.id == device_id else one for one in site.devices
    )
    return site.model_copy(update={"devices": devices})


def test_detectors_come_with_how_their_zones_behave_in_the_order_of_ids() -> None:
    alarm = alarm_of(SITE, CATALOGUE)
    assert [(device.id, behaviour.id) for device, behaviour in alarm.heard] == [
        ("front-door-contact", "log-only"), ("hall", "instant"), ("kitchen-window-contact", "instant"),
    ]  # fmt: skip
    assert alarm.programme == SITE.programme
    assert alarm.sounds
    assert alarm_of(SITE, CATALOGUE, "night").heard == ()


def test_one_detector_more_takes_its_place_in_the_order() -> None:
    alarm = alarm_of(SITE, CATALOGUE)
    (_, behaviour), *_ = alarm.heard
    more = alarm.with_detector(SITE.device("hall").model_copy(update={"id": "a-first"}), behaviour)
    assert [device.id for device, _ in more.heard][:2] == ["a-first", "front-door-contact"]
    assert len(alarm.heard) == 3


def test_a_site_is_met_alike_wherever_keypads_and_sounders_stand() -> None:
    site = read_sample("terrace")
    storey = site.storeys[0].id
    for device in site.devices:
        there = moved(site, device.id, FreeMount(storey=storey, at_m=(1.0, 1.0)))
        is_alike = CATALOGUE.sheet(device.sheet).kind in NO_MATTER_WHERE
        assert (as_met(there, CATALOGUE) == as_met(site, CATALOGUE)) == is_alike


def test_what_is_met_is_not_another_house_and_has_the_same_devices() -> None:
    site = read_sample("terrace")
    met = as_met(site, CATALOGUE)
    assert met.bare is site.bare
    assert [one.id for one in met.devices] == [one.id for one in site.devices]


def test_the_unit_may_be_left_out_of_account_too() -> None:
    there = moved(SITE, "unit", FreeMount(storey="upper", at_m=(5.0, 5.0)))
    assert as_met(there, CATALOGUE) != as_met(SITE, CATALOGUE)
    kinds = (*NO_MATTER_WHERE, "control-unit")
    assert as_met(there, CATALOGUE, but=kinds) == as_met(SITE, CATALOGUE, but=kinds)


def test_a_site_of_detectors_alone_is_one_object_wherever_all_else_is() -> None:
    unit = next(one for one in SITE.devices if CATALOGUE.sheet(one.sheet).kind == "control-unit")
    alone = detectors_alone(SITE, CATALOGUE)
    assert [one.id for one in alone.devices] == [
        one.id for one in SITE.devices if one.id in {"hall", "front-door-contact", "kitchen-window-contact"}
    ]
    elsewhere = moved(SITE, unit.id, FreeMount(storey=SITE.storeys[0].id, at_m=(1.0, 1.0)))
    assert detectors_alone(elsewhere, CATALOGUE) is alone
    turned = moved(SITE, "hall", HALL.model_copy(update={"offset_m": 7.0}))
    assert detectors_alone(turned, CATALOGUE) is not alone


def test_no_message_waits_without_an_abort_delay() -> None:
    told = Programme(entry_time_s=20.0, abort_delay_s=30.0)
    assert without_abort_delay(told) == Programme(entry_time_s=20.0, abort_delay_s=0.0)
    assert without_abort_delay(told) is without_abort_delay(told)

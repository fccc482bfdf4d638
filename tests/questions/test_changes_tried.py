"""A change is tried as the changed site itself would be."""

from __future__ import annotations

import pytest

from common.worked_terrace import worked_terrace
from wardwright.model.estimate import Estimate
from wardwright.model.fixture import Outlet
from wardwright.model.programme import Zone
from wardwright.model.revision import replaced, with_device
from wardwright.model.site import Site
from wardwright.questions.changes_tried import Trial, changes_for, contact_on, instant_of, with_instant
from wardwright.questions.unit_elsewhere import moved_to
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.alarm import alarm_of
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import WayIn, ways_in
from wardwright.trials.ways_on_foot import spot_of

CATALOGUE = load_catalogue()
SOCKET = Outlet(id="bedroom-socket", name="bedroom socket", kind="power", storey="upper", at_m=(6.9, 1.2))
SITE = worked_terrace(
    contacts={"front-door": "entry-exit", "kitchen-window": "entry-exit"}, abort_delay_s=20.0
)
SITE = SITE.model_copy(update={"outlets": (SOCKET,)})
NONE_LEFT = Estimate(value=-5.0, low=-9.0, high=-1.0, unit="s")


def way(site: Site, opening: str) -> WayIn:
    return next(one for one in ways_in(site, CATALOGUE)[0] if one.opening.id == opening)


def trial_of(site: Site) -> Trial:
    return Trial(alarm_of(site, CATALOGUE), spot_of(site, control_units(site, CATALOGUE)[0]))


def trials(site: Site, opening: str) -> dict[tuple[str, str], Trial]:
    found = changes_for(site, CATALOGUE, way(site, opening), now=NONE_LEFT)
    return {(action, subject): trial for action, subject, _, trial in reversed(found)}


def put_in(site: Site, trial: Trial) -> Site:
    """The site with the detector of a trial, in an instant zone of its own."""
    old = {device.id for device in site.devices}
    new = next(device for device, _ in trial.alarm.heard if device.id not in old)
    zone = Zone(id="put-in-zone", number=99, name="put in", devices=(new.id,), behaviour="instant")
    return replaced(with_device(site, new), zones=(*site.zones, zone))


@pytest.mark.parametrize("subject", ["front-door", "kitchen"])
def test_a_device_put_in_is_heard_as_on_the_changed_site(subject: str) -> None:
    site = worked_terrace(contacts={})
    opening = {"front-door": "front-door", "kitchen": "kitchen-window"}[subject]
    trial = trials(site, opening)["add-device", subject]
    assert trial == trial_of(put_in(site, trial))


def test_programme_behaviour_and_place_are_changed_as_on_the_changed_site() -> None:
    found = trials(SITE, "kitchen-window")
    programme = SITE.programme.model_copy(update={"abort_delay_s": 0.0})
    assert found["change-programme", "programme"] == trial_of(replaced(SITE, programme=programme))
    zone = next(one for one in SITE.zones if "kitchen-window-contact" in one.devices)
    instant = tuple(
        one.model_copy(update={"behaviour": "instant"}) if one is zone else one for one in SITE.zones
    )
    assert found["change-behaviour", zone.id] == trial_of(replaced(SITE, zones=instant))
    moved = found["move-device", "unit"]
    assert moved == trial_of(moved_to(SITE, CATALOGUE, moved.goal))


def test_a_zone_that_people_come_in_by_keeps_its_behaviour() -> None:
    assert not [key for key in trials(SITE, "front-door") if key[0] == "change-behaviour"]


def test_the_instant_behaviour_is_the_sites_own_or_the_trades() -> None:
    renamed = tuple(
        one.model_copy(update={"id": "at-once"}) if one.id == "instant" else one for one in SITE.behaviours
    )
    named = SITE.model_copy(update={"behaviours": renamed})
    assert with_instant(named) == (named, "at-once")
    without = SITE.model_copy(update={"behaviours": tuple(one for one in renamed if one.id != "at-once")})
    known, behaviour = with_instant(without)
    assert known.behaviour(behaviour).alarms
    assert instant_of(without).id == "instant"


def test_a_contact_is_named_after_its_opening() -> None:
    sheet = next(one for one in CATALOGUE.sheets if one.kind == "opening-contact")
    opening = SITE.opening("front-door")
    assert contact_on(opening, sheet, device_id="new").name == f"{opening.name} contact"

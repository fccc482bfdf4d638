"""Mends as edits: what they turn into, and that what they turn into does what they say."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, one_room, opening, zone
from common.rule_houses import HOUSES
from wardwright.model.device import FreeMount, OpeningMount
from wardwright.model.edits import edited
from wardwright.model.fixture import Outlet
from wardwright.model.site import Site
from wardwright.model.validation import problems
from wardwright.questions.table import ask
from wardwright.rules.finding import Mend
from wardwright.rules.mending import operations_of
from wardwright.rules.registry import findings_of
from wardwright.rules.table import RULES
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SITE = one_room(
    openings=(opening("door", "south", 2.65),),
    devices=(on_wall("fan-1", "fan", "south", 1.0), on_opening("door-contact", "door")),
    zones=(zone(1, "Door", "door-contact"),),
    outlets=(Outlet(id="socket", name="socket", kind="power", storey="ground", at_m=(4.0, 3.9)),),
)


FOR_A_PERSON = ("tell", "add-light", "keep-shut", "move-thing", "bar-climb", "other")


def after(action: Any, subject: str, **values: Any) -> Site:
    operations = operations_of(
        SITE, CATALOGUE, Mend(action=action, subject=subject, values=tuple(values.items()))
    )
    assert operations is not None
    return edited(SITE, operations)


def test_a_device_goes_beside_a_power_point() -> None:
    mount = after("move-device", "fan-1", near="socket").device("fan-1").mount
    assert isinstance(mount, FreeMount)
    assert mount.at_m == (4.0, 3.9)


def test_a_device_keeps_what_the_mend_does_not_name() -> None:
    mount = after("move-device", "fan-1", height_m=2.3).device("fan-1").mount
    assert mount == SITE.device("fan-1").mount.model_copy(update={"height_m": 2.3})
    mount = after("change-mount", "door-contact", gap_m=0.004).device("door-contact").mount
    assert mount == OpeningMount(opening="door", gap_m=0.004)


def test_a_device_is_added_with_a_zone_of_its_own() -> None:
    site = after("add-device", "door", sheet="contact", behaviour="instant")
    device = site.devices[-1]
    assert device.mount == OpeningMount(opening="door")
    assert (site.zones[-1].devices, site.zones[-1].number) == ((device.id,), 2)


def test_a_lock_a_pane_a_behaviour_a_time_and_a_name_are_changed() -> None:
    assert after("change-lock", "door", what="lock").opening("door").lock == "rc2"
    assert after("change-lock", "door", what="glazing").opening("door").glazing == "laminated"
    assert after("change-behaviour", "zone-1", behaviour="entry-exit").zones[0].behaviour == "entry-exit"
    assert after("change-programme", "programme", abort_delay_s=0.0).programme.abort_delay_s == 0.0
    assert after("rename", "zone-1", name="Front door").zones[0].name == "Front door"
    assert after("remove-device", "fan-1").devices == (SITE.device("door-contact"),)


@pytest.mark.parametrize(
    "mend",
    [
        Mend(action="tell", subject="door", values=(("field", "swing"),)),
        Mend(action="add-light", subject="door"),
        Mend(action="move-device", subject="gone", values=(("height_m", 2.0),)),
        Mend(action="move-device", subject="fan-1", values=(("near", "gone"),)),
        Mend(action="change-behaviour", subject="zone-9", values=(("behaviour", "instant"),)),
        Mend(action="change-programme", subject="programme", values=(("mood", 1.0),)),
    ],
)
def test_what_only_a_person_can_do_is_no_edit(mend: Mend) -> None:
    assert operations_of(SITE, CATALOGUE, mend) is None


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)
def test_every_mend_of_a_rule_can_be_carried_out_or_is_for_a_person(rule: Any) -> None:
    site = HOUSES[rule.code].fires
    for finding in findings_of(rule, site, CATALOGUE):
        for mend in finding.mends:
            operations = operations_of(site, CATALOGUE, mend)
            if operations is None:
                assert mend.action in FOR_A_PERSON, mend
            else:
                assert edited(site, operations) != site


@pytest.mark.parametrize("name", ["terrace", "terrace-better", "bungalow", "lakeside"])
def test_every_mend_of_an_answer_can_be_carried_out_and_the_house_holds_together(name: str) -> None:
    site, catalogue = read_sample(name), load_catalogue()
    mends = [mend for answer in ask(site, catalogue) for mend in answer.mends]
    done = [operations for mend in mends if (operations := operations_of(site, catalogue, mend)) is not None]
    assert len(done) >= len([mend for mend in mends if mend.action not in FOR_A_PERSON])
    for operations in done:
        stops = [p.what for p in problems(edited(site, operations), catalogue) if p.weight == "stops"]
        assert stops == []

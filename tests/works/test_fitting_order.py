"""The order of fitting."""

from __future__ import annotations

from typing import get_args

import pytest

from common.houses import on_wall, one_room
from common.priced_room import UNIT, priced_room
from wardwright.model.device import DeviceKind
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names
from wardwright.works.fitting_order import FITTED_IN_ORDER, STAGES, fitting_order

CATALOGUE = load_catalogue()
NOT_FIXING = ("hang for a try", "cables")


def test_every_kind_has_its_turn() -> None:
    assert set(FITTED_IN_ORDER) == set(get_args(DeviceKind))
    assert len(set(STAGES)) == len(STAGES)


def test_nothing_to_fit_has_no_order() -> None:
    assert fitting_order(one_room(), CATALOGUE) == ()
    old = UNIT.model_copy(update={"is_existing": True})
    assert fitting_order(priced_room(devices=(old,)), CATALOGUE) == ()


@pytest.mark.parametrize("name", sample_names())
def test_each_device_is_fixed_once_the_unit_first_and_the_keypad_last(name: str) -> None:
    site = read_sample(name)
    steps = fitting_order(site, CATALOGUE)
    fixed = [one for step in steps if step.stage not in NOT_FIXING for one in step.devices]
    assert sorted(fixed) == sorted(one.id for one in site.devices if not one.is_existing)
    if not steps:
        return
    kinds = [CATALOGUE.sheet(site.device(one).sheet).kind for one in fixed]
    assert kinds[0] in ("control-unit", "router", "transmitter")
    if "keypad" in kinds:
        assert kinds[-1] == "keypad"
    assert (steps[0].stage, steps[-1].stage) == ("walk the job", "close up")


def test_ladder_work_is_together_and_before_steps() -> None:
    order = {"ladder": 0, "steps": 1, "hand": 2}
    steps = fitting_order(read_sample("bungalow"), CATALOGUE)
    for stage in STAGES:
        climbs = [order[step.climb] for step in steps if step.stage == stage]
        assert climbs == sorted(set(climbs))


def test_every_radio_device_hangs_for_a_try_before_any_hole() -> None:
    steps = fitting_order(read_sample("terrace"), CATALOGUE)
    stages = [step.stage for step in steps]
    tried = next(step for step in steps if step.stage == "hang for a try")
    assert stages.index("hang for a try") < stages.index("contacts")
    assert "hall-control-unit" not in tried.devices
    assert len(tried.devices) == 6


def test_a_cable_is_run_before_what_hangs_on_it() -> None:
    wired = on_wall("md", "movement-8m-wired", "north", 3.0)
    stages = [step.stage for step in fitting_order(one_room(devices=(UNIT, wired)), CATALOGUE)]
    assert stages.index("cables") < stages.index("movement detectors")


def test_the_order_of_the_list_changes_nothing() -> None:
    site = read_sample("bungalow")
    turned = site.model_copy(update={"devices": site.devices[::-1]})
    assert fitting_order(site, CATALOGUE) == fitting_order(turned, CATALOGUE)

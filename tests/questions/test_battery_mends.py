"""Other cells and a longer check-in: only what brings time is named."""

from __future__ import annotations

from common.houses import on_wall, one_room
from common.mending import mended
from wardwright.physics.power.from_site import on_cells
from wardwright.questions.battery_mends import cell_mends
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.cell_lives import lasting
from wardwright.trials.draws import estimate_of

CATALOGUE = load_catalogue()


def test_the_mend_carried_out_brings_what_it_says() -> None:
    site = one_room(devices=(on_wall("keypad", "keypad-radio", "south", 2.0, height_m=1.4),))
    one = on_cells(site.devices[0], CATALOGUE)
    assert one is not None
    life = lasting(site, CATALOGUE, one)
    now = estimate_of(life.years, life.cases, unit="a")
    best, *_ = cell_mends(site, CATALOGUE, one, now=now)
    after = mended(site, best)
    changed = on_cells(after.devices[0], CATALOGUE)
    assert changed is not None
    again = lasting(after, CATALOGUE, changed)
    assert estimate_of(again.years, again.cases, unit="a") == best.gain


def test_a_device_that_takes_nothing_else_and_cannot_be_set_has_none() -> None:
    site = one_room(devices=(on_wall("smoke", "smoke-alarm-radio", "south", 2.0),))
    one = on_cells(site.devices[0], CATALOGUE)
    assert one is not None
    life = lasting(site, CATALOGUE, one)
    assert cell_mends(site, CATALOGUE, one, now=estimate_of(life.years, life.cases, unit="a")) == ()

"""What runs on cells, and how cold it gets there."""

from __future__ import annotations

import numpy as np
import pytest

from common.houses import on_opening, on_wall, one_room, window
from wardwright.physics.power.from_site import climate, life_of, on_cells, standby_of
from wardwright.physics.power.retries import sends_a_message
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
LIKELY = {"loss": 0.0125, "usable": 0.85, "temperature": 20.0, "current": 1.0, "messages": 60.0}


def detector(**told: object):  # type: ignore[no-untyped-def] # noqa: ANN201 - a device in a test's shorthand
    return on_wall("pir", "movement-12m", "south", 2.0, height_m=2.2).model_copy(update=told)


def test_a_device_without_a_table_of_cells_is_not_on_cells() -> None:
    assert on_cells(on_wall("unit", "control-unit-radio", "south", 2.0, height_m=1.5), CATALOGUE) is None


def test_its_own_cells_and_check_in_come_before_its_sheet() -> None:
    keypad = on_wall("keypad", "keypad-radio", "south", 2.0, height_m=1.4)
    usual = on_cells(keypad, CATALOGUE)
    changed = on_cells(keypad.model_copy(update={"cell": "lithium-fr6", "check_in_min": 60.0}), CATALOGUE)
    assert usual is not None
    assert changed is not None
    assert (usual.cell.id, usual.check_ins) == ("alkaline-lr6", 80.0)
    assert (changed.cell.id, changed.check_ins) == ("lithium-fr6", 24.0)


def test_by_hand() -> None:
    """11 uA + 25 mA x 55 ms x (80 + 60) x 1 / 86400 s = 13.228 uA: 1275 / (115.88 + 18.75) = 9.47 years."""
    one = on_cells(detector(), CATALOGUE)
    assert one is not None
    assert float(life_of(one, capacity=1.5, sends=1.0, **LIKELY)) == pytest.approx(9.47, abs=0.005)


def test_a_better_margin_never_shortens_a_life() -> None:
    one = on_cells(detector(), CATALOGUE)
    assert one is not None
    lives = life_of(one, capacity=1.5, sends=sends_a_message(np.linspace(-30.0, 40.0, 141)), **LIKELY)
    assert (np.diff(lives) >= 0.0).all()
    assert lives[0] < 0.6 * lives[-1]


def test_how_cold_it_gets() -> None:
    site = one_room(openings=(window("pane", "south", 2.0),))
    outside = on_wall("out", "sounder-outside", "south", 2.0, side="right", height_m=2.2)
    assert climate(site, detector()) == "inside"
    assert climate(site, outside) == "outside"
    assert climate(site, on_opening("contact", "pane", "contact-radio")) == "inside"
    garage = tuple(one.model_copy(update={"use": "garage"}) for one in site.spaces)
    assert climate(site.model_copy(update={"spaces": garage}), detector()) == "unheated"


def test_stand_by_times_of_sheets() -> None:
    times = {
        name: standby_of(CATALOGUE.sheet(name), alarm_time=0.25, ageing=1.25)
        for name in ("control-unit-radio", "message-mobile", "router-existing", "router-with-back-up")
    }
    assert times["router-existing"] is None
    # (2.2 / 1.25 - 1.75 x 0.42 x 0.25) / 0.085, the transmitter's own word, and 9 / 1.25 / 0.9.
    assert times["control-unit-radio"] == pytest.approx((1.76 - 0.18375) / 0.085)
    assert times["message-mobile"] == pytest.approx(14.0)
    assert times["router-with-back-up"] == pytest.approx(8.0)

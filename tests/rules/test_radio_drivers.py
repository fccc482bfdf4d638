import numpy as np
import pytest

from common.radio_house import CATALOGUE, device, long_house
from wardwright.rules.radio_belief import Z_90, house_radio
from wardwright.rules.radio_drivers import OFFSETS, drivers_of, padded

NOISE = CATALOGUE.figure("radio-noise-below-1-ghz")
CLASSES = [row.id for row in CATALOGUE.wall_losses]


def row(**counts: float) -> np.ndarray:
    made = np.zeros(OFFSETS + len(CLASSES))
    made[0] = 1.0
    for name, count in counts.items():
        made[OFFSETS + CLASSES.index(name)] = count
    return made


def test_without_readings_each_swing_is_its_own_range_times_its_count() -> None:
    radio = house_radio(long_house(), CATALOGUE)
    drivers, basis = drivers_of(CATALOGUE, radio, row(concrete=2.0), spread=7.0, noise=NOISE, need=-150.0)
    swings = {one.name: one.swing for one in drivers}
    concrete = next(one for one in CATALOGUE.wall_losses if one.id == "concrete")
    assert swings["what a concrete wall takes"] == pytest.approx(2.0 * (concrete.high_db - concrete.low_db))
    assert swings["shadowing of this path"] == pytest.approx(2.0 * Z_90 * 7.0)
    assert swings["noise at the receiver"] == pytest.approx(NOISE.high - NOISE.low)
    assert basis == "default"


def test_noise_below_what_the_receiver_needs_moves_nothing() -> None:
    radio = house_radio(long_house(), CATALOGUE)
    drivers, _ = drivers_of(CATALOGUE, radio, row(), spread=7.0, noise=NOISE, need=-60.0)
    assert "noise at the receiver" not in {one.name for one in drivers}


def test_the_shadow_of_a_link_that_was_read_stands_in_its_row() -> None:
    read = [{"id": "r", "device": "far", "receiver": "unit", "level_dbm": -95.0}]
    radio = house_radio(long_house(device("far", "water-radio", 20.0), readings=read), CATALOGUE)
    place = radio.shadow_place("far|unit")
    assert place is not None
    whole = padded(radio, row(), read=place)
    assert whole[place] == -1.0
    assert len(whole) == len(radio.belief.mean)
    drivers, _ = drivers_of(CATALOGUE, radio, whole, spread=0.0, noise=NOISE, need=-60.0)
    # What is left of offset and shadow together is little more than one reading is off.
    assert {one.basis for one in drivers} == {"measured"}
    assert max(one.swing for one in drivers) < 2.0 * Z_90 * 5.0

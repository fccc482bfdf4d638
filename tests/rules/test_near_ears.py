import math

import pytest

from wardwright.rules.near_ears import BESIDE_M, STANDING_M, near_levels
from wardwright.rules.pillows import pillows
from wardwright.rules.sound_heard import INTRUDER_KINDS, sounders
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")


def test_who_stands_by_it_hears_the_direct_sound_and_what_the_room_holds() -> None:
    (unit,) = (one for one in sounders(SITE, CATALOGUE, INTRUDER_KINDS) if one.room >= 0)
    ((words, level),) = near_levels(SITE.bare, CATALOGUE, unit, heads=pillows(SITE))
    assert words == "somebody who stands by it"
    # The unit hangs at 1.5 m, lower than an ear: the ear is level with it, 0.3 m off.
    assert unit.place.height_m < STANDING_M
    direct = 88.0 - 20.0 * math.log10(BESIDE_M)
    assert level.value == pytest.approx(direct, abs=2.0)
    assert level.value > direct

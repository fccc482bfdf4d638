import numpy as np
import pytest

from wardwright.physics.sound.from_site import sound_house
from wardwright.physics.sound.house import OUTSIDE
from wardwright.rules.pillows import pillows
from wardwright.rules.sound_heard import (
    FIRE_KINDS,
    INTRUDER_KINDS,
    at_night,
    at_pillows,
    in_rooms,
    level_estimate,
    shut,
    sounders,
    steps_between,
)
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")
HOUSE = sound_house(SITE, CATALOGUE)
EVERY = sounders(SITE, CATALOGUE, INTRUDER_KINDS)


def test_only_what_states_a_level_and_is_of_the_kinds_sounds() -> None:
    assert [one.device.id for one in EVERY] == ["bedroom-1-sounder", "hall-control-unit"]
    assert sounders(SITE, CATALOGUE, FIRE_KINDS) == ()


def test_a_level_is_never_narrower_than_the_model_or_than_one_input() -> None:
    for steps, off in ((0.0, 2.0), (1.0, 5.0), (2.0, 7.0), (4.0, 7.0)):
        energy = np.full(len(HOUSE.cases), 1e7)
        found = level_estimate(energy, house=HOUSE, catalogue=CATALOGUE, steps=steps)
        assert found is not None
        assert (found.low, found.value) == (pytest.approx(70.0 - off), pytest.approx(70.0))
        assert found.high == pytest.approx(70.0 + max(off, 3.0))
    wide = np.full(len(HOUSE.cases), 1e7)
    wide[1] = 1e5
    moved = level_estimate(wide, house=HOUSE, catalogue=CATALOGUE, steps=0.0)
    assert moved is not None
    assert moved.low == pytest.approx(50.0)
    assert moved.drivers[0].name == "insulation of the house below the laboratory's"


def test_what_is_not_heard_has_no_level() -> None:
    assert level_estimate(np.zeros(len(HOUSE.cases)), house=HOUSE, catalogue=CATALOGUE, steps=1.0) is None


def test_steps_are_counted_from_the_nearest_sounder_and_one_more_from_outside() -> None:
    bedroom, bathroom = HOUSE.room("bedroom-1"), HOUSE.room("bathroom")
    states = shut(SITE, CATALOGUE)
    assert steps_between(HOUSE, states, room=bedroom, every=[HOUSE.room("hall")]) == 1.0
    assert steps_between(HOUSE, states, room=bedroom, every=[OUTSIDE]) == 1.0
    assert steps_between(HOUSE, states, room=bathroom, every=[HOUSE.room("living")]) == 2.0


def test_in_its_room_a_pillow_hears_more_than_the_room_holds() -> None:
    heads = pillows(SITE)
    states = at_night(SITE, CATALOGUE)
    there = at_pillows(SITE.bare, CATALOGUE, EVERY, heads=heads, states=states)
    rooms = in_rooms(SITE.bare, CATALOGUE, EVERY, states=states).sum(axis=2)
    index = [HOUSE.room(head.space.id) for head in heads]
    assert there == pytest.approx(rooms[:, :, index])

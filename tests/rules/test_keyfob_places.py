import pytest

from common.radio_house import long_house
from wardwright.errors import NotComputable
from wardwright.rules.keyfob_places import BEFORE_DOOR_M, HAND_M, pressed_at
from wardwright.store.samples import read_sample


def test_before_each_entry_door_and_at_the_boundary() -> None:
    site = read_sample("bungalow")
    found = pressed_at(site)
    assert [one.words for one in found][:2] == ["before Front door", "the boundary before Front door"]
    near, far = found[0].place, found[1].place
    assert near.height_m == far.height_m == HAND_M
    south = min(y for _, y in site.space("corridor").outline_m)
    assert near.y_m < south
    assert south - near.y_m < BEFORE_DOOR_M + 0.5
    assert far.y_m < near.y_m


def test_without_an_entry_door_nobody_presses() -> None:
    with pytest.raises(NotComputable, match="entry door"):
        pressed_at(long_house())

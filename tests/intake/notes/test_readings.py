from __future__ import annotations

import pytest
import shapely

from common.cottage import read
from wardwright.errors import NotesError
from wardwright.intake.notes.readings import HELD_M

UNIT = "control-unit landing west, 0.6 from north, 1.5 m, sheet control-unit-radio as unit\n"
KIT = (
    UNIT
    + "keypad hall east, 0.5 from south, 1.4 m as pad\nrepeater hall north, 0.5 from west, 1.8 m as rep\n"
)


def test_a_level_is_measured_and_heard_by_the_control_unit() -> None:
    (one,) = read(KIT + "reading pad -58 dBm").readings
    assert (one.device, one.receiver, one.level_dbm) == ("pad", "unit", -58.0)
    assert one.basis_of("level_dbm") == "measured"
    assert one.held_at_m is None


def test_a_repeater_is_named_and_each_reading_has_an_id_of_its_own() -> None:
    found = read(KIT + "reading pad -58 dBm\nreading pad -49 dBm by rep").readings
    assert [one.receiver for one in found] == ["unit", "rep"]
    assert len({one.id for one in found}) == 2


def test_a_carried_device_was_held_in_a_room() -> None:
    site = read(KIT + "reading pad -77 dBm held kitchen")
    held = site.readings[0].held_at_m
    assert held is not None
    kitchen = shapely.Polygon(site.space("kitchen").outline_m)
    assert kitchen.contains(shapely.Point(held[:2]))
    assert held[2] == HELD_M


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("reading ghost -58 dBm", "there is no device 'ghost'"),
        ("reading pad", "the line ends where the level, such as -71 dBm should follow"),
        ("reading pad -58 m", "'-58 m' does not fit here"),
        ("reading pad 58 dBm", "no receiver shows a level of 58 dBm"),
        ("reading pad -58 dBm by pad", "'pad' hears no other device"),
        ("reading unit -58 dBm", "'unit' hears no other device"),
        ("reading pad -58 dBm held attic", "there is no room 'attic'"),
        ("reading pad -58 dBm loud", "'loud' is left over at the end of the line"),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(KIT + line)


def test_without_one_control_unit_the_hearer_has_to_be_named() -> None:
    with pytest.raises(NotesError, match="it is not clear what heard it"):
        read("keypad hall east, 0.5 from south, 1.4 m as pad\nreading pad -58 dBm")

from __future__ import annotations

from common.houses import on_wall, one_room
from wardwright.model.changes import carried_out, collections, differences, reverted
from wardwright.model.programme import Programme
from wardwright.model.site import Site

FAN = on_wall("fan-1", "fan", "south", 2.0)
HIGHER = on_wall("fan-1", "fan", "south", 2.0, height_m=2.4)
OTHER = on_wall("fan-2", "fan", "north", 2.0)


def test_every_list_of_a_site_is_compared_record_by_record() -> None:
    lists = {name for name, value in one_room() if isinstance(value, tuple)}
    assert collections() == lists


def test_what_was_added_changed_and_taken_out_is_told_apart() -> None:
    before, after = (
        one_room(devices=(FAN,)),
        one_room(devices=(HIGHER, OTHER), programme=Programme(exit_time_s=50)),
    )
    found = {change.key: (change.before, change.after) for change in differences(before, after)}
    assert found == {
        "devices/fan-1": (FAN, HIGHER),
        "devices/fan-2": (None, OTHER),
        "programme": (Programme(), Programme(exit_time_s=50)),
    }
    assert [c.key for c in differences(after, before) if c.after is None] == ["devices/fan-2"]


def test_an_order_of_lists_is_no_difference() -> None:
    assert differences(one_room(devices=(FAN, OTHER)), one_room(devices=(OTHER, FAN))) == ()


def test_a_difference_carried_over_leaves_what_others_did() -> None:
    base = one_room(devices=(FAN,))
    mine = differences(base, one_room(devices=(HIGHER,)))
    theirs = one_room(devices=(FAN, OTHER))
    assert set(carried_out(theirs, mine).devices) == {HIGHER, OTHER}


def test_there_and_back_is_where_one_was() -> None:
    before, after = one_room(devices=(FAN,)), one_room(devices=(OTHER,), programme=Programme(exit_time_s=50))
    changes = differences(before, after)
    back: Site = carried_out(carried_out(before, changes), reverted(changes))
    assert differences(before, back) == ()

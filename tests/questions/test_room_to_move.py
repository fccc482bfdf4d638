"""How far a device may be moved before an answer fails."""

from __future__ import annotations

import pytest

from common.houses import on_ceiling, one_room, opening
from common.priced_room import HALL, UNIT, priced_room
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.questions.room_to_move import MOVES_M, TURNS_DEG, Leeway, room_to_move
from wardwright.rules.table import check_in_hand
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def ways(device: Device, site: Site) -> dict[str, Leeway]:
    return {one.way: one for one in room_to_move(site, CATALOGUE, device).ways}


def test_a_height_gives_way_as_far_as_the_sheet_lets_it() -> None:
    """2.2 m; its sheet says from 2.0 to 2.4 m: 20 cm hold each way, 40 cm do not."""
    found = ways(HALL, priced_room())
    assert (found["down"].holds, found["down"].fails_at, found["down"].rule) == (0.2, 0.4, "MOV102")
    assert found["up"].fails_at == 0.2  # the ceiling is at 2.4 m


def test_a_wall_ends_where_it_ends() -> None:
    """0.3 m from its wall's end; the room ends 0.15 m before it."""
    near = HALL.model_copy(update={"mount": HALL.mount.model_copy(update={"offset_m": 0.3})})
    found = ways(near, priced_room(devices=(UNIT, near)))
    ends = [one for one in found.values() if one.fails_at is not None and one.way in ("left", "right")]
    assert [(one.way, one.holds, one.fails_at, one.question, one.rule) for one in ends] == [
        ("right", 0.1, 0.2, None, "")
    ]


def test_a_door_is_in_the_way() -> None:
    """A door of 0.9 m at 3.0 m along the wall; the keypad is 0.65 m from its middle."""
    door = opening("door", "south", 3.0)
    keypad = UNIT.model_copy(update={"mount": UNIT.mount.model_copy(update={"offset_m": 2.35})})
    site = priced_room(devices=(keypad,), openings=(door,))
    found = ways(keypad, site)
    assert (found["left"].holds, found["left"].fails_at) == (0.1, 0.2)
    assert (found["left"].question, found["left"].rule) == (None, "")
    assert found["right"].fails_at is None


def test_what_holds_was_tried_and_what_fails_fails() -> None:
    """Each failing place is set up anew: the rule that is named fires there, and not where it is said to hold."""
    site = read_sample("terrace")
    device = site.device("hall-keypad")
    up = ways(device, site)["up"]
    assert up.rule
    assert up.fails_at is not None

    def fires(step: float) -> bool:
        mount = device.mount.model_copy(update={"height_m": device.mount.height_m + step})
        moved = device.model_copy(update={"mount": mount})
        tried = site.model_copy(
            update={"devices": tuple(moved if one.id == device.id else one for one in site.devices)}
        )
        found = check_in_hand(tried, CATALOGUE, has_house_moved=False)
        return any(one.code == up.rule and one.severity == "must mend" for one in found)

    assert fires(up.fails_at)
    assert not fires(up.holds)


def test_what_looks_somewhere_is_turned_and_what_does_not_is_not() -> None:
    site = read_sample("terrace")
    assert {"turned left", "turned right"} <= ways(site.device("hall-movement"), site).keys()
    assert ways(site.device("hall-keypad"), site).keys() == {"left", "right", "up", "down"}


@pytest.mark.parametrize("name", ["front-door-contact", "garden-door-contact"])
def test_a_contact_is_bound_to_its_leaf(name: str) -> None:
    site = read_sample("terrace")
    assert room_to_move(site, CATALOGUE, site.device(name)).ways == ()


def test_on_a_ceiling_only_what_looks_is_tried() -> None:
    smoke = on_ceiling("s", "smoke-alarm-radio", 2.0, 2.0)
    assert room_to_move(one_room(devices=(smoke,)), CATALOGUE, smoke).ways == ()


def test_steps_grow() -> None:
    assert list(MOVES_M) == sorted(MOVES_M)
    assert list(TURNS_DEG) == sorted(TURNS_DEG)

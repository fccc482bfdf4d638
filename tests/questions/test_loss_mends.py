"""Mends of a loss, carried out: the loss is made up for."""

from __future__ import annotations

import math

from common.houses import on_floor, on_wall, one_room
from wardwright.model.device import WallMount
from wardwright.model.edits import edited
from wardwright.model.fixture import Outlet
from wardwright.model.placement import standing
from wardwright.questions.loss_mends import (
    BESIDE_M,
    longer_standby,
    own_power_sounders,
    router_back_up,
    second_path,
)
from wardwright.rules.mending import operations_of
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.single_loss import hours_of, message_hours, message_paths, routers

CATALOGUE = load_catalogue()
UNIT = on_wall("unit", "control-unit-with-keypad", "south", 1.0, height_m=1.4)
SENDER = on_wall("sender", "message-broadband", "south", 2.0, height_m=1.5)
ROUTER = Outlet(id="plug", name="Router", kind="router", storey="ground", at_m=(4.0, 3.0))


def carried_out(site, mend):  # type: ignore[no-untyped-def] # noqa: ANN001, ANN201 - a site and a mend
    operations = operations_of(site, CATALOGUE, mend)
    assert operations is not None
    return edited(site, operations)


def test_a_second_path_and_a_back_up_let_the_message_leave() -> None:
    site = one_room(devices=(UNIT, SENDER), outlets=(ROUTER,))
    before = message_hours(site, CATALOGUE, unit=UNIT)
    assert before is not None
    assert before.high == 0.0
    for mend in (*second_path(site, CATALOGUE), *router_back_up(CATALOGUE, routers(site, CATALOGUE)[0])):
        after = message_hours(carried_out(site, mend), CATALOGUE, unit=UNIT)
        assert after is not None
        # Broadband also needs its transmitter, which has no battery: the router's alone is not enough.
        assert (after.low > 0.0) == (mend.action == "replace-device")


def test_where_the_only_transmitter_is_lost_another_goes_on_the_wall_beside_the_unit() -> None:
    site = one_room(devices=(UNIT, SENDER), outlets=(ROUTER,))
    (mend,) = second_path(site, CATALOGUE, beside="sender")
    after = carried_out(site, mend)
    unit, new = standing(after, after.device("unit")), standing(after, after.devices[-1])
    assert isinstance(after.devices[-1].mount, WallMount)
    assert BESIDE_M <= math.dist((unit.x_m, unit.y_m), (new.x_m, new.y_m)) < 1.0
    assert [one.by for one in message_paths(after, CATALOGUE)].count("mobile") == 1


def test_beside_a_unit_in_no_room_it_stands_where_the_unit_stands() -> None:
    outside = on_floor("unit", "control-unit-with-keypad", -30.0, 3.0, 1.4)
    (mend,) = second_path(one_room(devices=(outside,)), CATALOGUE)
    after = carried_out(one_room(devices=(outside,)), mend)
    assert standing(after, after.devices[-1])[:4] == standing(after, outside)[:4]


def test_what_has_a_back_up_needs_none() -> None:
    box = on_floor("box", "router-with-back-up", 4.0, 3.0, 0.3)
    site = one_room(devices=(box,))
    assert router_back_up(CATALOGUE, routers(site, CATALOGUE)[0]) == ()


def test_a_unit_with_a_longer_standby() -> None:
    site = one_room(devices=(UNIT,))
    assert hours_of(UNIT, CATALOGUE, pack="uk-eu").low < 12.0
    (mend,) = longer_standby(site, CATALOGUE, UNIT, least=12.0)
    after = carried_out(site, mend).devices[0]
    assert hours_of(after, CATALOGUE, pack="uk-eu").low >= 12.0
    assert longer_standby(site, CATALOGUE, UNIT, least=1000.0) == ()


def test_no_sounder_of_its_own_power_is_made_up_for_inside() -> None:
    inside = one_room(devices=(on_wall("bell", "sounder-inside", "north", 2.0),))
    assert own_power_sounders(inside, CATALOGUE) == ()

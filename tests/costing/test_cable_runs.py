"""How long cables are."""

from __future__ import annotations

import pytest

from common.houses import on_wall, one_room
from common.priced_room import UNIT
from wardwright.costing.cable_runs import cable_run_m
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
WIRED = on_wall("md", "movement-8m-wired", "south", 4.0)


def test_along_one_wall_and_up() -> None:
    assert cable_run_m(one_room(devices=(UNIT, WIRED)), CATALOGUE, WIRED) == pytest.approx(3.0 + 0.7)


def test_without_a_control_unit_it_is_not_known() -> None:
    assert cable_run_m(one_room(devices=(WIRED,)), CATALOGUE, WIRED) is None


@pytest.mark.parametrize("sheet", ["message-broadband", "router-existing", "smoke-alarm-alone"])
def test_what_stands_by_the_unit_or_alone_has_no_run(sheet: str) -> None:
    device = on_wall("x", sheet, "south", 4.0)
    assert cable_run_m(one_room(devices=(UNIT, device)), CATALOGUE, device) == 0.0

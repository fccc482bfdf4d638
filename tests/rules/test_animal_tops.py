"""What animals may stand on."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import one_room, two_rooms_and_hall
from wardwright.model.fabric import Stair, Storey
from wardwright.model.fixture import Fixture
from wardwright.rules.animal_tops import tops_of


def box(**facts: Any) -> Fixture:
    usual: dict[str, Any] = {
        "id": "box",
        "name": "box",
        "storey": "ground",
        "kind": "table",
        "centre_m": (2.0, 2.0),
        "size_m": (1.0, 0.6),
        "height_m": 0.75,
    }
    return Fixture(**(usual | facts))


def test_a_floor_and_a_table() -> None:
    floor, table = tops_of(one_room(fixtures=(box(),)).bare)
    assert (floor.kind, floor.thing, floor.top_m, floor.area.area) == ("floor", None, 0.0, 20.0)
    assert (table.kind, table.thing, table.top_m, table.width_m) == ("table", "box", 0.75, 0.6)
    assert table.area.area == pytest.approx(0.6)
    assert len(table.points) == 60


def test_half_under_a_shelf() -> None:
    """A shelf that hangs 0.05 m above the table's west half leaves the east half to stand on."""
    over = box(id="over", centre_m=(1.75, 2.0), size_m=(0.5, 0.6), base_m=0.8, height_m=0.2)
    tops = {top.thing: top for top in tops_of(one_room(fixtures=(box(), over)).bare)}
    assert tops["box"].area.area == pytest.approx(0.3)
    assert tops["box"].points[:, 0].min() > 2.0


def test_a_thing_across_two_rooms_comes_once_for_each() -> None:
    across = box(centre_m=(4.05, 3.0), size_m=(1.0, 0.6))
    tops = [top for top in tops_of(two_rooms_and_hall(fixtures=(across,)).bare) if top.thing == "box"]
    assert [top.spaces for top in tops] == [("hall",), ("kitchen",)]
    assert sum(top.area.area for top in tops) == pytest.approx(0.9 * 0.6)


def test_a_flight_has_a_top_for_each_step() -> None:
    """2.7 m in steps of about 0.2 m: fourteen, the last at the upper floor."""
    first = Storey(id="first", name="first floor", elevation_m=2.7)
    stair = Stair(id="stair", name="stairs", lower="ground", upper="first", line_m=((0.5, 1.0), (4.5, 1.0)))
    steps = list(tops_of(one_room(storeys=(*one_room().storeys, first), stairs=(stair,)).bare))[1:]
    assert len(steps) == 14
    assert (steps[0].top_m, steps[-1].top_m) == (pytest.approx(2.7 / 14), pytest.approx(2.7))
    assert all(step.storeys == ("ground", "first") for step in steps)
    assert sum(step.area.area for step in steps) == pytest.approx(4.0 * 0.9, rel=0.01)


def test_a_neighbours_room_is_none_of_ours() -> None:
    theirs = one_room().spaces[0].model_copy(update={"belongs": "neighbour"})
    assert tops_of(one_room(spaces=(theirs,), fixtures=(box(),)).bare) == ()

import pytest
import shapely

from common.broken import hut
from wardwright.model.device import CeilingMount
from wardwright.model.floor import lets_through, solid_walls, storey_parts, walkable
from wardwright.model.revision import moved, replaced

HUT = hut()
GROUND = storey_parts(HUT, "ground")


def test_the_parts_of_a_storey_are_its_own_in_the_order_of_ids() -> None:
    assert [wall.id for wall in GROUND.walls] == ["east", "middle", "north", "south", "west"]
    assert [space.id for space in GROUND.spaces] == ["hall", "kitchen"]
    assert [stair.id for stair in GROUND.stairs] == ["stairs"]
    first = storey_parts(HUT, "first")
    assert (first.walls, [space.id for space in first.spaces]) == ((), ["landing"])
    assert [stair.id for stair in first.stairs] == ["stairs"]


def test_turning_the_lists_round_or_moving_a_device_changes_no_part() -> None:
    turned = replaced(HUT, walls=tuple(reversed(HUT.walls)), spaces=tuple(reversed(HUT.spaces)))
    assert storey_parts(turned, "ground") == GROUND
    device_moved = moved(HUT, "unit", CeilingMount(storey="ground", at_m=(1.0, 1.0)))
    assert hash(storey_parts(device_moved, "ground")) == hash(GROUND)
    assert walkable(storey_parts(device_moved, "ground")) is walkable(GROUND)


def test_doors_are_cut_out_of_walls_and_windows_are_not() -> None:
    solid = solid_walls(GROUND)
    assert not solid.contains(shapely.Point(3.05, 1.0))  # the kitchen door
    assert solid.contains(shapely.Point(3.05, 2.0))
    assert solid.contains(shapely.Point(6.1, 2.0))  # the kitchen window


@pytest.mark.parametrize(
    ("kind", "sill_m", "through"),
    [
        ("door", 0.0, True),
        ("gap", 0.3, True),
        ("door", 0.5, False),
        ("window", 0.0, False),
        ("garage-door", 0.0, True),
    ],
)
def test_what_lets_a_person_through(kind: str, sill_m: float, through: bool) -> None:
    opening = HUT.opening("kitchen-door").model_copy(update={"kind": kind, "sill_m": sill_m})
    assert lets_through(opening) is through


def test_low_furniture_is_no_obstacle_and_high_furniture_is() -> None:
    middle = shapely.Point(4.5, 3.0)
    assert walkable(GROUND).contains(middle)
    tall = hut(("fixtures/table/height_m", 1.8))
    assert not walkable(storey_parts(tall, "ground")).contains(middle)
    hanging = hut(("fixtures/table/height_m", 1.0), ("fixtures/table/base_m", 1.3))
    assert walkable(storey_parts(hanging, "ground")).contains(middle)


def test_the_floor_hangs_together_through_its_doors() -> None:
    assert len(shapely.get_parts(walkable(GROUND))) == 1
    shut_off = storey_parts(hut(("openings/kitchen-door/kind", "window")), "ground")
    assert len([part for part in shapely.get_parts(walkable(shut_off)) if part.area > 1.0]) == 2

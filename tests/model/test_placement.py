import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from common.broken import hut
from common.houses import on_wall, one_room
from wardwright.model.device import CeilingMount, Device, FreeMount, WallMount
from wardwright.model.fabric import Slope, Wall
from wardwright.model.fixture import Fixture
from wardwright.model.placement import (
    CEILING_DROP_M,
    FACE_GAP_M,
    along,
    ceiling_height,
    direction,
    fixture_outline,
    is_way_in,
    opening_footprint,
    opening_line,
    sides_of_opening,
    slope_plane,
    space_at,
    standing,
    wall_footprint,
)
from wardwright.model.revision import moved, replaced

HUT = hut()


def test_a_line_has_a_direction_a_left_and_a_length() -> None:
    assert direction(((1.0, 1.0), (1.0, 3.0))) == ((0.0, 1.0), (-1.0, 0.0), 2.0)
    assert direction(((1.0, 1.0), (1.0, 1.0)))[2] == 0.0
    assert along(((1.0, 1.0), (1.0, 3.0)), 0.5, left_m=0.2) == (0.8, 1.5)


def test_a_wall_is_its_line_at_its_thickness_or_its_own_outline() -> None:
    wall = Wall(id="w", storey="ground", line_m=((0.0, 0.0), (4.0, 0.0)), thickness_m=0.2)
    assert wall_footprint(wall) == ((0.0, -0.1), (4.0, -0.1), (4.0, 0.1), (0.0, 0.1))
    ring = ((0.0, 0.0), (4.0, 0.0), (4.0, 1.0))
    assert wall_footprint(wall.model_copy(update={"footprint_m": ring})) == ring


def test_an_opening_is_about_its_middle() -> None:
    wall, opening = HUT.wall("middle"), HUT.opening("kitchen-door")
    (ax, ay), (bx, by) = opening_line(wall, opening)
    assert (ax, ay, bx, by) == pytest.approx((3.05, 0.6, 3.05, 1.4))
    xs, ys = zip(*opening_footprint(wall, opening), strict=True)
    assert (min(xs), max(xs), min(ys), max(ys)) == pytest.approx((3.0, 3.1, 0.6, 1.4))


def test_a_fixture_is_turned_about_its_middle() -> None:
    box = Fixture(id="f", name="f", storey="ground", centre_m=(2.0, 1.0), size_m=(2.0, 1.0), turn_deg=90.0)
    xs, ys = zip(*fixture_outline(box), strict=True)
    assert (min(xs), max(xs), min(ys), max(ys)) == pytest.approx((1.5, 2.5, 0.0, 2.0))


def test_the_smallest_space_that_holds_a_point() -> None:
    larder = HUT.space("kitchen").model_copy(
        update={"id": "larder", "outline_m": ((5.0, 0.0), (6.0, 0.0), (6.0, 1.0), (5.0, 1.0))}
    )
    site = replaced(HUT, spaces=(*HUT.spaces, larder))
    found = [space_at(site, "ground", point) for point in ((5.5, 0.5), (4.0, 2.0), (9.0, 9.0))]
    assert [space and space.id for space in found] == ["larder", "kitchen", None]
    assert space_at(site, "nowhere", (5.5, 0.5)) is None


@given(x=st.floats(-1.0, 10.0), y=st.floats(-1.0, 10.0))
def test_all_outlines_at_once_hold_what_each_holds(x: float, y: float) -> None:
    place = shapely.Point(x, y)
    hold = [one for one in HUT.spaces if shapely.Polygon(one.outline_m).intersects(place)]
    smallest = min(hold, key=lambda one: (shapely.Polygon(one.outline_m).area, one.id), default=None)
    assert space_at(HUT, "ground", (x, y)) == smallest


def test_the_two_sides_of_an_opening() -> None:
    # The wall between runs north: the hall, to the west, is on its left.
    assert sides_of_opening(HUT, HUT.opening("kitchen-door")) == ("hall", "kitchen")
    assert sides_of_opening(HUT, HUT.opening("front-door")) == ("hall", None)
    told = HUT.opening("kitchen-door").model_copy(update={"joins": (None, "kitchen")})
    assert sides_of_opening(HUT, told) == (None, "kitchen")


def test_a_way_in_leads_from_outside_or_from_what_is_not_ours() -> None:
    assert is_way_in(HUT, HUT.opening("front-door"))
    assert not is_way_in(HUT, HUT.opening("kitchen-door"))
    flat = hut(("spaces/hall/belongs", "shared"))
    assert is_way_in(flat, flat.opening("kitchen-door"))
    assert not is_way_in(flat, flat.opening("front-door"))


def test_the_lowest_slope_over_a_point_is_its_ceiling() -> None:
    slope = Slope(corners_m=((0.0, 0.0, 1.0), (6.0, 0.0, 1.0), (6.0, 4.0, 5.0), (0.0, 4.0, 5.0)))
    first = HUT.storey("first").model_copy(update={"slopes": (slope,)})
    site = replaced(HUT, storeys=(HUT.storey("ground"), first))
    # z = 1 + y, under a storey of 2.4 m.
    assert ceiling_height(site, "first", (3.0, 0.5)) == pytest.approx(1.5)
    assert ceiling_height(site, "first", (3.0, 3.0)) == pytest.approx(2.4)
    assert slope_plane(slope.corners_m) == pytest.approx((0.0, 1.0, 1.0))


@pytest.mark.parametrize(("side", "x_m", "heading_deg"), [("left", -1.0, 180.0), ("right", 1.0, 0.0)])
def test_a_device_on_a_wall_stands_off_its_face_and_looks_away(
    side: str, x_m: float, heading_deg: float
) -> None:
    mount = WallMount.model_validate({"wall": "middle", "side": side, "offset_m": 3.0, "height_m": 2.2})
    site = moved(HUT, "kitchen-detector", mount)
    stands = standing(site, site.device("kitchen-detector"))
    assert stands.x_m == pytest.approx(3.05 + x_m * (0.05 + FACE_GAP_M))
    assert (stands.storey, stands.y_m, stands.height_m) == ("ground", 3.0, 2.2)
    assert math.cos(math.radians(stands.heading_deg - heading_deg)) == pytest.approx(1.0)


def test_the_other_mounts() -> None:
    def stands(mount: object, **more: object) -> tuple[object, ...]:
        device = Device.model_validate(
            {"id": "d", "name": "d", "sheet": "movement-12m", "mount": mount, **more}
        )
        return tuple(standing(HUT, device))

    assert stands(CeilingMount(storey="ground", at_m=(1.0, 1.0))) == (
        "ground",
        1.0,
        1.0,
        2.4 - CEILING_DROP_M,
        0.0,
    )
    assert stands(FreeMount(storey="first", at_m=(1.0, 1.0)), heading_deg=45.0) == (
        "first",
        1.0,
        1.0,
        1.0,
        45.0,
    )
    contact = standing(HUT, HUT.device("front-contact"))
    assert (contact.storey, contact.height_m) == ("ground", 2.0)
    assert (contact.x_m, contact.y_m) == pytest.approx((1.5, -0.1))


def test_a_balcony_of_ours_lies_outside_what_is_protected() -> None:
    kitchen = HUT.space("kitchen")
    assert not is_way_in(HUT, HUT.opening("kitchen-door"))
    balcony = kitchen.model_copy(update={"use": "balcony"})
    assert (kitchen.is_protected, balcony.is_protected, balcony.is_outdoors) == (True, False, True)
    other = replaced(HUT, spaces=tuple(balcony if s is kitchen else s for s in HUT.spaces))
    assert is_way_in(other, other.opening("kitchen-door"))


def test_a_place_is_remembered_by_how_a_device_is_fixed() -> None:
    """Another sheet or tilt in the same place is no new place, nor is it in a site with other devices."""
    fan = on_wall("fan", "fan", "west", 2.0)
    tilted = fan.model_copy(update={"sheet": "fan-passing-pets", "tilt_deg": 2.0})
    assert standing(one_room(devices=(fan,)), fan) is standing(one_room(devices=(tilted,)), tilted)
    turned = fan.model_copy(update={"heading_deg": 10.0})
    assert standing(one_room(), turned).heading_deg == 10.0

"""Places on walls: in the room, off its openings and furniture, under the ceiling."""

from __future__ import annotations

import math

import shapely

from common.houses import one_room, open_edge, opening, radiator, two_rooms_and_hall, window
from wardwright.model.fabric import Slope
from wardwright.model.site import Site
from wardwright.rules.wall_spots import WallSpot, room_of, wall_spots


def spots(site: Site, height_m: float = 2.2, space: str = "living") -> tuple[WallSpot, ...]:
    return wall_spots(site, site.space(space), height_m=height_m)


def test_all_are_just_inside_their_room() -> None:
    found = spots(one_room())
    outline = shapely.Polygon(one_room().space("living").outline_m)
    assert {spot.wall for spot in found} == {"south", "east", "north", "west"}
    for spot in found:
        assert math.isclose(outline.exterior.distance(shapely.Point(spot.x_m, spot.y_m)), 0.04)
        assert outline.contains(shapely.Point(spot.x_m, spot.y_m))


def test_every_heading_looks_into_the_room() -> None:
    room = one_room()
    outline = shapely.Polygon(room.space("living").outline_m)
    corners = [spot for spot in spots(room) if spot.corner]
    assert len(corners) == 8
    for spot in corners:
        angle = math.radians(spot.heading_deg)
        ahead = (spot.x_m + 2 * math.cos(angle), spot.y_m + 2 * math.sin(angle))
        assert outline.contains(shapely.Point(ahead))


def test_the_face_of_a_shared_wall_is_that_of_the_room() -> None:
    plan = two_rooms_and_hall()
    on_wall = [spot for spot in spots(plan, space="study") if spot.wall == "study-wall"]
    assert on_wall
    assert {spot.side for spot in on_wall} == {"right"}
    assert all(spot.x_m > 6.2 for spot in on_wall)


def test_openings_are_kept_clear_at_their_height_only() -> None:
    plan = one_room(openings=(opening("door", "south", 2.65), window("pane", "north", 2.65, head_m=2.3)))

    def near(spot: WallSpot, wall: str) -> bool:
        return spot.wall == wall and abs(spot.offset_m - 2.65) < 0.6

    assert any(near(spot, "south") for spot in spots(plan, 2.2))
    assert not any(near(spot, "north") for spot in spots(plan, 2.2))
    assert not any(near(spot, "south") for spot in spots(plan, 1.5))


def test_tall_furniture_is_kept_clear() -> None:
    cupboard = radiator(2.5, 0.1, heat="none", height_m=2.3)
    plan = one_room(fixtures=(cupboard,))
    assert not any(spot.wall == "south" and 2.2 < spot.offset_m < 3.1 for spot in spots(plan))
    assert any(spot.wall == "south" and 2.2 < spot.offset_m < 3.1 for spot in spots(plan, 2.35))


def test_no_place_above_the_ceiling_or_a_slope() -> None:
    assert spots(one_room(), 2.38) == ()
    slope = Slope(corners_m=((0, 0, 1.0), (5, 0, 1.0), (5, 4, 3.0), (0, 4, 3.0)))
    attic = one_room().storeys[0].model_copy(update={"slopes": (slope,), "height_m": 3.0})
    found = spots(one_room(storeys=(attic,)))
    assert found
    assert {spot.wall for spot in found if spot.y_m < 2.4} == set()


def test_open_edges_join_rooms() -> None:
    plan = two_rooms_and_hall(open_edges=(open_edge("hall", "study", ((6.1, 0.0), (6.1, 3.0))),))
    assert [space.id for space in room_of(plan, "ground", (5.0, 1.0))] == ["hall", "study"]
    assert [space.id for space in room_of(plan, "ground", (1.0, 1.0))] == ["kitchen"]
    assert room_of(plan, "ground", (50.0, 1.0)) == ()


def test_a_parapet_has_no_place_above_its_top() -> None:
    room = one_room()
    low = tuple(w.model_copy(update={"height_m": 1.0}) if w.id == "south" else w for w in room.walls)
    fenced = room.model_copy(update={"walls": low})
    assert {spot.wall for spot in spots(fenced)} == {"east", "north", "west"}
    assert "south" in {spot.wall for spot in spots(fenced, height_m=0.5)}

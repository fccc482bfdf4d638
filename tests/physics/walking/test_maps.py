from __future__ import annotations

import numpy as np
import shapely

from wardwright.geometry.raster import painted
from wardwright.physics.walking.free_floor import Passages, Rooms
from wardwright.physics.walking.maps import TimeMap, maps_from
from wardwright.physics.walking.network import Costs, reach_from
from wardwright.physics.walking.premises import Doors, FloorPlan, Network, network_between

COSTS = Costs(0.5, 1.0, 1.0)
START = np.array([1.0, 1.0])


def one_floor(room: shapely.Geometry) -> Network:
    doors = Doors((), np.empty((0, 2, 2)), (), np.empty((0, 2, 2)))
    passages = Passages(np.empty((0, 2)), np.empty((0, 2)), np.empty(0), np.empty(0))
    return network_between(
        (FloorPlan("ground", room, shapely.Polygon(), Rooms(room, (), passages), doors),),
        (),
        body_radius=0.22,
    )


def map_of(room: shapely.Geometry) -> TimeMap:
    network = one_floor(room)
    return maps_from(network, reach_from(network.web, 0, START, costs=COSTS), costs=COSTS, cell=0.05)[
        "ground"
    ]


def test_the_rim_of_a_room_is_as_early_as_the_floor_beside_it_and_never_later() -> None:
    room = shapely.box(0, 0, 4, 3)
    grid, times = map_of(room)
    inside = painted(grid, room)
    assert np.isfinite(times[inside]).all()
    assert np.isnan(times[~inside]).all()
    centres = grid.centres()
    stood = np.clip(centres, (0.22, 0.22), (3.78, 2.78))
    latest = 0.5 * np.linalg.norm(stood - START, axis=-1)
    assert (times[inside] <= latest[inside] + 1e-9).all()
    assert (times[inside] >= np.maximum(latest - 0.5 * 0.05 * 2, 0)[inside]).all()


def test_the_other_side_of_a_thin_wall_is_not_lent_a_time() -> None:
    rooms = shapely.union_all([shapely.box(0, 0, 2, 3), shapely.box(2.1, 0, 4, 3)])
    grid, times = map_of(rooms)
    beyond = painted(grid, shapely.box(2.2, 0, 4, 3))
    assert np.isnan(times[beyond]).all()


def test_a_map_cannot_be_written_to() -> None:
    assert not map_of(shapely.box(0, 0, 4, 3)).times.flags.writeable


def test_a_floor_that_cannot_be_reached_has_no_time() -> None:
    doors = Doors((), np.empty((0, 2, 2)), (), np.empty((0, 2, 2)))
    passages = Passages(np.empty((0, 2)), np.empty((0, 2)), np.empty(0), np.empty(0))
    rooms = {"ground": shapely.box(0, 0, 4, 3), "upper": shapely.box(0, 0, 4, 3), "loft": shapely.Polygon()}
    plans = tuple(
        FloorPlan(name, room, shapely.Polygon(), Rooms(room, (), passages), doors)
        for name, room in rooms.items()
    )
    network = network_between(plans, (), body_radius=0.22)
    maps = maps_from(network, reach_from(network.web, 0, START, costs=COSTS), costs=COSTS, cell=0.1)
    assert set(maps) == {"ground", "upper"}
    assert np.isnan(maps["upper"].times).all()

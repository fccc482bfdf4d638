import numpy as np
import pytest

from common.houses import one_room, two_rooms_and_hall
from wardwright.model.fabric import Stair, Storey
from wardwright.model.fixture import Fixture
from wardwright.model.floor_cells import cells_on_flights, floor_cells
from wardwright.model.surfaces import level_of, levels_by_stairs


def test_a_room_s_cells_are_free_and_its_own() -> None:
    cells = floor_cells(level_of(one_room(), "ground"), 0.1)
    assert cells.free.sum() * 0.01 == pytest.approx(20.0, abs=0.01)
    assert (cells.spaces[cells.free] == 0).all()
    assert cells.ceiling == pytest.approx(2.4)
    assert cells.points().shape == (2000, 2)


def test_tall_furniture_takes_floor_away_and_a_sofa_does_not() -> None:
    box = Fixture(id="box", name="box", storey="ground", centre_m=(2.0, 2.0), size_m=(1.0, 1.0), height_m=2.0)
    for height, expected in ((2.0, 19.0), (0.8, 20.0)):
        site = one_room(fixtures=(box.model_copy(update={"height_m": height}),))
        cells = floor_cells(level_of(site, "ground"), 0.1)
        assert cells.free.sum() * 0.01 == pytest.approx(expected, abs=0.01)


def test_entries_are_near_the_ways_in_only() -> None:
    cells = floor_cells(level_of(two_rooms_and_hall(), "ground"), 0.1)
    near = cells.grid.centres()[cells.free & np.isfinite(cells.entries)]
    at_front_door = (near[:, 1] < 0.16) & (np.abs(near[:, 0] - 5.1) < 0.61)
    at_windows = (np.abs(near[:, 1] - 3.0) < 0.76) & ((near[:, 0] < 0.16) | (near[:, 0] > 10.04))
    assert at_front_door.any()
    assert at_windows.any()
    assert (at_front_door | at_windows).all()


def test_doorways_belong_to_no_space() -> None:
    cells = floor_cells(level_of(two_rooms_and_hall(), "ground"), 0.1)
    doorway = cells.free & (cells.spaces < 0)
    assert 0 < doorway.sum() * 0.01 < 1.0
    assert set(np.unique(cells.spaces[cells.free])) == {-1, 0, 1, 2}


def test_a_storey_without_spaces_has_no_floor() -> None:
    cells = floor_cells(level_of(one_room(spaces=()), "ground"), 0.1)
    assert not cells.free.any()
    assert cells.points().shape == (0, 2)


def test_values_of_free_cells_come_back_as_a_mask() -> None:
    cells = floor_cells(level_of(one_room(), "ground"), 0.5)
    left = cells.points()[:, 0] < 2.5
    assert np.array_equal(cells.mask_of(left)[cells.free], left)
    assert not cells.mask_of(left)[~cells.free].any()


def test_cells_on_a_flight_lie_as_high_as_one_has_climbed() -> None:
    stair = Stair(id="flight", lower="ground", upper="first", line_m=((1, 1), (4, 1)), width_m=0.8)
    storeys = (
        Storey(id="ground", name="ground", elevation_m=0.0),
        Storey(id="first", name="first", elevation_m=2.7),
    )
    site = one_room(stairs=(stair,), storeys=storeys)
    level, others = level_of(site, "ground"), levels_by_stairs(site, "ground")
    rows, heights = cells_on_flights(level, others, 0.1)
    # By hand: 3 m by 0.8 m of cells, 0.9 m up a metre.
    places = floor_cells(level, 0.1).points()[rows]
    assert len(rows) == 240
    assert heights == pytest.approx((places[:, 0] - 1.0) * 0.9)
    assert len(cells_on_flights(level, (), 0.1)[0]) == 0

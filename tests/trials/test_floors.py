"""Regions of floor: what hangs together over cells and stairs, and what does not."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from common.worked_terrace import worked_terrace
from wardwright.geometry.raster import Grid
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.trials.floors import Regions, nearest_cells, on_grid, rings_of
from wardwright.trials.stacked_floors import Floors, StackedFloors, stack_for, stacked

GRID = Grid(0.0, 0.0, 1.0, 4, 3)


def floor(*rows: str) -> np.ndarray:
    """Cells from a drawing, the top row being the highest y; `.` is open."""
    return np.array([[letter == "." for letter in row] for row in reversed(rows)])


def anywhere_on(grid: Grid) -> Callable[[Spot], np.ndarray]:
    return lambda spot: nearest_cells(np.ones(grid.shape, dtype=bool), grid, (spot.x, spot.y))


def laid(grids: dict[str, Grid], floors: Floors) -> StackedFloors:
    return stacked(stack_for(grids), floors)


def regions(site: Site, mask: np.ndarray) -> Regions:
    open_floor = laid({"ground": GRID}, {"ground": mask})
    return Regions(site, standing_cells=anywhere_on(GRID), open_floor=open_floor)


def test_a_mask_is_carried_to_another_grid_by_its_middles() -> None:
    mask = floor("....", ".#..", "....")
    other = Grid(1.0, 1.0, 0.5, 4, 4)
    carried = on_grid(mask, of=GRID, onto=other)
    assert carried.tolist() == [
        [False, False, True, True],
        [False, False, True, True],
        [True, True, True, True],
        [True, True, True, True],
    ]
    assert not on_grid(mask, of=GRID, onto=Grid(9.0, 9.0, 1.0, 2, 2)).any()


def test_the_nearest_open_cell_is_found_or_none() -> None:
    fine = Grid(0.0, 0.0, 0.1, 4, 3)
    mask = floor("#...", "##..", "####")
    # From the middle of the lowest left cell two are 0.22 m away.
    assert sorted(map(tuple, nearest_cells(mask, fine, (0.05, 0.05)).tolist())) == [(1, 2), (2, 1)]
    assert nearest_cells(mask, fine, (0.25, 0.15)).tolist() == [[1, 2]]
    assert len(nearest_cells(mask, fine, (1.5, 0.15))) == 0
    assert len(nearest_cells(np.zeros((3, 4), dtype=bool), GRID, (0.5, 0.5))) == 0


def test_a_wall_parts_floor_and_a_corner_touch_joins_it() -> None:
    site = worked_terrace(contacts={}).model_copy(update={"stairs": ()})
    parted = regions(site, floor(".#..", ".#..", ".#.."))
    assert parted.regions_at(Spot("ground", 0.5, 0.5)) != parted.regions_at(Spot("ground", 3.5, 0.5))
    touching = regions(site, floor("..##", "##..", "##.."))
    assert touching.regions_at(Spot("ground", 0.5, 2.5)) == touching.regions_at(Spot("ground", 3.5, 0.5))


def test_stairs_join_storeys() -> None:
    site = worked_terrace(contacts={})
    whole = Grid(-1.0, -1.0, 1.0, 10, 10)
    everywhere = np.ones(whole.shape, dtype=bool)
    grids = {"ground": whole, "upper": whole}
    floors = laid(grids, {"ground": everywhere, "upper": everywhere})
    joined = Regions(site, standing_cells=anywhere_on(whole), open_floor=floors)
    assert joined.regions_at(Spot("ground", 5, 5)) == joined.regions_at(Spot("upper", 5, 5)) != frozenset()
    apart = Regions(
        site.model_copy(update={"stairs": ()}), standing_cells=anywhere_on(whole), open_floor=floors
    )
    assert apart.regions_at(Spot("ground", 5, 5)) != apart.regions_at(Spot("upper", 5, 5))


def test_a_spot_on_no_open_floor_is_in_no_region() -> None:
    site = worked_terrace(contacts={})
    shut = regions(site, np.zeros(GRID.shape, dtype=bool))
    assert shut.regions_at(Spot("ground", 1, 1)) == frozenset()
    assert shut.regions_at(Spot("attic", 1, 1)) == frozenset()
    assert not any(mask.any() for mask in shut.floors(frozenset()).values())
    assert rings_of({"ground": GRID}, shut.floors(frozenset())) == {}


def test_any_shift_of_a_grid_by_whole_cells_is_as_by_the_middles(monkeypatch: pytest.MonkeyPatch) -> None:
    rng = np.random.default_rng(7)
    for _ in range(200):
        one, other = (
            Grid(*(rng.integers(-9, 9, 2) * 0.1), 0.1, *map(int, rng.integers(1, 12, 2))) for _ in range(2)
        )
        mask = rng.random(one.shape) < 0.5
        by_cells = on_grid(mask, of=one, onto=other)
        with monkeypatch.context() as changed:
            changed.setattr("wardwright.trials.floors.EVEN", -1.0)
            assert np.array_equal(by_cells, on_grid(mask, of=one, onto=other))


def test_numbers_are_those_of_the_regions_that_share_cells() -> None:
    site = worked_terrace(contacts={}).model_copy(update={"stairs": ()})
    parted = regions(site, floor(".#..", ".#..", ".#.."))
    left = parted.regions_at(Spot("ground", 0.5, 0.5))
    assert parted.numbers_in(parted.floors(left)) == left
    both = left | parted.regions_at(Spot("ground", 3.5, 0.5))
    assert parted.numbers_in(parted.floors(both)) == both
    assert parted.floors(both)["ground"].tolist() == floor(".#..", ".#..", ".#..").tolist()


def test_outlines_are_those_of_the_cells() -> None:
    ring = rings_of({"ground": GRID}, {"ground": floor("....", "....", "....")})["ground"][0]
    assert sorted(ring) == [(0.0, 0.0), (0.0, 3.0), (4.0, 0.0), (4.0, 3.0)]

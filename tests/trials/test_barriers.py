"""Watched floor is taken away, and a closed wall never leaks."""

from __future__ import annotations

import numpy as np
import pytest

from common.turning import quarter_turned
from common.worked_terrace import worked_terrace
from wardwright.geometry.raster import Grid
from wardwright.model.device import WallMount
from wardwright.model.opening import Opening
from wardwright.physics.walking.from_site import Spot, premises_network, time_maps
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.barriers import (
    CELL_M,
    UNIT_PACE,
    exact_metres,
    grids_of,
    regions_without,
    standing_floor,
    union_of,
    unwatched_regions,
    walked_floor,
    walked_metres,
    watched_floor,
)
from wardwright.trials.stacked_floors import farthest, stack_for, stacked

CATALOGUE = load_catalogue()
KITCHEN_CORNER = WallMount(wall="ground-cross", side="left", offset_m=5.7, height_m=2.2)
SITE = worked_terrace(
    contacts={"kitchen-door": "instant"}, movement={"corner": (KITCHEN_CORNER, 135.0, "instant")}
)
CORNER = SITE.device("corner")
DOOR = SITE.device("kitchen-door-contact")


def test_grids_are_those_of_the_time_maps() -> None:
    maps = time_maps(premises_network(SITE), Spot("ground", 1, 1), paces=UNIT_PACE, cell=CELL_M)
    assert {storey: one.grid for storey, one in maps.items()} == grids_of(SITE.bare)
    assert walked_metres(SITE.bare, Spot("ground", 1, 1)).keys() == maps.keys()


@pytest.mark.parametrize("turned", [False, True])
def test_all_rooms_hang_together_through_doors_and_stairs(turned: bool) -> None:
    site = quarter_turned(SITE) if turned else SITE
    regions = regions_without(site.bare, [])
    inside = {space.id: tuple(np.mean(space.outline_m, axis=0)) for space in site.spaces}
    found = {regions.regions_at(Spot(site.space(name).storey, *at)) for name, at in inside.items()}
    assert len(found) == 1
    assert frozenset() not in found


def test_a_room_whose_door_is_walled_up_is_parted_off() -> None:
    openings = tuple(o for o in SITE.openings if o.id != "kitchen-door")
    site = worked_terrace(contacts={}).model_copy(update={"openings": openings})
    regions = regions_without(site.bare, [])
    assert regions.regions_at(Spot("ground", 5, 6.5)) != regions.regions_at(Spot("ground", 1, 6.5))


def test_a_very_narrow_door_is_still_a_way() -> None:
    narrow: tuple[Opening, ...] = tuple(
        o.model_copy(update={"width_m": 0.35}) if o.id == "kitchen-door" else o for o in SITE.openings
    )
    regions = regions_without(SITE.model_copy(update={"openings": narrow}).bare, [])
    assert regions.regions_at(Spot("ground", 5, 6.5)) == regions.regions_at(Spot("ground", 1, 6.5))


def test_a_contact_closes_its_doorway_unless_the_leaf_stands_open() -> None:
    regions = unwatched_regions(SITE.bare, CATALOGUE, (DOOR,), side="surely")
    kitchen, hall = Spot("ground", 5, 6.5), Spot("ground", 1, 6.5)
    assert regions.regions_at(kitchen) != regions.regions_at(hall)
    ajar = tuple(
        o.model_copy(update={"habit": "open"}) if o.id == "kitchen-door" else o for o in SITE.openings
    )
    site = SITE.model_copy(update={"openings": ajar})
    assert watched_floor(site.bare, CATALOGUE, DOOR, side="surely") == {}


def test_sides_of_a_detector_are_nested() -> None:
    surely, likely, possibly = (
        watched_floor(SITE.bare, CATALOGUE, CORNER, side=side)["ground"]
        for side in ("surely", "likely", "possibly")
    )
    assert not (surely & ~likely).any()
    assert not (likely & ~possibly).any()
    assert 0 < surely.sum() < likely.sum() < possibly.sum()


def test_standing_floor_keeps_off_the_walls() -> None:
    grid = grids_of(SITE.bare)["ground"]
    centres = grid.centres()
    standing = standing_floor(SITE.bare)["ground"]
    wall = (np.abs(centres[..., 0] - 2.05) < 0.05) & (centres[..., 1] < 1.4)
    assert not standing[wall].any()


def test_exact_distances_are_those_of_the_walked_cells() -> None:
    start = Spot("ground", 1, 1)
    walked, metres = walked_floor(SITE.bare), walked_metres(SITE.bare, start)
    for storey, one in metres.items():
        alone = stacked(walked.stack, {storey: walked[storey]})
        assert farthest(exact_metres(SITE.bare, start), alone) == np.nanmax(one.times[walked[storey]])


def test_union_is_the_cells_of_any() -> None:
    grids = {"a": Grid(0.0, 0.0, 1.0, 2, 1), "b": Grid(0.0, 0.0, 1.0, 1, 1)}
    one = stacked(stack_for(grids), {"a": np.array([[True, False]])})
    other = stacked(stack_for(grids), {"a": np.array([[False, False]]), "b": np.array([[True]])})
    assert {k: v.tolist() for k, v in union_of([one, other]).items()} == {"a": [[True, False]], "b": [[True]]}

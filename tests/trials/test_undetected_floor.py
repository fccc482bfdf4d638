"""The floor that is reached undetected is known again whatever was moved, and asked by its cells alone."""

from __future__ import annotations

import numpy as np
import pytest

from common.worked_terrace import worked_terrace
from wardwright.model.device import WallMount
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.barriers import grids_of, stack_of, walked_floor, walked_metres
from wardwright.trials.floors import rings_of
from wardwright.trials.stacked_floors import one_of, stacked
from wardwright.trials.undetected import undetected
from wardwright.trials.undetected_floor import reaches_space, undetected_in
from wardwright.trials.ways_in import ways_in
from wardwright.trials.ways_on_foot import starts_of

CATALOGUE = load_catalogue()
HOUSE = worked_terrace(contacts={}).bare
START = starts_of(HOUSE, CATALOGUE)[0]


def test_a_move_that_leaves_the_floor_as_it_is_leaves_the_object() -> None:
    found = []
    for offset in (
        7.83,
        7.8300001,
    ):  # no other test stands it there: both are worked out here, neither is remembered
        mount = WallMount(wall="ground-back", side="left", offset_m=offset, height_m=2.2)
        site = worked_terrace(contacts={}, movement={"hall": (mount, -60.0, "instant")})
        way = next(one for one in ways_in(site, CATALOGUE)[0] if one.opening.id == "kitchen-window")
        found.append(undetected(site, CATALOGUE, way=way, side="likely"))
    assert found[0] is found[1]
    assert found[0].distance_m > 0.0


def test_all_that_is_asked_is_that_of_the_cells() -> None:
    floors = {storey: mask.copy() for storey, mask in walked_floor(HOUSE).items()}
    floors["upper"][:] = False
    found = undetected_in(HOUSE, START, (one_of(stacked(stack_of(HOUSE), floors)),))
    metres = walked_metres(HOUSE, START)["ground"].times[floors["ground"]]
    assert found.distance_m == np.nanmax(metres)
    assert found.area_m2 == pytest.approx(floors["ground"].sum() * 0.01)
    assert found.rings == rings_of(grids_of(HOUSE), floors)
    assert reaches_space(found, "bedroom") is None


def test_noticed_at_once_is_no_floor() -> None:
    none = undetected_in(HOUSE, START, ())
    assert (none.distance_m, none.area_m2, none.rings) == (0.0, 0.0, {})

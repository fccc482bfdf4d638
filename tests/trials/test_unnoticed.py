"""Cores seen from one way in: larger than for somebody who may turn up anywhere, and never crossed."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.ndimage import distance_transform_edt

from common.worked_terrace import worked_terrace
from wardwright.model.device import WallMount
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.barriers import standing_floor, watched_floor
from wardwright.trials.unnoticed import GuardedFloor, WatchedShape, shape_of

CATALOGUE = load_catalogue()
HALL = {"hall": (WallMount(wall="ground-back", side="left", offset_m=7.8, height_m=2.2), -60.0, "instant")}
SITE = worked_terrace(contacts={}, movement=HALL)
KITCHEN = Spot("ground", 6.5, 6.5)


def shape() -> WatchedShape:
    found = shape_of(SITE.bare, CATALOGUE, SITE.device("hall"))
    assert found is not None
    return found


def deepest(one: WatchedShape, reached: np.ndarray, start: Spot | None = None) -> float:
    """How far inside the shape any reached cell lies, from the nearest reached cell outside it or the start."""
    sources = reached & ~one.shape
    if start is not None:
        row, column = one.grid.cells_of(np.array([start.x, start.y]))
        sources[int(row), int(column)] = True
    away = distance_transform_edt(~sources, sampling=one.grid.cell)
    return float(away[reached & one.shape].max())


def test_coming_from_the_kitchen_nobody_is_unnoticed_more_than_a_metre_and_a_half_inside() -> None:
    one = shape()
    floors = GuardedFloor(SITE.bare, [one], closed=[]).unnoticed_from(KITCHEN)
    assert 1.0 < deepest(one, floors["ground"]) < 1.5 + 0.25
    centres = one.grid.centres()[floors["ground"]]
    assert not ((centres[:, 0] < 2.0) & (centres[:, 1] < 2.0)).any()  # the front of the hall
    assert not floors["upper"].any()


def test_a_core_from_fewer_sources_is_never_smaller() -> None:
    one = shape()
    everywhere = one.outside.numbers_in(standing_floor(SITE.bare))
    kitchen = one.outside.regions_at(KITCHEN)
    assert kitchen < everywhere
    assert not (one.core(everywhere, None) & ~one.core(kitchen, None)).any()
    assert one.core(kitchen, None).sum() > one.core(everywhere, None).sum()
    assert not (one.core(kitchen, None) & ~one.shape).any()


def test_turning_up_inside_the_shape_leaves_a_metre_and_a_half() -> None:
    inside = Spot("ground", 1.4, 5.0)
    one = shape()
    assert one.holds(inside)
    floors = GuardedFloor(SITE.bare, [one], closed=[]).unnoticed_from(inside)
    assert 1.0 < deepest(one, floors["ground"], inside) < 1.5 + 0.25


def test_without_shapes_all_floor_is_reached_and_closed_floor_is_not_crossed() -> None:
    everything = GuardedFloor(SITE.bare, [], closed=[]).unnoticed_from(KITCHEN)
    assert everything["upper"].any()
    site = worked_terrace(contacts={"kitchen-door": "instant"})
    doorway = watched_floor(site.bare, CATALOGUE, site.device("kitchen-door-contact"), side="surely")
    shut = GuardedFloor(site.bare, [], closed=[doorway]).unnoticed_from(KITCHEN)
    assert not shut["upper"].any()
    assert shut["ground"].sum() == pytest.approx(18.0 / 0.01, rel=0.2)

"""Places on the floor: clear of walls and of what stands there."""

from __future__ import annotations

import math

import pytest

from common.houses import one_room
from common.rule_houses.water import sink
from wardwright.rules.floor_spots import CLEAR_M, floor_spot, standing_over


def test_what_stands_on_a_place() -> None:
    site = one_room(fixtures=(sink(2.0, 2.0), sink(2.0, 2.0, id="shelf", base_m=0.3)))
    found = standing_over(site, "ground", (2.0, 2.0))
    assert found is not None
    assert found.id == "sink"
    assert standing_over(site, "ground", (3.0, 2.0)) is None
    assert standing_over(one_room(fixtures=(sink(2.0, 2.0, base_m=0.3),)), "ground", (2.0, 2.0)) is None


def test_the_nearest_free_place_is_beside_the_box() -> None:
    site = one_room(fixtures=(sink(2.0, 2.0),))
    spot = floor_spot(site, site.spaces[0], nearest_to=(2.2, 2.0), fits=lambda _: True)
    assert spot is not None
    assert spot == pytest.approx((2.3 + CLEAR_M, 2.0), abs=1e-5)


def test_a_place_must_fit() -> None:
    site = one_room()
    spot = floor_spot(
        site, site.spaces[0], nearest_to=(1.0, 1.0), fits=lambda p: math.dist(p, (4.0, 3.0)) < 0.3
    )
    assert spot is not None
    assert math.dist(spot, (4.0, 3.0)) < 0.3
    assert floor_spot(site, site.spaces[0], nearest_to=(1.0, 1.0), fits=lambda _: False) is None

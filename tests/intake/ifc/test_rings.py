from __future__ import annotations

import numpy as np
import pytest
import shapely

from wardwright.intake.ifc.rings import WallBody, ring_facts, rings_at
from wardwright.intake.ifc.shapes import Solid, plan_outline
from wardwright.model.fabric import Space


def wall(x0: float, y0: float, x1: float, y1: float, *, top: float) -> WallBody:
    flat = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
    points = np.array([(x, y, z) for z in (0.0, top) for x, y in flat])
    sides = [(a, (a + 1) % 4, (a + 1) % 4 + 4) for a in range(4)]
    sides += [(a, (a + 1) % 4 + 4, a + 4) for a in range(4)]
    solid = Solid(points, np.array([(0, 2, 1), (0, 3, 2), (4, 5, 6), (4, 6, 7), *sides]))
    return WallBody(solid, plan_outline(solid))


def house(*, long_top: float) -> list[WallBody]:
    return [
        wall(0, 0, 6, 0.3, top=long_top),
        wall(0, 3.7, 6, 4, top=long_top),
        wall(0, 0.3, 0.3, 3.7, top=2.5),
        wall(5.7, 0.3, 6, 3.7, top=2.5),
    ]


def test_four_walls_close_one_ring() -> None:
    (ring,) = rings_at(house(long_top=2.5), 1.0)
    assert ring.symmetric_difference(shapely.box(0.3, 0.3, 5.7, 3.7)).area < 1e-6


def test_low_walls_close_only_low() -> None:
    assert rings_at(house(long_top=0.6), 1.0) == []
    assert len(rings_at(house(long_top=0.6), 0.3)) == 1


def test_a_hole_that_is_already_cut_out_is_filled() -> None:
    walls = house(long_top=2.5)
    gap = [wall(0, 0, 2, 0.3, top=2.5), wall(3, 0, 6, 0.3, top=2.5), *walls[1:]]
    assert rings_at(gap, 1.0) == []
    filled = gap[0]._replace(shadow=shapely.box(0, 0, 6, 0.3), holes=(wall(2, -0.1, 3, 0.4, top=2.0).solid,))
    (ring,) = rings_at([filled, *gap[1:]], 1.0)
    assert ring.area == pytest.approx(5.4 * 3.4, abs=1e-6)


def room(name: str) -> Space:
    return Space(id=name, name=name, storey="g", outline_m=((0, 0), (1, 0), (1, 1), (0, 1)))


def test_facts_in_words() -> None:
    hall, kitchen, loft = room("hall"), room("kitchen"), room("loft")
    rooms = [hall, kitchen, loft]
    within = {1.0: [[hall, kitchen]], 0.3: [[hall, kitchen], [loft]]}
    assert ring_facts("Ground", rooms, within) == [
        "Ground: two rooms in one ring of walls; nothing is built between hall, kitchen",
        "Ground: the ring of walls about loft closes only low (at 0.3 m, not at 1 m)",
    ]
    assert ring_facts("Ground", [hall], {1.0: [], 0.3: []}) == ["Ground: no ring of walls closes about hall"]
    assert ring_facts("Ground", [hall], {1.0: [[hall]], 0.3: [[hall]]}) == []

from __future__ import annotations

import numpy as np
import pytest
import shapely

from wardwright.intake.ifc.shapes import Solid, cut, joined, levels, normals, plan_outline


def box(x0: float, y0: float, z0: float, *, size: tuple[float, float, float]) -> Solid:
    x, y, z = size
    points = np.array(
        [(x0 + i * x, y0 + j * y, z0 + k * z) for k in (0, 1) for i, j in ((0, 0), (1, 0), (1, 1), (0, 1))]
    )
    sides = [(a, (a + 1) % 4, (a + 1) % 4 + 4) for a in range(4)]
    sides += [(a, (a + 1) % 4 + 4, a + 4) for a in range(4)]
    faces = np.array([(0, 2, 1), (0, 3, 2), (4, 5, 6), (4, 6, 7), *sides])
    return Solid(points, faces)


def test_a_cut_of_a_box_is_its_floor() -> None:
    assert cut(box(1, 2, 0, size=(3, 2, 1)), 0.5).equals(shapely.box(1, 2, 4, 4))


@pytest.mark.parametrize("height", [-0.1, 1.1])
def test_a_cut_beside_a_solid_is_empty(height: float) -> None:
    assert cut(box(0, 0, 0, size=(1, 1, 1)), height).is_empty


def test_a_cut_keeps_the_hole_of_a_pipe() -> None:
    outer, inner = box(0, 0, 0, size=(4, 4, 1)), box(1, 1, 0, size=(2, 2, 1))
    pipe = joined([outer, inner])
    assert pipe is not None
    assert cut(pipe, 0.5).area == pytest.approx(12.0)


def test_shadow_and_levels() -> None:
    steps = joined([box(0, 0, 0, size=(1, 1, 0.2)), box(1, 0, 0, size=(1, 1, 0.4))])
    assert steps is not None
    assert plan_outline(steps).area == pytest.approx(2.0)
    assert [(level.height, level.area.area) for level in levels(steps, least=0.5)] == [(0.2, 1.0), (0.4, 1.0)]
    assert [level.height for level in levels(steps, least=0.5, upward=False)] == [0.0]


def test_normals_point_outward() -> None:
    solid = box(0, 0, 0, size=(1, 1, 1))
    middles = solid.points[solid.faces].mean(axis=1) - 0.5
    assert np.all((normals(solid) * middles).sum(axis=1) > 0)


def test_nothing_joins_to_nothing() -> None:
    assert joined([]) is None

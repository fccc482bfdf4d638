from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
import shapely

from wardwright.intake.dxf.file import FloatArray
from wardwright.intake.dxf.walls import house_of, runs_of, with_corners


def faces_of(*areas: shapely.Geometry, turn_deg: float = 0.0) -> FloatArray:
    """The rims of areas as straight faces."""
    found = []
    for area in areas:
        turned = shapely.affinity.rotate(area, turn_deg, origin=(0, 0))
        for part in shapely.get_parts(turned):
            for ring in (part.exterior, *part.interiors):
                corners = np.array(ring.coords)
                found += list(itertools.pairwise(corners))
    return np.array(found)


def built(faces: FloatArray) -> shapely.Geometry:
    runs, corners = with_corners(runs_of(faces), faces)
    return shapely.union_all([*(run.area for run in runs), *corners])


RING = shapely.box(0, 0, 6, 4).difference(shapely.box(0.3, 0.3, 5.7, 3.7))
TEE = RING.union(shapely.box(3, 0.3, 3.1, 3.7))
CLOSET = TEE.union(shapely.box(3.1, 1.0, 3.7, 1.1)).union(shapely.box(3.6, 0.3, 3.7, 1.1))


@pytest.mark.parametrize("turn_deg", [0.0, 33.0, 90.0, 171.0])
@pytest.mark.parametrize("solid", [RING, TEE, CLOSET], ids=["ring", "tee", "closet"])
def test_walls_are_what_was_drawn(solid: shapely.Geometry, turn_deg: float) -> None:
    """Corners and tees are filled, rooms and closets are not."""
    found = built(faces_of(solid, turn_deg=turn_deg))
    wanted = shapely.affinity.rotate(solid, turn_deg, origin=(0, 0))
    assert found.symmetric_difference(wanted).area < 0.01


def test_the_order_and_sense_of_faces_make_no_difference() -> None:
    faces = faces_of(CLOSET)
    other = faces[::-1, ::-1].copy()
    assert built(faces).symmetric_difference(built(other)).area < 1e-6


def test_a_face_cut_in_pieces_is_one() -> None:
    pieces = np.array([[(0, 0), (2, 0)], [(2, 0), (5, 0)], [(0, 0.1), (5, 0.1)]], dtype=float)
    (run,) = runs_of(pieces)
    assert (run.start, run.end, run.thickness) == pytest.approx((0.0, 5.0, 0.1))


def test_each_stretch_of_a_face_is_used_once() -> None:
    """Two walls with a narrow duct between them: the duct is no wall."""
    levels = (0.0, 0.1, 0.5, 0.6)
    faces = np.array([[(0, y), (4, y)] for y in levels], dtype=float)
    assert sorted(run.thickness for run in runs_of(faces)) == pytest.approx([0.1, 0.1])


def test_nothing_stands_on_single_lines() -> None:
    faces = np.array([[(0, 0), (4, 0)], [(4, 0), (4, 3)]], dtype=float)
    assert runs_of(faces) == []


def test_what_stands_apart_is_another_drawing() -> None:
    faces = faces_of(RING, shapely.affinity.translate(shapely.box(0, 0, 3, 0.2), 20, 0))
    runs, _ = with_corners(runs_of(faces), faces)
    house, others = house_of(runs)
    assert others == 1
    assert math.isclose(shapely.union_all([run.area for run in house]).area, RING.area, rel_tol=1e-3)
    assert house_of([]) == ([], 0)

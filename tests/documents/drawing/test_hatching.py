from __future__ import annotations

import math

import pytest
import shapely

from wardwright.documents.drawing.hatching import area_of, hatch_lines, rings_of

SQUARE = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))
HOLE = ((1.0, 1.0), (1.0, 3.0), (3.0, 3.0), (3.0, 1.0))


@pytest.mark.parametrize("angle", [0.0, 30.0, 45.0, 90.0, 135.0])
def test_lines_lie_in_the_area_and_cover_it_evenly(angle: float) -> None:
    lines = hatch_lines((SQUARE, HOLE), angle_deg=angle, spacing=0.05)
    area = area_of((SQUARE, HOLE))
    assert area.buffer(1e-9).covers(shapely.MultiLineString(lines))
    # Length times spacing tends to the area.
    assert sum(math.dist(*line) for line in lines) * 0.05 == pytest.approx(area.area, rel=0.02)


def test_lines_of_two_neighbours_run_on() -> None:
    left = ((0.0, 0.0), (2.0, 0.0), (2.0, 4.0), (0.0, 4.0))
    right = ((2.0, 0.0), (4.0, 0.0), (4.0, 4.0), (2.0, 4.0))
    ends = {round(line[1][1], 9) for line in hatch_lines((left,), angle_deg=0.0, spacing=0.5)}
    starts = {round(line[0][1], 9) for line in hatch_lines((right,), angle_deg=0.0, spacing=0.5)}
    assert ends == starts


def test_nothing_is_hatched_where_there_is_no_area() -> None:
    assert hatch_lines((), angle_deg=45.0, spacing=1.0) == ()
    assert hatch_lines((((0.0, 0.0), (1.0, 1.0)),), angle_deg=45.0, spacing=1.0) == ()


def test_rings_give_their_area_back() -> None:
    assert area_of(rings_of(area_of((SQUARE, HOLE)))).area == pytest.approx(12.0)


def test_a_sliver_between_two_lines_has_none() -> None:
    # Lines at 0.5, 1.5 ...: found by a radiator of an imported house at a small scale.
    sliver = ((0.0, 0.6), (4.0, 0.6), (4.0, 0.7), (0.0, 0.7))
    assert hatch_lines((sliver,), angle_deg=0.0, spacing=1.0) == ()

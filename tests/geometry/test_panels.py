import numpy as np
import shapely

from wardwright.geometry.panels import NOTHING, between, box, extruded, joined, sheets

SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))


def test_sheets_without_height_or_length_are_left_out() -> None:
    kept = sheets([(0, 0, 1, 0, 0, 2), (0, 0, 1, 0, 2, 2), (1, 1, 1, 1, 0, 2)])
    assert kept.panels.tolist() == [[0, 0, 1, 0, 0, 2]]
    assert kept.bodies.tolist() == [-1]


def test_no_sheets_at_all() -> None:
    assert sheets([]).panels.shape == (0, 6)


def test_a_box_is_one_body_of_as_many_sides_as_corners() -> None:
    sides = box(SQUARE, low=0.2, high=0.9)
    assert sides.bodies.tolist() == [0, 0, 0, 0]
    assert sides.panels[3].tolist() == [0, 1, 0, 0, 0.2, 0.9]


def test_an_extruded_ring_has_its_hole_s_faces_too() -> None:
    ring = shapely.box(0, 0, 4, 4).difference(shapely.box(1, 1, 2, 2))
    assert len(extruded(ring, low=0.0, high=2.4).panels) == 8
    assert len(extruded(shapely.Polygon(), low=0.0, high=2.4).panels) == 0


def test_joined_boxes_stay_apart() -> None:
    both = joined([box(SQUARE, low=0, high=1), sheets([(0, 0, 1, 0, 0, 2)]), box(SQUARE, low=1, high=2)])
    assert both.bodies.tolist() == [0, 0, 0, 0, -1, 1, 1, 1, 1]
    assert joined([]).panels.shape == NOTHING.panels.shape


def test_between_keeps_what_reaches_into_the_band() -> None:
    several = sheets([(0, 0, 1, 0, 0, 1), (0, 0, 1, 0, 2.4, 3), (0, 0, 1, 0, 0.9, 4)])
    assert np.array_equal(between(several, low=1.0, high=2.4).panels, several.panels[[2]])

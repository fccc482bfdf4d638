import numpy as np
import pytest

from wardwright.geometry.boxes import Spans, box_spans, close_boxes, leaving_sides, sides_about
from wardwright.geometry.panels import box, joined, sheets
from wardwright.geometry.polar import STEEP

RING = ((2.0, -1.0), (3.0, -1.0), (3.0, 1.0), (2.0, 1.0))


@pytest.mark.parametrize("ring", [RING, RING[::-1]])
def test_a_line_comes_out_by_the_far_sides_whichever_way_the_outline_winds(
    ring: tuple[tuple[float, float]],
) -> None:
    both = joined([box(ring, low=0, high=1), sheets([(0, 1, 1, 1, 0, 1)])])
    out = leaving_sides(both, np.array([0.0, 0.0, 2.0]))
    # All but the side at x = 2 are left by; the sheet is no side at all.
    near = (both.panels[:, 0] == 2.0) & (both.panels[:, 2] == 2.0)
    assert out.tolist() == (~near & (both.bodies >= 0)).tolist()


def test_only_the_box_about_the_eye_is_about_it() -> None:
    both = joined([box(RING, low=0, high=1), box(RING, low=1.5, high=2)])
    assert sides_about(both, np.array([2.5, 0.0, 0.5])).tolist() == [True] * 4 + [False] * 4
    assert not sides_about(both, np.array([2.5, 0.0, 1.2])).any()
    assert not sides_about(both, np.array([0.0, 0.0, 0.5])).any()


def test_crossings_are_paired_by_box_and_line_and_lone_ones_kept() -> None:
    # Crossing 0 and 3 of one box; 1 leaves another, 2 goes into a third; 4 is a sheet.
    key = np.array([7, 8, 9, 7, -1])
    leaving = np.array([False, True, False, True, False])
    spans = box_spans(np.array([0, 1, 2, 3]), key, leaving=leaving)
    assert set(zip(spans.near.tolist(), spans.far.tolist(), strict=True)) == {(0, 3), (-1, 1), (2, -1)}
    some = spans.of(np.array([True, False, False, True, True]))
    assert (some.near.tolist(), some.far.tolist()) == ([0], [3])


def test_a_hung_box_hides_what_lies_between_its_ends() -> None:
    bottoms, tops = np.array([-0.6, -0.4, -1.0]), np.array([-0.5, -0.3, -0.9])
    spans = Spans(np.array([0, -1]), np.array([1, 2]))
    levels = (np.full(3, -1.2), np.full(3, -1.0))
    close_boxes(spans, np.ones(3, dtype=bool), slopes=(bottoms, tops), levels=levels)
    assert (bottoms[1], tops[1]) == (-0.6, -0.3)
    assert (bottoms[2], tops[2]) == (-STEEP, -0.9)
    assert (bottoms[0], tops[0]) == (-0.6, -0.5)

from __future__ import annotations

from wardwright.intake.dxf.spans import common, less, merged


def test_spans_that_meet_are_one() -> None:
    assert merged([(3.0, 4.0), (0.0, 1.0), (1.0, 2.0), (0.5, 0.6)]) == [(0.0, 2.0), (3.0, 4.0)]
    assert merged([(0.0, 1.0), (1.2, 2.0)], gap=0.3) == [(0.0, 2.0)]
    assert merged([]) == []


def test_common_and_less_make_the_whole_again() -> None:
    whole, other = [(0.0, 5.0), (6.0, 8.0)], [(1.0, 2.0), (4.0, 7.0)]
    shared, left = common(whole, other), less(whole, other)
    assert shared == [(1.0, 2.0), (4.0, 5.0), (6.0, 7.0)]
    assert left == [(0.0, 1.0), (2.0, 4.0), (7.0, 8.0)]
    assert merged([*shared, *left]) == whole

import math

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from wardwright.geometry.panels import box, joined, sheets
from wardwright.geometry.polar import Frame
from wardwright.geometry.sweep import Swept, swept

BAND = (0.0, 2.4)


def frame(count: int = 40) -> Frame:
    step = 0.02
    middles = -0.4 + (np.arange(count) + 0.5) * step
    aims = np.stack([np.cos(middles), np.sin(middles)])
    return Frame(np.array([0.0, 0.0, 2.0]), -0.4, step, round(2.0 * math.pi / step), aims, 8.0)


ROOM = joined(
    [
        sheets([(6.0, -4.0, 6.0, 4.0, 0.0, 2.4), (2.0, 0.1, 2.0, 1.0, 0.7, 0.8)]),
        box([(3.0, -0.6), (4.0, -0.6), (4.0, 0.2), (3.0, 0.2)], low=0.0, high=0.9),
    ]
)


def test_a_wall_ends_every_azimuth_and_what_is_low_changes_what_is_left() -> None:
    found = swept(frame(), ROOM, band=BAND)
    assert np.allclose(found.end * frame().aims[0], 6.0)
    assert (found.ranges[np.isfinite(found.ranges)] < 6.0).all()
    # The top of the box is stood on while it is crossed.
    assert found.levels.max() == 0.9


@given(st.sets(st.integers(0, 39), min_size=1))
def test_some_azimuths_are_swept_as_they_are_among_all(chosen: set[int]) -> None:
    rows = np.array(sorted(chosen))
    every, some = swept(frame(), ROOM, band=BAND), swept(frame(), ROOM, band=BAND, rows=rows)
    assert np.array_equal(some.end, every.end[rows])
    number = len(some.ranges)
    assert np.array_equal(some.ranges, every.ranges[:number, rows])
    assert np.isinf(every.ranges[number:, rows]).all()
    joint = every.with_these(some, rows)
    # States that no azimuth comes to are blank in any way.
    assert np.array_equal(joint.end, every.end)
    assert np.array_equal(joint.ranges, every.ranges)
    come_to = np.concatenate([np.ones((1, 40), dtype=np.bool_), np.isfinite(every.ranges)])
    for name in ("bottoms", "tops"):
        assert np.array_equal(getattr(joint, name)[:, come_to], getattr(every, name)[:, come_to]), name


def test_azimuths_that_are_put_in_keep_all_their_states() -> None:
    few, rows = swept(frame(), sheets([(6.0, -4.0, 6.0, 4.0, 0.0, 2.4)]), band=BAND), np.arange(10, 25)
    more = few.with_these(swept(frame(), ROOM, band=BAND, rows=rows), rows)
    whole = swept(frame(), ROOM, band=BAND)
    assert more.bottoms.shape == whole.bottoms.shape
    assert np.array_equal(more.levels[:, rows], whole.levels[:, rows])
    assert np.isinf(more.ranges[:, :10]).all()
    assert isinstance(more, Swept)

import numpy as np

from wardwright.physics.detection.crossing import steps_of
from wardwright.physics.detection.walks import walks_of

LINE = np.array([[0.0, 0.0], [3.0, 4.0], [3.0, 5.0]])
CLOCK = np.array([0.0, 2.0, 3.0])


def test_each_walk_keeps_its_own_start_clock_and_way() -> None:
    walks = walks_of(
        [(LINE, ("ground", "ground", "upper"), CLOCK), (LINE[1:], ("upper", "upper"), CLOCK[1:])]
    )
    assert walks.parts == (slice(0, 3), slice(3, 5))
    assert walks.walked.tolist() == [0.0, 5.0, 6.0, 0.0, 1.0]
    assert walks.clock.tolist() == [0.0, 2.0, 3.0, 2.0, 3.0]
    assert walks.steps[3:].tolist() == steps_of(LINE[1:]).tolist()
    assert {storey: rows.tolist() for storey, rows in walks.rows.items()} == {
        "ground": [0, 1],
        "upper": [2, 3, 4],
    }


def test_no_walks_and_walks_without_points_are_no_trouble() -> None:
    assert walks_of([]).points.shape == (0, 2)
    none = walks_of([(np.empty((0, 2)), (), np.empty(0)), (LINE[:1], ("ground",), CLOCK[:1])])
    assert none.parts == (slice(0, 0), slice(0, 1))
    assert none.walked.tolist() == [0.0]

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


def test_points_on_flights_are_told_by_storey_and_flight() -> None:
    both = [(LINE, ("ground", "ground", "upper"), CLOCK), (LINE, ("ground", "upper", "upper"), CLOCK)]
    assert walks_of(both).flights is None
    told = walks_of(both, flights=(["", "stairs", "stairs"], ["", "", "other"]))
    assert told.flights is not None
    found = {
        storey: {name: rows.tolist() for name, rows in on.items()} for storey, on in told.flights.items()
    }
    assert found == {"ground": {"": [0, 3], "stairs": [1]}, "upper": {"": [4], "stairs": [2], "other": [5]}}


def test_a_body_that_reaches_into_a_leaf_is_hidden_from_beyond_only() -> None:
    """The second walk comes north, from y = 0 to a leaf across it at y = 3.5, into which it reaches from y = 3 on."""
    north = np.array([[0.0, 0.0], [0.0, 3.0], [0.0, 3.5], [0.0, 5.0]])
    walks = walks_of([(LINE, ("ground",) * 3, CLOCK), (north, ("ground",) * 4, north[:, 1])])
    leaf = np.array([[-0.4, 3.5], [0.4, 3.5]])
    told = walks.with_leaves([(1, 1, 2, leaf), (1, 1, 2, leaf[::-1])])
    assert told.reaching.behind(np.array([2.0, 6.0])).tolist() == [4, 5, 4, 5]
    assert told.reaching.behind(np.array([2.0, 1.0])).tolist() == []
    assert walks.with_leaves([]).reaching.behind(np.array([2.0, 6.0])).tolist() == []

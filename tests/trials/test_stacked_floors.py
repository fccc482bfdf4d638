import numpy as np

from wardwright.geometry.raster import Grid
from wardwright.trials.stacked_floors import distances_of, farthest, one_of, stack_for, stacked

GRIDS = {"upper": Grid(0.0, 0.0, 1.0, 2, 1), "ground": Grid(0.0, 0.0, 1.0, 3, 2)}
STACK = stack_for(GRIDS)


def test_storeys_lie_apart_in_the_order_of_their_ids() -> None:
    floors = stacked(STACK, {"ground": np.ones((2, 3), dtype=bool), "upper": np.ones((1, 2), dtype=bool)})
    assert list(floors) == ["ground", "upper"]
    assert len(floors) == 2
    assert floors.cells.astype(int).tolist() == [[1, 1, 1], [1, 1, 1], [0, 0, 0], [1, 1, 0], [0, 0, 0]]
    assert floors["upper"].tolist() == [[True, True]]
    assert "attic" not in floors


def test_a_storey_left_out_has_no_cells() -> None:
    assert not stacked(STACK, {"upper": np.ones((1, 2), dtype=bool)})["ground"].any()


def test_the_farthest_known_distance_over_some_cells() -> None:
    metres = np.arange(15, dtype=float).reshape(5, 3)
    known = np.ones((5, 3), dtype=bool)
    known[4] = known[2] = False
    known[1, 2] = False
    distances = distances_of(metres, known)
    assert (np.diff(distances.metres) <= 0.0).all()
    ground = np.ones((2, 3), dtype=bool)
    assert farthest(distances, stacked(STACK, {"ground": ground})) == 4.0
    assert (
        farthest(distances, stacked(STACK, {"ground": ground, "upper": np.ones((1, 2), dtype=bool)})) == 10.0
    )
    assert farthest(distances, stacked(STACK, {})) == 0.0
    assert farthest(distances_of(metres, known & False), stacked(STACK, {"ground": ground})) == 0.0


def test_floors_alike_are_one_object_and_others_are_not() -> None:
    ground = np.array([[True, False, True], [False, False, True]])
    first, same = (one_of(stacked(STACK, {"ground": ground.copy()})) for _ in range(2))
    assert first is same
    assert first == same
    assert first["ground"].tolist() == ground.tolist()
    assert one_of(stacked(STACK, {"ground": ~ground})) is not first
    # The same cells on another stack are another floor.
    assert one_of(stacked(stack_for(GRIDS), {"ground": ground})) is not first
    assert not first.cells.flags.writeable

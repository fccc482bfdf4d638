import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from wardwright.geometry.crossings import Boxes
from wardwright.physics.radio.paths import ANGLES_RAD, Floors, Obstacles, met_on_the_way

BOXES = Boxes(
    np.array([[2.0, 0.0], [2.0, 1.0]]), np.array([[0.0, 1.0], [0.0, 1.0]]), np.array([4.0, 1.0]),
    np.array([0.05, 0.05]), np.zeros(2), np.array([2.4, 2.0]),
)  # fmt: skip
OBSTACLES = Obstacles(BOXES, np.array([-1, 0]), np.array([0, 1]), np.array([0, 1]), np.array([0, 0]))
SLOPE = np.array([1.0, 2.0, 3.0, 4.0, 5.0])
AREA = shapely.box(0, 0, 5, 5).difference(shapely.box(4, 4, 5, 5))
FLOORS = Floors(np.array([2.7, 5.4]), (AREA, AREA), np.array([2, 2]))
LOSSES = np.stack([SLOPE, 2.0 * SLOPE, np.full(5, 10.0), np.full(5, 10.0)])


def meet(one: tuple[float, float, float], other: tuple[float, float, float]):  # noqa: ANN201 - a plain record
    return met_on_the_way((np.array([one]), np.array([other])), OBSTACLES, FLOORS, losses=LOSSES, kinds=3)


def test_beside_the_opening_the_wall_counts_and_in_it_the_opening() -> None:
    beside, inside = meet((0, 3, 1), (4, 3, 1)), meet((0, 1.5, 1), (4, 1.5, 1))
    assert beside.loss[0] == pytest.approx([1.0, 0.0, 0.0, 0.0])
    assert inside.loss[0] == pytest.approx([0.0, 2.0, 0.0, 0.0])
    assert inside.total_told[0] == 0.0
    assert inside.counts[0] == pytest.approx([0.0, 1.0, 0.0])


def test_the_angle_is_between_those_of_the_table() -> None:
    for angle, expected in ((15.0, 2.0), (22.5, 2.5), (70.0, 5.0)):
        run = 4.0 * np.tan(np.radians(angle)) / 2.0
        y = 2.1
        found = meet((1.5, y, 1), (2.5, y + run / 2, 1))
        assert found.loss[0, 0] == pytest.approx(expected, abs=1e-6)
    assert np.degrees(ANGLES_RAD[-1]) == pytest.approx(60.0)


def test_each_further_floor_takes_less() -> None:
    one, two = meet((1, 1, 1), (1, 1, 4)), meet((1, 1, 1), (1, 1, 7))
    assert one.total[0] == 10.0
    assert 10.0 < two.total[0] < 20.0


def test_through_a_hole_and_beside_the_floor_none_is_met() -> None:
    assert meet((4.5, 4.5, 1), (4.5, 4.5, 4)).total[0] == 0.0
    assert meet((8, 8, 1), (8, 8, 4)).total[0] == 0.0


def test_where_it_is_met_is_told_and_nothing_else() -> None:
    found = meet((0, 3, 1), (4, 3, 1))
    assert found.at[0, 0] == pytest.approx(0.5)
    assert np.isnan(found.at[0, 1:]).all()


def test_a_block_counts_by_the_length_inside_whatever_the_direction() -> None:
    block = OBSTACLES._replace(
        boxes=Boxes(*(field[:1] for field in BOXES)), within=np.array([-1]), classes=np.array([0]),
        stands_open=np.array([0]), blocks=np.array([1]),
    )  # fmt: skip
    for one, other in (((0, 3, 1), (4, 3, 1)), ((2, 1, 1), (2, 3, 1))):
        ways = (np.array([one], dtype=float), np.array([other], dtype=float))
        found = met_on_the_way(ways, block, FLOORS, losses=LOSSES[[0, 2, 3]], kinds=3)
        assert found.counts[0, 0] == pytest.approx(1.0)


PLACE = st.tuples(st.floats(0.0, 5.0), st.floats(0.0, 5.0), st.floats(0.1, 6.0))


@given(ways=st.lists(st.tuples(PLACE, PLACE), min_size=2, max_size=12))
def test_among_others_a_path_meets_the_same_as_alone(
    ways: list[tuple[tuple[float, ...], tuple[float, ...]]],
) -> None:
    """To the last digit: what was worked out together is later asked for one by one."""
    starts, ends = (np.array([way[i] for way in ways]) for i in (0, 1))
    together = met_on_the_way((starts, ends), OBSTACLES, FLOORS, losses=LOSSES, kinds=3)
    for i, (one, other) in enumerate(ways):
        alone = meet(one, other)  # type: ignore[arg-type]
        for row, own in zip(together, alone, strict=True):
            assert np.array_equal(row[i], own[0], equal_nan=True)


def test_the_same_in_many_boxes_of_one_class() -> None:
    draw = np.random.default_rng(4)
    many = 40
    turn = draw.uniform(0.0, 2.0 * np.pi, many)
    boxes = Boxes(
        draw.uniform(0.0, 10.0, (many, 2)), np.stack([np.cos(turn), np.sin(turn)], axis=1),
        draw.uniform(1.0, 5.0, many), draw.uniform(0.05, 0.3, many), np.zeros(many), np.full(many, 2.4),
    )  # fmt: skip
    none = np.zeros(many, dtype=np.int64)
    obstacles = Obstacles(boxes, none - 1, draw.integers(-1, 3, many), none, none)
    floors, losses = Floors(np.zeros(0), (), np.zeros(0, dtype=np.int64)), np.tile(SLOPE, (many, 1))
    starts, ends = draw.uniform(0.0, 10.0, (200, 3)), draw.uniform(0.0, 10.0, (200, 3))
    starts[:, 2], ends[:, 2] = starts[:, 2] / 5.0, ends[:, 2] / 5.0
    together = met_on_the_way((starts, ends), obstacles, floors, losses=losses, kinds=3).counts
    for i in range(len(starts)):
        ways = (starts[i : i + 1], ends[i : i + 1])
        assert np.array_equal(
            together[i], met_on_the_way(ways, obstacles, floors, losses=losses, kinds=3).counts[0]
        )
    assert (together > 0.0).sum() > 200

import numpy as np
import pytest

from common.worked_terrace import UNDER_STAIRS, worked_terrace
from wardwright.errors import NotComputable
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.course import Course, course_of, told_by_contact, told_by_movement
from wardwright.trials.watchers import Noticed

CATALOGUE = load_catalogue()
HOUSE = worked_terrace(contacts={}).bare
GOAL = Spot(UNDER_STAIRS.storey, *UNDER_STAIRS.at_m)
START = way_in_spot(HOUSE, HOUSE.opening("kitchen-window"))
HALL = ("hall", "hall")


def course(*, climbs: bool = True) -> Course:
    return course_of(HOUSE, CATALOGUE, GOAL, start=START, climbs=climbs, hears=True, movement=(HALL,))


def test_equal_courses_are_one_object() -> None:
    assert course() is course()
    assert course() is not course(climbs=False)


def test_the_likely_row_is_the_routes_own_clock_after_the_climb() -> None:
    climb = CATALOGUE.figure("climb-in").value
    assert float(course().reached[0]) == pytest.approx(float(course().foot.route.clock[-1]) + climb)
    assert float((course().broken - course().reached)[0]) == CATALOGUE.figure("break-control-unit").value


def test_a_contact_tells_when_its_point_is_passed_and_at_the_way_in_at_once() -> None:
    one = course(climbs=False)
    assert not told_by_contact(one, -1).signal.any()
    last = len(one.foot.route.points) - 1
    assert told_by_contact(one, last).signal.tolist() == one.reached.tolist()
    assert told_by_contact(one, last).index == last


def test_a_movement_detector_tells_where_it_notices_and_nothing_beyond_the_end() -> None:
    one = course(climbs=False)
    length = float(one.foot.progress.plan[-1])
    early = told_by_movement(one, "hall", Noticed(0.5, (1.0,) * 5))
    late = told_by_movement(one, "hall", Noticed(0.5, (length / 2,) * 5))
    assert (early.signal <= late.signal).all()
    assert np.isinf(told_by_movement(one, "hall", Noticed(length + 1.0, (length + 2.0,) * 5)).signal).all()
    # Only the longest reach notices: only rows that draw it do.
    some = told_by_movement(one, "hall", Noticed(0.5, (np.inf,) * 4 + (1.0,)))
    nearest_the_longest = one.cases.rows["reach hall"] > 1.15
    assert np.isfinite(some.signal).tolist() == nearest_the_longest.tolist()


def test_nobody_is_noticed_by_reaching_into_a_shut_door() -> None:
    """By a detector beyond it, in whatever row; one on this side notices as it does."""
    one = course(climbs=False)
    door = one.foot.shut[0]
    come_to = float(one.foot.progress.plan[door.come_to])
    beyond = told_by_movement(one, "hall", Noticed(come_to - 0.1, (come_to + 0.05,) * 5))
    opened = told_by_contact(one, door.opened)
    assert (beyond.signal >= opened.signal - 1e-9).all()
    here = told_by_movement(one, "hall", Noticed(come_to - 0.05, (come_to - 0.05,) * 5))
    assert here.index <= door.come_to
    assert (here.signal < opened.signal).all()


def test_a_goal_that_cannot_be_walked_to_is_said_so() -> None:
    apart = HOUSE.model_copy(update={"stairs": ()}).bare
    with pytest.raises(NotComputable, match="no way on foot"):
        course_of(
            apart, CATALOGUE, Spot("upper", 6.9, 1.2), start=START, climbs=True, hears=False, movement=()
        )

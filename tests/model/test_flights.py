from typing import Any

import numpy as np
import pytest

from wardwright.geometry.rays import ray_ranges
from wardwright.model.fabric import Stair, Storey
from wardwright.model.flights import BALUSTRADE_M, flight, footprint, height_on, well

STOREYS = (
    Storey(id="ground", name="ground", elevation_m=0.0),
    Storey(id="first", name="first", elevation_m=2.8),
)


def stair(**facts: Any) -> Stair:
    usual: dict[str, Any] = {
        "id": "s",
        "lower": "ground",
        "upper": "first",
        "line_m": ((0.0, 0.0), (2.8, 0.0)),
    }
    return Stair(**(usual | {"width_m": 1.0} | facts))


def test_the_well_is_the_walking_line_at_its_width_unless_given() -> None:
    assert footprint(stair()).bounds == pytest.approx((0.0, -0.5, 2.8, 0.5))
    assert len(well(stair())) == 4
    assert well(stair(well_m=((0, 0), (1, 0), (1, 1)))) == ((0, 0), (1, 0), (1, 1))


def test_one_stands_on_the_flight_as_high_as_one_has_walked() -> None:
    places = np.array([[0.0, 0.0], [1.4, 0.3], [2.8, 0.0], [1.4, 0.6], [-1.0, 0.0]])
    found = height_on(stair(), STOREYS, places)
    assert found[:3] == pytest.approx([0.0, 1.4, 2.8])
    assert np.isnan(found[3:]).all()
    # Past its ends one is beside the flight, though no farther from its line than from the middle to a side.
    assert np.isnan(height_on(stair(), STOREYS, np.array([[2.9, 0.1], [-0.1, 0.1]]))).all()


def test_a_flight_stops_a_level_ray_at_the_step_of_that_height() -> None:
    # By hand: 14 risers of 0.2 m, one every 0.2 m: 1.5 m up meets the 8th, at x = 1.4.
    reached = ray_ranges((-1.0, 0.0, 1.5), ([0.0], [0.0]), flight(stair(balusters="none"), STOREYS))
    assert reached == pytest.approx([2.4])


def test_only_a_boxed_in_flight_hides_what_is_under_it() -> None:
    # From the side, under the middle of the flight, 0.3 m up.
    for enclosed, expected in ((True, 1.5), (False, np.inf)):
        one = flight(stair(is_enclosed=enclosed, balusters="none"), STOREYS)
        reached = ray_ranges((1.91, -2.0, 0.3), ([np.pi / 2], [0.0]), one)
        assert reached == pytest.approx([expected])


def test_balusters_guard_the_well_but_where_one_arrives() -> None:
    guard = flight(stair(balusters="solid"), STOREYS).panels
    guard = guard[guard[:, 4] >= 2.8]
    assert len(guard) == 3
    assert guard[:, 5] == pytest.approx(2.8 + BALUSTRADE_M)
    assert not ((guard[:, 0] == 2.8) & (guard[:, 2] == 2.8)).any()


@pytest.mark.parametrize(("balusters", "told", "away"), [("open", 3, 0), ("solid", 3, 3), ("none", 0, 0)])
def test_open_balusters_are_looked_through_on_the_high_side(balusters: Any, told: int, away: int) -> None:
    for leaves, expected in (("told", told), ("away", away)):
        panels = flight(stair(balusters=balusters), STOREYS, leaves).panels  # type: ignore[arg-type] # both are allowed
        assert (panels[:, 4] >= 2.8).sum() == expected


def test_a_winding_flight_keeps_to_its_line() -> None:
    winding = stair(line_m=((0.0, 0.0), (1.4, 0.0), (1.4, 1.4)))
    assert height_on(winding, STOREYS, np.array([[1.4, 0.7]])) == pytest.approx([2.1])
    assert np.abs(flight(winding, STOREYS).panels[:, :4]).max() <= 2.0

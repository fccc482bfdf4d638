import numpy as np
import pytest

from common.worked_terrace import UPSTAIRS, worked_terrace
from wardwright.physics.walking.from_site import Leg, Route, Spot, way_in_spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.ways_in import WayIn, ways_in
from wardwright.trials.ways_on_foot import (
    OnFoot,
    _shut_leaf,
    flights_of,
    on_foot,
    opened_legs,
    progress_of,
    route_to,
    spot_of,
    walks_along,
)

CATALOGUE = load_catalogue()
SITE = worked_terrace(contacts={}, unit=UPSTAIRS)


def way(opening: str) -> WayIn:
    return next(one for one in ways_in(SITE, CATALOGUE)[0] if one.opening.id == opening)


def test_progress_ends_at_the_sums_of_the_legs() -> None:
    route = route_to(SITE, CATALOGUE, way=way("kitchen-window"), goal=spot_of(SITE, SITE.device("unit")))
    assert route is not None
    progress = progress_of(route)
    by_kind = {"floor": 0.0, "door": 0.0, "stairs-up": 0.0}
    for leg in route.legs:
        by_kind[leg.kind] += leg.length
    assert progress.flat[-1] == pytest.approx(by_kind["floor"])
    # 3.6 m along the plan and 2.7 m up
    assert progress.stairs[-1] == pytest.approx(np.hypot(3.6, 2.7))
    assert progress.doors[-1] == 2
    # Each end of a leg may be set off by a step between the flight and the free floor beside it.
    assert progress.plan[-1] == pytest.approx(progress.flat[-1] + 3.6, abs=0.25)
    for column in progress:
        assert (np.diff(column) >= -1e-12).all()


def test_the_clock_of_the_route_is_the_progress_at_the_likely_paces() -> None:
    route = route_to(SITE, CATALOGUE, way=way("front-door"), goal=spot_of(SITE, SITE.device("unit")))
    assert route is not None
    progress = progress_of(route)
    clock = progress.flat / 2.5 + progress.stairs / 1.25 + progress.doors * 1.0
    assert clock[-1] == pytest.approx(float(route.clock[-1]), abs=1e-9)


def test_no_way_is_none() -> None:
    walled = SITE.model_copy(update={"stairs": ()})
    assert route_to(walled, CATALOGUE, way=way("front-door"), goal=Spot("upper", 6.9, 1.2)) is None


def test_a_door_that_stands_open_takes_no_time() -> None:
    openings = tuple(
        o.model_copy(update={"habit": "open"}) if o.id == "bedroom-door" else o for o in SITE.openings
    )
    site = SITE.model_copy(update={"openings": openings})
    goal = spot_of(site, site.device("unit"))
    opened, shut = (route_to(s, CATALOGUE, way=way("front-door"), goal=goal) for s in (site, SITE))
    assert opened is not None
    assert shut is not None
    assert progress_of(opened).doors[-1] == 0
    assert progress_of(shut).doors[-1] == 1
    assert [leg.subject for leg in opened_legs(shut)] == ["bedroom-door"]
    assert opened_legs(opened) == ()
    assert float(shut.clock[-1] - opened.clock[-1]) == pytest.approx(1.0)


def _on_foot_by(habit: str) -> OnFoot:
    openings = tuple(
        type(o)(**{**o.model_dump(exclude_unset=True), "habit": habit}) if o.id == "bedroom-door" else o
        for o in SITE.openings
    )
    site = SITE.model_copy(update={"openings": openings})
    start = way_in_spot(site, way("front-door").opening)
    found = on_foot(site.bare, CATALOGUE, start=start, goal=spot_of(site, site.device("unit")))
    assert found is not None
    return found


def test_a_body_reaches_to_a_leaf_by_its_distance_from_it_not_by_what_is_still_to_walk() -> None:
    """The leaf at x = 2.05 is come to at 45 degrees: 0.22 m off it, 0.31 m is still to walk."""
    share = np.arange(15) / 14
    points = np.array([1.55, 6.7]) + share[:, None] * 0.5
    line = np.vstack([points, points[-1:]])
    leg = Leg("door", 0.0, "bedroom-door", 14, 15)
    leaf = _shut_leaf(SITE.bare, Route(line, ("upper",) * 16, np.zeros(16), (leg,)), leg)
    assert (leaf.near, leaf.come_to, leaf.opened) == (8, 14, 15)
    assert 2.05 - points[8, 0] < 0.22 < 2.05 - points[7, 0]
    assert leaf.seen_at(np.arange(16)).tolist() == [*range(8), *[15] * 8]


def test_a_leaf_ajar_hides_nobody_who_reaches_in() -> None:
    """It is pushed, and takes its second; but zones go through its gap."""
    found = _on_foot_by("ajar")
    assert found.shut == ()
    assert found.progress.doors[-1] == 1


def test_points_on_a_flight_are_those_of_its_leg() -> None:
    found = _on_foot_by("shut")
    (leg,) = (one for one in found.route.legs if one.kind == "stairs-up")
    on = flights_of(found.route)
    assert set(on[leg.first : leg.last + 1]) == {"stairs"}
    assert set(on[: leg.first] + on[leg.last + 1 :]) == {""}
    walks = walks_along([found])
    assert walks.flights is not None
    on_it = [rows for one in walks.flights.values() for name, rows in one.items() if name]
    assert sum(map(len, on_it)) == leg.last + 1 - leg.first

"""The interruption estimate of a site's ways in: by hand on the worked terrace, where one contact is all there is."""

from __future__ import annotations

import math

import pytest
from scipy.special import ndtr

from common.worked_terrace import UNDER_STAIRS, worked_terrace
from wardwright.errors import NotComputable
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names
from wardwright.trials.path_analysis import PathEstimate, path_estimate
from wardwright.trials.timely import Need
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import ways_in
from wardwright.trials.ways_on_foot import route_to, spot_of

CATALOGUE = load_catalogue()
GOAL = Spot(UNDER_STAIRS.storey, *UNDER_STAIRS.at_m)


def estimate(need: Need, behaviour: str, opening: str = "kitchen-window") -> PathEstimate:
    site = worked_terrace(contacts={opening: behaviour})
    way = next(w for w in ways_in(site, CATALOGUE)[0] if (w.opening.id, w.manner) == (opening, "opened"))
    return path_estimate(site, CATALOGUE, way=way, goal=GOAL, need=need)


def test_one_contact_by_hand() -> None:
    """All is detected at the start: the whole walk is left, and one normal curve is the estimate."""
    found = estimate("message", "instant")
    assert found.tasks[0].name == "in by kitchen window"
    assert found.tasks[0].detection == pytest.approx(0.98)
    assert found.detected == pytest.approx(0.98)
    assert [task.detection for task in found.tasks[1:]] == [0.0] * (len(found.tasks) - 1)
    # 5 s to climb in and 10 s to break the unit, and the walk at 2.5 m/s; radio 1 s, message 10 s.
    walked = [task.delay_s for task in found.tasks[1:-1]]
    # From the window to the door, and from there to 0.5 m before the unit or nearer: 5.3 to 8.3 m.
    assert 5.3 / 2.5 <= sum(walked) <= 8.3 / 2.5
    spreads = [(10.0 - 3.0) / 3.29, *(one * (3.2 - 1.8) / 3.29 / 2.5 for one in walked), 10.0 / 3.29]
    assert [task.spread_s for task in found.tasks] == pytest.approx(spreads, rel=1e-3)
    variance = sum(one**2 for one in spreads) + ((2.0 - 0.3) / 3.29) ** 2 + ((15.0 - 4.0) / 3.29) ** 2
    z = (5.0 + sum(walked) + 10.0 - 11.0) / math.sqrt(variance)
    assert found.interrupted == pytest.approx(0.98 * float(ndtr(z)), rel=1e-3)
    assert found.timely == pytest.approx(0.98)
    assert found.last_timely is not None


def test_an_entry_time_is_waited_for() -> None:
    """30 s of entry time on a walk of seconds: never in time, and no detection point is timely."""
    found = estimate("sounder", "entry-exit", opening="front-door")
    assert found.detected == pytest.approx(0.98)
    assert found.interrupted < 1e-3
    assert found.timely == 0.0
    assert found.last_timely is None


def test_nothing_set_up_is_never_interrupted() -> None:
    """No detector: no chance at all, and no division by nothing."""
    site = worked_terrace(contacts={})
    for way in ways_in(site, CATALOGUE)[0]:
        found = path_estimate(site, CATALOGUE, way=way, goal=GOAL, need="message")
        assert (found.detected, found.interrupted, found.timely) == (0.0, 0.0, 0.0)


@pytest.mark.parametrize("name", sample_names())
def test_every_sample(name: str) -> None:
    """Every way in has an estimate between nothing and the chance to be noticed at all, or says why not."""
    site = read_sample(name)
    units = control_units(site, CATALOGUE)
    for way in ways_in(site, CATALOGUE)[0] if units else ():
        for need in ("message", "sounder"):
            try:
                found = path_estimate(site, CATALOGUE, way=way, goal=spot_of(site, units[0]), need=need)
            except NotComputable:
                assert route_to(site, CATALOGUE, way=way, goal=spot_of(site, units[0])) is None
                continue
            assert 0.0 <= found.interrupted <= found.detected + 1e-12
            assert 0.0 <= found.timely <= found.detected + 1e-12
            assert sum(task.delay_s for task in found.tasks) > 0.0

from __future__ import annotations

import math
from itertools import pairwise

from wardwright.physics.walking.from_site import way_in_spot
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.alarm import alarm_of
from wardwright.trials.least_detected import least_detected, path_lines
from wardwright.trials.path_lines import by_storey
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import ways_in
from wardwright.trials.ways_on_foot import spot_of


def test_a_stay_of_one_point_is_no_line() -> None:
    assert by_storey(["a", "b", "b"], [(0, 0), (1, 0), (2, 0)]) == (("b", ((1.0, 0.0), (2.0, 0.0))),)
    assert by_storey([], []) == ()


def test_a_storey_that_is_come_to_twice_has_two_lines() -> None:
    found = by_storey(["a", "a", "b", "b", "a", "a"], [(i, 0) for i in range(6)])
    assert [storey for storey, _ in found] == ["a", "b", "a"]


def test_the_least_detected_path_is_as_long_as_its_stretches_and_leads_over_both_storeys() -> None:
    site, catalogue = read_sample("terrace-better"), load_catalogue()
    way = next(one for one in ways_in(site, catalogue)[0] if one.opening.id == "front-door")
    devices = tuple(device for device, _ in alarm_of(site, catalogue).heard)
    start, goal = way_in_spot(site, way.opening), spot_of(site, control_units(site, catalogue)[0])
    lines = path_lines(site.bare, catalogue, devices, start=start, goal=goal)
    stretches = least_detected(site.bare, catalogue, devices, start=start, goal=goal)
    assert stretches is not None
    assert [storey for storey, _ in lines] == ["ground", "first"]
    drawn = sum(math.dist(a, b) for _, line in lines for a, b in pairwise(line))
    # Corners are cut a little, and the flight is no line of its own.
    walked = sum(one.flat_m for one in stretches)
    assert 0.9 * walked <= drawn <= walked + sum(one.stairs_m for one in stretches) + 0.1
    assert math.dist(lines[0][1][0], (start.x, start.y)) < 0.5
    assert math.dist(lines[-1][1][-1], (goal.x, goal.y)) < 0.7

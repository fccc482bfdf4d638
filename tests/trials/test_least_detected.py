"""The least-detected path: by hand round a door that tells, and what more detectors do to it."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, two_rooms_and_hall
from wardwright.model.device import Device
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.trials.least_detected import FLIGHT, Stretch, least_detected

IN_THE_STUDY = Spot("ground", 9.5, 2.0)


def _path(*devices: Device, goal: Spot = IN_THE_STUDY) -> tuple[Stretch, ...]:
    site = two_rooms_and_hall(devices=devices)
    start = way_in_spot(site.bare, site.opening("kitchen-window"))
    found = least_detected(site.bare, CATALOGUE, devices, start=start, goal=goal)
    assert found is not None
    return found


def _missed(path: tuple[Stretch, ...]) -> float:
    left = 1.0
    for one in path:
        left *= 1.0 - one.detection
    return left


def test_nothing_notices_where_there_is_nothing() -> None:
    """Kitchen, hall, study: 9.2 m in a straight line and round two door jambs; nobody is noticed."""
    path = _path()
    assert [one.name for one in path] == ["Kitchen", "Hall", "Study"]
    assert _missed(path) == pytest.approx(1.0, abs=1e-4)
    walked = sum(one.flat_m for one in path)
    assert 9.2 < walked < 12.0
    assert all(one.mostly_by is None for one in path)
    assert FLIGHT not in {one.name for one in path}


def test_a_door_that_tells_is_gone_through_once() -> None:
    """The only door into the study: it tells with 0.98, or more where it is gone through aslant."""
    contact = on_opening("study-contact", "study-door")
    path = _path(contact)
    assert 0.01 <= _missed(path) <= 0.0205
    assert {one.mostly_by for one in path if one.detection > 0.0001} == {contact}


def test_a_detector_is_walked_round_where_it_can_be() -> None:
    """Of two goals in the study, the one behind the detector is reached with less chance to be noticed."""
    fan = on_wall("fan", "fan", "east", 1.0)
    near, far = _path(fan, goal=Spot("ground", 9.8, 3.0)), _path(fan, goal=Spot("ground", 6.6, 4.0))
    assert _missed(near) < _missed(far)


def test_one_more_detector_never_makes_it_less_likely() -> None:
    """Another detector takes ways away and gives none."""
    fan, contact = on_wall("fan", "fan", "study-wall", 3.0), on_opening("kitchen-contact", "kitchen-door")
    alone, both = _path(fan), _path(fan, contact)
    assert _missed(both) <= _missed(alone) + 1e-12
    assert _missed(both) <= _missed(_path(contact)) + 1e-12


def test_no_path_to_where_nobody_can_stand() -> None:
    """A storey that the house has not."""
    site = two_rooms_and_hall()
    start = way_in_spot(site.bare, site.opening("front-door"))
    assert least_detected(site.bare, CATALOGUE, (), start=start, goal=Spot("attic", 1.0, 1.0)) is None

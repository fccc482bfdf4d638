"""Cameras in a site: named points, what stands in the way, the boundary, neighbours and private rooms."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from common.houses import CATALOGUE, on_wall, one_room, opening, two_rooms_and_hall
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing
from wardwright.physics.video.from_site import (
    ground_seen,
    is_inside,
    lens_of,
    named_points,
    rooms_seen,
    shown,
    windows_seen,
)
from wardwright.physics.video.projection import Lens

DOOR = opening("front-door", "south", 2.65, is_entry_door=True)
CAMERA = on_wall(
    "cam", "camera-outside", "south", 0.5, side="right", height_m=2.4, tilt_deg=25.0, heading_deg=-10.0
)
PLOT = ((-3.0, -5.0), (8.0, -5.0), (8.0, 8.0), (-3.0, 8.0))


def thing(kind: str, x0: float, y0: float, x1: float, y1: float, **facts: object) -> GroundThing:
    ring = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    return GroundThing(
        **{"id": kind, "name": kind, "kind": kind, "outline_m": ring, "height_m": 1.8, **facts}
    )


def house(*things: GroundThing, **parts: object) -> Site:
    ground = Ground(boundary_m=PLOT, road_m=((-10.0, -8.0), (15.0, -8.0)), things=things)
    return one_room(**{"openings": (DOOR,), "ground": ground, "devices": (CAMERA,), **parts})


def seen_by(site: Site, device: Device = CAMERA) -> tuple[Site, Device, Lens]:
    sheet = CATALOGUE.sheet(device.sheet).camera
    assert sheet is not None
    return site, device, lens_of(site, device, sheet)


def test_named_points_outside_are_doors_gates_and_drives() -> None:
    site = house(thing("gate", 4.0, -5.1, 5.0, -5.0), thing("car", 6.0, -4.0, 8.0, -2.0, name="car"))
    places = named_points(site, CAMERA)
    assert [one.name for one in places] == ["front door", "drive, by car", "gate"]
    # 0.8 m before the outer face of the door, a face 1.6 m above the ground, which is 0.15 m down.
    assert places[0].at == pytest.approx((2.5, -1.1, 1.45))


def test_named_points_inside_are_the_doors_of_the_room() -> None:
    inside = on_wall("in", "camera", "kitchen-wall", 2.0, side="right")
    site = two_rooms_and_hall(devices=(inside,))
    assert is_inside(site, inside)
    assert [one.name for one in named_points(site, inside)] == ["front door", "kitchen door", "study door"]


def test_a_door_is_shown_by_hand() -> None:
    """Level, along the wall: the face is 2.15 m ahead of the eye in x; the lens is 960 px long."""
    camera = CAMERA.model_copy(update={"heading_deg": 0.0, "tilt_deg": 0.0})
    site, device, lens = seen_by(house(), camera)
    (door,) = shown(site, device, lens)
    ahead = 2.5 - 0.35
    assert door.why_not == ""
    assert door.density == pytest.approx(960.0 / ahead)
    off = math.hypot(ahead, 1.1 - 0.34)
    assert door.down_deg == pytest.approx(math.degrees(math.atan2(2.4 - 1.45, off)), abs=0.2)


def test_something_in_the_way_hides_it() -> None:
    (door,) = shown(*seen_by(house(thing("shed", 1.2, -1.4, 1.6, -0.4, height_m=2.5))))
    assert (door.density, door.why_not) == (0.0, "something is in the way")


def test_ground_on_both_sides_of_the_boundary() -> None:
    camera = CAMERA.model_copy(update={"heading_deg": -90.0, "tilt_deg": 20.0})
    ground = ground_seen(*seen_by(house(), camera), reach=20.0)
    assert ground is not None
    beyond = ground.points[ground.is_beyond]
    assert len(beyond)
    assert (beyond[:, 1] < -5.0).sum() + (beyond[:, 0] < -3.0).sum() + (beyond[:, 0] > 8.0).sum() >= len(
        beyond
    )
    assert (np.abs(ground.points[ground.is_street][:, 1] + 8.0) <= 4.0).all()
    assert ground_seen(*seen_by(house(ground=Ground()), camera), reach=20.0) is None


def test_a_wall_on_the_boundary_hides_what_is_beyond() -> None:
    camera = CAMERA.model_copy(update={"heading_deg": -90.0, "tilt_deg": 20.0})
    tall = thing("wall", -20.0, -5.2, 20.0, -5.0, height_m=6.0)
    ground = ground_seen(*seen_by(house(tall), camera), reach=20.0)
    assert ground is not None
    assert not (ground.points[:, 1] < -5.3).any()


@given(st.floats(-2.0, 6.0), st.floats(-4.5, -1.0), st.floats(0.5, 4.0))
@settings(deadline=None, max_examples=15)
def test_a_blocker_added_never_raises_what_a_camera_sees(x: float, y: float, tall: float) -> None:
    before = house()
    after = house(thing("shed", x, y, x + 0.7, y + 0.5, height_m=tall))
    camera = CAMERA.model_copy(update={"heading_deg": -60.0})
    for one, other in zip(shown(*seen_by(before, camera)), shown(*seen_by(after, camera)), strict=True):
        assert other.density <= one.density
    all_ground, some_ground = (ground_seen(*seen_by(site, camera), reach=12.0) for site in (before, after))
    assert all_ground is not None
    assert some_ground is not None
    known = {tuple(point) for point in all_ground.points.tolist()}
    assert {tuple(point) for point in some_ground.points.tolist()} <= known


def test_a_neighbouring_building_is_seen_until_something_hides_it() -> None:
    other = thing("building", -2.0, -14.0, 6.0, -11.0, height_m=6.0, name="house opposite")
    camera = CAMERA.model_copy(update={"heading_deg": -90.0, "tilt_deg": 10.0})
    assert windows_seen(*seen_by(house(other), camera)) == ("house opposite",)
    hedge = thing("wall", -30.0, -5.2, 30.0, -5.0, height_m=8.0)
    assert windows_seen(*seen_by(house(other, hedge), camera)) == ()


def test_a_bedroom_is_seen_through_an_open_door_only() -> None:
    inside = on_wall("in", "camera", "kitchen-wall", 4.0, side="right", height_m=1.6)
    rooms = {"hall": "hall", "study": "bedroom", "kitchen": "kitchen"}
    for habit, found in (("shut", ()), ("open", ("study",))):
        site = two_rooms_and_hall(devices=(inside,))
        spaces = tuple(one.model_copy(update={"use": rooms[one.id]}) for one in site.spaces)
        doors = tuple(one.model_copy(update={"habit": habit}) for one in site.openings)
        site = site.model_copy(update={"spaces": spaces, "openings": doors})
        assert rooms_seen(*seen_by(site, inside), uses=("bedroom",)) == found
    outside = CAMERA
    assert rooms_seen(*seen_by(house(), outside), uses=("living",)) == ()

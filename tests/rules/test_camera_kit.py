"""Which cameras hang outside and which inside."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room, sheet
from wardwright.errors import CatalogueError, NotComputable
from wardwright.rules.camera_kit import cameras, inside_cameras, outside_cameras

INSIDE = on_wall("b", "camera", "south", 2.0)
OUTSIDE = on_wall("a", "camera-outside", "south", 2.0, side="right")


def test_the_place_says_which_is_which() -> None:
    site = one_room(devices=(INSIDE, OUTSIDE))
    assert [device.id for device, _ in cameras(site, CATALOGUE)] == ["a", "b"]
    assert [device.id for device, _ in outside_cameras(site, CATALOGUE)] == ["a"]
    assert [device.id for device, _ in inside_cameras(site, CATALOGUE)] == ["b"]


def test_without_one_nothing_is_computable() -> None:
    for ask, devices in ((cameras, ()), (outside_cameras, (INSIDE,)), (inside_cameras, (OUTSIDE,))):
        with pytest.raises(NotComputable, match="no camera"):
            ask(one_room(devices=devices), CATALOGUE)


def test_a_camera_needs_its_table() -> None:
    bare = CATALOGUE.model_copy(update={"sheets": (sheet("camera", "camera"),)})
    with pytest.raises(CatalogueError, match="without a table 'camera'"):
        cameras(one_room(devices=(INSIDE,)), bare)

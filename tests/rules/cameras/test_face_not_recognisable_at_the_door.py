"""CAM107: density at the entry door against each edition's."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, on_wall, one_room, opening
from wardwright.model.needs import Needs
from wardwright.model.site import Site
from wardwright.rules.cameras.face_not_recognisable_at_the_door import (
    face_not_recognisable_at_the_door as rule,
)
from wardwright.rules.registry import findings_of


def house(away_m: float, **needs: object) -> Site:
    """A level camera that looks along the wall at a door so far ahead."""
    door = opening("front-door", "south", 0.5 + away_m, is_entry_door=True)
    camera = on_wall("cam", "camera-outside", "south", 0.5, side="right", height_m=1.45, heading_deg=0.0)
    return one_room(devices=(camera,), openings=(door,), needs=Needs(**needs))


@pytest.mark.parametrize(
    ("away_m", "edition", "density"),
    [(4.0, "2014", None), (4.0, "2025", 240.0), (3.8, "2025", None)],
)
def test_by_hand(away_m: float, edition: str, density: float | None) -> None:
    """960 px / m of depth: 250 px/m up to 3.84 m, 125 up to 7.68 m."""
    found = findings_of(rule, house(away_m, camera_edition=edition), CATALOGUE)
    assert [one.estimate and one.estimate.value for one in found] == (
        [] if density is None else [pytest.approx(density)]
    )
    assert all(one.severity == "check with the standard" for one in found)


def test_a_door_out_of_the_picture_says_so() -> None:
    site = house(4.0)
    turned = site.devices[0].model_copy(update={"heading_deg": -90.0})
    (found,) = findings_of(rule, site.model_copy(update={"devices": (turned,)}), CATALOGUE)
    assert found.message.endswith("for cam, not in the picture")
    assert found.estimate is not None
    assert found.estimate.value == 0.0
    assert not math.isnan(found.estimate.low)


def test_no_entry_door_cannot_be_run() -> None:
    (found,) = findings_of(rule, house(4.0).model_copy(update={"openings": ()}), CATALOGUE)
    assert found.message == "no opening is told to be an entry door"

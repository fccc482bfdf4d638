"""What one stands on below and beside a place outside."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import on_wall, one_room
from wardwright.model.fabric import Space, Stair, Storey
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing
from wardwright.rules.footings import footing_below, footings_near, is_in_the_open, level_of_place

# On the outer face of the south wall, at (2.0, -0.34).
CAMERA = on_wall("cam", "camera-outside", "south", 2.15, side="right", height_m=2.5)


def shed(y_high: float, **facts: Any) -> Site:
    """A box from x = 1 to 3 that ends at a distance south of the wall's face, 0.3 m thick."""
    outline = ((1.0, y_high - 1.0), (3.0, y_high - 1.0), (3.0, y_high), (1.0, y_high))
    usual: dict[str, Any] = {
        "id": "shed",
        "name": "shed",
        "kind": "shed",
        "can_be_climbed": True,
        "height_m": 1.2,
    }
    thing = GroundThing(outline_m=outline, **(usual | facts))
    return one_room(devices=(CAMERA,), ground=Ground(things=(thing,)))


def levels(site: Site) -> list[float]:
    return [one.level_m for one in footings_near(site, standing(site, CAMERA))]


def test_outside_is_where_no_room_is() -> None:
    inside = on_wall("in", "camera", "south", 2.15)
    site = one_room(devices=(CAMERA, inside))
    assert is_in_the_open(site, standing(site, CAMERA))
    assert not is_in_the_open(site, standing(site, inside))
    assert footing_below(site, standing(site, CAMERA)).level_m == -0.15
    assert footing_below(site, standing(site, inside)).level_m == 0.0
    assert level_of_place(site, standing(site, CAMERA)) == 2.5


# The camera's middle is 0.34 m south of the inner face.
@pytest.mark.parametrize(("y_high", "is_near"), [(-0.4, True), (-0.83, True), (-0.85, False)])
def test_a_shed_counts_where_a_hand_reaches_from_it(y_high: float, is_near: bool) -> None:
    assert levels(shed(y_high)) == ([pytest.approx(1.05), -0.15] if is_near else [-0.15])


@pytest.mark.parametrize(
    ("facts", "count"),
    [({"can_be_climbed": False}, 1), ({"can_be_climbed": False, "kind": "flat-roof"}, 2)],
)
def test_what_cannot_be_climbed_is_no_footing(facts: dict[str, Any], count: int) -> None:
    assert len(levels(shed(-0.4, **facts))) == count


@pytest.mark.parametrize(
    ("belongs", "elevation_m", "count"), [("ours", 0.0, 2), ("ours", 2.7, 1), ("shared", 2.7, 2)]
)
def test_a_gallery_counts_where_strangers_walk(belongs: str, elevation_m: float, count: int) -> None:
    storey = Storey(id="deck-storey", name="deck", elevation_m=elevation_m)
    deck = Space(
        id="deck",
        name="Deck",
        storey="deck-storey",
        use="terrace",
        belongs=belongs,
        outline_m=((0, -2), (5, -2), (5, -0.3), (0, -0.3)),
    )
    site = one_room(
        devices=(CAMERA,), storeys=(*one_room().storeys, storey), spaces=(*one_room().spaces, deck)
    )
    assert len(levels(site)) == count


def test_an_outside_stair_counts_by_its_nearest_tread() -> None:
    """From the ground storey to one 2.7 m up over 4 m along the wall: half way at x = 2.0 it is 1.35 m up."""
    stair = Stair(id="stair", lower="ground", upper="first", line_m=((0.0, -0.9), (4.0, -0.9)), width_m=0.9)
    first = Storey(id="first", name="first floor", elevation_m=2.7)
    site = one_room(devices=(CAMERA,), storeys=(*one_room().storeys, first), stairs=(stair,))
    assert levels(site) == [pytest.approx(1.35), -0.15]
    inside = stair.model_copy(update={"line_m": ((0.5, 0.5), (4.0, 0.5))})
    assert levels(site.model_copy(update={"stairs": (inside,)})) == [-0.15]

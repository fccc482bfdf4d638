"""Who outside sees a place: panes, coverings, heights, things in between."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import on_wall, radiator, two_rooms_and_hall
from common.rule_houses.control import UNIT_BY_WINDOW
from wardwright.model.device import Device
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing
from wardwright.rules.outside_view import (
    SeenFrom,
    covered,
    is_bare,
    points_of,
    seen_from_outside,
    unseen_spot,
    usual_height,
)


def seen(device: Device = UNIT_BY_WINDOW, **parts: Any) -> tuple[SeenFrom, ...]:
    site = two_rooms_and_hall(devices=(device,), **parts)
    return seen_from_outside(site, standing(site, device))


def openings(**facts: Any) -> Any:
    return tuple(
        one.model_copy(update=facts) if one.id == "study-window" else one
        for one in two_rooms_and_hall().openings
    )


def test_the_nearest_onlooker_stands_half_a_metre_before_the_pane() -> None:
    """The unit is at x = 6.24, the outer face of the east wall at 10.5; the window's middle is opposite."""
    (one,) = seen()
    assert one.opening == "study-window"
    assert one.stand == pytest.approx((11.0, 3.0))
    assert one.distance_m == pytest.approx(11.0 - 6.24)


@pytest.mark.parametrize(
    "facts", [{"covering": "blind"}, {"glazing": None, "kind": "door"}, {"sill_m": 1.9, "head_m": 2.1}]
)
def test_a_blind_a_solid_leaf_or_a_high_pane_hides_it(facts: dict[str, Any]) -> None:
    """Through a pane from 1.9 m up, eyes at 1.45 m above the floor look to the ceiling."""
    assert seen(openings=openings(**facts)) == ()


def test_a_cupboard_between_hides_it_and_a_low_one_does_not() -> None:
    cupboard = radiator(9.0, 3.0, heat="none", height_m=2.2).model_copy(update={"size_m": (0.4, 5.0)})
    assert seen(fixtures=(cupboard,)) == ()
    assert len(seen(fixtures=(cupboard.model_copy(update={"height_m": 0.8}),))) == 1


def test_a_shed_before_the_window_hides_it() -> None:
    shed = GroundThing(
        id="shed",
        name="shed",
        kind="shed",
        outline_m=((10.6, -1), (10.8, -1), (10.8, 7), (10.6, 7)),
        height_m=3.0,
    )
    assert seen(ground=Ground(things=(shed,))) == ()
    assert len(seen(ground=Ground(things=(shed.model_copy(update={"height_m": 0.5}),)))) == 1


def test_an_upper_floor_is_not_looked_into_from_below() -> None:
    storeys = (two_rooms_and_hall().storeys[0].model_copy(update={"elevation_m": 5.0}),)
    low = on_wall("unit", "unit", "study-wall", 3.0, side="right", height_m=0.5)
    assert seen(low, storeys=storeys) == ()


def test_the_nearest_unseen_place_is_unseen() -> None:
    site = two_rooms_and_hall(devices=(UNIT_BY_WINDOW,))
    (mend,) = unseen_spot(site, UNIT_BY_WINDOW, spaces=("study",), height_m=1.5)
    values = dict(mend.values)
    moved = on_wall(
        "unit", "unit", str(values["wall"]), float(values["offset_m"]), side=values["side"], height_m=1.5
    )
    assert seen(moved) == ()
    assert unseen_spot(site, UNIT_BY_WINDOW, spaces=(), height_m=1.5) == ()


def test_one_pane_may_be_covered_and_several_may_not() -> None:
    site: Site = two_rooms_and_hall(devices=(UNIT_BY_WINDOW,))
    one = seen()
    assert covered(site, one)[0].values == (("covering", "blind"),)
    assert covered(site, (*one, *one)) == ()
    assert covered(site, (one[0]._replace(opening="front-door"),)) == ()


def test_small_things() -> None:
    window, door = two_rooms_and_hall().openings[4], two_rooms_and_hall().openings[0]
    assert (is_bare(window), is_bare(door)) == (True, False)
    assert usual_height(UNIT_BY_WINDOW, 1.0) == 1.5
    site = two_rooms_and_hall(devices=(UNIT_BY_WINDOW,))
    assert points_of(seen()[0], standing(site, UNIT_BY_WINDOW))[1] == pytest.approx((6.24, 3.0))

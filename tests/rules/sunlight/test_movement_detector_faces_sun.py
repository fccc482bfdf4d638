"""SUN101: what counts as sun straight on it."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, one_room
from common.rule_houses.sunlight import FACING_SUNRISE, LONDON, LOW, TALL_SOUTH
from wardwright.model.place import Place
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing
from wardwright.rules.registry import findings_of
from wardwright.rules.sunlight.movement_detector_faces_sun import movement_detector_faces_sun as rule


def house(**parts: Any) -> Site:
    return one_room(**({"devices": (LOW,), "openings": (TALL_SOUTH,), "place": FACING_SUNRISE} | parts))


def test_minutes_pane_and_limit_are_told() -> None:
    (found,) = findings_of(rule, house(), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value > 100.0
    assert (found.limit, found.severity, found.related) == (10.0, "advise", ("tall",))
    assert "north" not in found.message


@pytest.mark.parametrize("covering", ["curtain", "blind", "shutter"])
def test_what_is_drawn_before_the_pane_keeps_it_out(covering: str) -> None:
    assert (
        findings_of(rule, house(openings=(TALL_SOUTH.model_copy(update={"covering": covering}),)), CATALOGUE)
        == ()
    )


def test_the_same_pane_to_the_south_lets_no_low_sun_in() -> None:
    assert findings_of(rule, house(place=LONDON), CATALOGUE) == ()


def test_a_house_across_the_street_takes_it_away() -> None:
    block = GroundThing(
        id="block", name="Block", kind="building", height_m=9.0,
        outline_m=((-30.0, -20.0), (35.0, -20.0), (35.0, -12.0), (-30.0, -12.0)),
    )  # fmt: skip
    assert findings_of(rule, house(ground=Ground(things=(block,))), CATALOGUE) == ()


def test_an_unknown_north_takes_the_worst_and_says_so() -> None:
    place = Place(country="GB", latitude_deg=51.5, longitude_deg=0.0)
    (found,) = findings_of(rule, house(place=place), CATALOGUE)
    assert found.message.endswith("; north not known: worst of all norths")


def test_a_rooflight_that_is_named_as_strong_light_is_not_named_twice() -> None:
    overhead = TALL_SOUTH.model_copy(update={"kind": "rooflight"})
    assert findings_of(rule, house(openings=(overhead,)), CATALOGUE) == ()

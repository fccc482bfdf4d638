"""Climbs worked by hand: a drainpipe, a bin below a flat roof, a gap too wide, a balcony."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.climb_house import LIMITS, box, house
from common.houses import CATALOGUE
from common.turning import quarter_turned
from wardwright.model.fabric import Space
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.model.surroundings import GroundThing
from wardwright.trials.climbs import (
    Climb,
    Limits,
    climb_to,
    onto_footholds,
    short_in,
    sill_above_ground,
    usual_limits,
)
from wardwright.trials.footholds import footholds


def climbed(site: Site, limits: Limits = LIMITS) -> Climb:
    return climb_to(site.bare, site.openings[0], limits)


def test_with_nothing_to_climb_the_whole_height_is_one_step() -> None:
    climb = climbed(house())
    assert sill_above_ground(house(), house().openings[0]) == pytest.approx(3.75)
    assert climb.short_m == pytest.approx(3.75 - 2.4)
    assert [step.kind for step in climb.steps] == ["opening"]
    assert not climb.is_made


def test_a_drainpipe_beside_the_window() -> None:
    """Told to be climbed, 0.5 m beside the jamb and close to the wall: only the gap counts."""
    pipe = GroundThing(
        id="pipe", name="drainpipe", kind="pipe", outline_m=((5.35, 3.0), (5.45, 3.0)), height_m=5.5,
        can_be_climbed=True,
    )  # fmt: skip
    climb = climbed(house(pipe))
    assert climb.is_made
    assert [step.name for step in climb.steps] == ["drainpipe", "window"]
    # From (5.35, 3.0) to the jamb at (5.15, 2.5), less half of the wall.
    assert climb.steps[-1].gap_m == pytest.approx(np.hypot(0.2, 0.5) - 0.15)
    assert climb.steps[-1].rise_m == 0.0
    unsaid = pipe.model_copy(update={"can_be_climbed": False})
    assert not climbed(house(unsaid)).is_made


def test_a_flat_roof_that_is_too_high_from_the_ground_is_reached_by_a_bin() -> None:
    """A roof at 2.9 m, 0.5 m beyond reach; from a bin of 1.1 m it is 1.8 m up, and the sill 0.85 m above it."""
    roof = box("roof", 5.8, 2.0, 2.9)
    assert climbed(house(roof)).short_m == pytest.approx(0.5)
    climb = climbed(house(roof, box("bin", 6.8, 2.0, 1.1, kind="bin")))
    assert climb.is_made
    assert [step.name for step in climb.steps] == ["bin", "roof", "window"]
    assert [step.rise_m for step in climb.steps] == pytest.approx([1.1, 1.8, 0.85])
    assert climb.short_m == pytest.approx(1.8 - 2.0)
    assert climb.hardest.name == "roof"


def test_a_flat_roof_with_a_gap_too_wide() -> None:
    """Its near side is 1.6 m from the wall's face: 0.6 m more than is got across; the sill would be in reach."""
    far = box("roof", 5.3 + 1.6 + 0.5, 2.0, 2.3)
    climb = climbed(house(far))
    assert climb.short_m == pytest.approx(0.6)
    assert climb.hardest.kind == "opening"
    near = box("roof", 5.3 + 0.9 + 0.5, 2.0, 2.3)
    assert climbed(house(near)).is_made


def test_a_door_onto_a_balcony_is_reached_over_its_guard() -> None:
    """The deck is at 2.85 m and its guard 0.9 m more: 3.75 m is 1.35 m too high, and 0.25 m too high from a shed."""
    deck = Space(
        id="deck",
        name="Deck",
        storey="first",
        use="balcony",
        outline_m=((5.3, 0), (6.8, 0), (6.8, 4), (5.3, 4)),
    )
    door = Opening(
        id="door", name="door", kind="door", wall="upper-east", offset_m=2.15, width_m=0.9,
        joins=("bedroom", "deck"),
    )  # fmt: skip
    first = house()
    parts: dict[str, Any] = {"spaces": (*first.spaces, deck), "openings": (door,)}
    # The door's own sill is lower than the guard: without a deck it would be 0.45 m too high.
    assert climbed(house(**parts)).short_m == pytest.approx(0.45)
    shed = box("shed", 7.4, 2.0, 1.9, kind="shed")
    climb = climbed(house(shed, **parts))
    assert climb.is_made
    assert [step.name for step in climb.steps] == ["shed", "Deck", "door"]
    shared = deck.model_copy(update={"belongs": "shared"})
    walked = climbed(house(**(parts | {"spaces": (*first.spaces, shared)})))
    assert [step.name for step in walked.steps] == ["door"]
    assert walked.is_made


def test_what_a_person_manages_is_the_catalogues() -> None:
    assert usual_limits(CATALOGUE) == LIMITS


def test_onto_the_footholds_themselves() -> None:
    site = house(box("roof", 5.8, 2.0, 2.9)).bare
    likely, most, least = onto_footholds(site, CATALOGUE)
    there = [one.name for one in footholds(site)].index("roof")
    assert (likely[there], most[there], least[there]) == pytest.approx((0.5, 0.1, 0.8))


THINGS = st.lists(
    st.tuples(st.floats(5.9, 9.0), st.floats(0.0, 4.0), st.floats(0.3, 4.0)), min_size=1, max_size=5
)


@given(THINGS, st.floats(0.0, 1.0))
def test_more_to_climb_and_a_longer_reach_never_put_it_farther_away(
    places: list[tuple[float, float, float]], more: float
) -> None:
    things = tuple(box(f"thing-{i}", *place) for i, place in enumerate(places))
    every, fewer = climbed(house(*things)), climbed(house(*things[:-1]))
    assert every.short_m <= fewer.short_m + 1e-9
    longer = Limits(*(one + more for one in LIMITS))
    assert climbed(house(*things), longer).short_m <= every.short_m + 1e-9


@given(THINGS)
def test_neither_order_nor_a_quarter_turn_changes_it_and_cases_agree_with_the_climb(
    places: list[tuple[float, float, float]],
) -> None:
    things = tuple(box(f"thing-{i}", *place) for i, place in enumerate(places))
    short = climbed(house(*things)).short_m
    assert climbed(house(*reversed(things))).short_m == pytest.approx(short)
    assert climbed(quarter_turned(house(*things))).short_m == pytest.approx(short)
    site = house(*things)
    assert short_in(site.bare, site.openings[0], np.array([LIMITS, LIMITS])) == pytest.approx([short, short])

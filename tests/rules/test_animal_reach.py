"""What animals get onto, jump by jump."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.houses import CATALOGUE, one_room, open_edge, two_rooms_and_hall
from common.turning import quarter_turned
from wardwright.model.catalogue import Animal
from wardwright.model.fabric import Stair, Storey
from wardwright.model.fixture import Fixture
from wardwright.model.site import Site
from wardwright.rules.animal_reach import Reach, reach_of
from wardwright.rules.animal_tops import tops_of

LIVING = frozenset({"living"})


def kind(name: str) -> Animal:
    return next(one for one in CATALOGUE.animals if one.id == name)


def box(ident: str, x: float, top: float, **facts: Any) -> Fixture:
    """A box 0.6 m square in the middle of the room's depth, its west side at x - 0.3 m."""
    usual: dict[str, Any] = {
        "id": ident,
        "name": ident,
        "storey": "ground",
        "kind": "cupboard",
        "centre_m": (x, 2.0),
        "size_m": (0.6, 0.6),
        "height_m": top,
    }
    return Fixture(**(usual | facts))


def needs(site: Site, animal: str = "cat", rooms: frozenset[str] = LIVING) -> dict[str, float]:
    reach = reach_of(site.bare, kind(animal), rooms=rooms)
    found: dict[str, float] = {}
    for top, need in zip(reach.tops, reach.needs(), strict=True):
        found[top.thing or top.spaces[0]] = float(need)
    return found


CHAIN = (box("chair", 1.0, 0.45), box("board", 1.6, 1.3), box("cupboard", 2.2, 2.1))


def test_a_chain_of_tops_is_as_hard_as_its_highest_jump() -> None:
    """0.45 m up, 0.85 m up, 0.8 m up, side by side: a jump of 0.85 m gets to 2.1 m."""
    found = needs(one_room(fixtures=CHAIN))
    assert found["chair"] == pytest.approx(0.45)
    assert found["board"] == pytest.approx(0.85)
    assert found["cupboard"] == pytest.approx(0.85)
    # Without the middle one the next is 2.1 m from the floor, or 1.65 m over a gap of 0.6 m.
    found = needs(one_room(fixtures=(CHAIN[0], CHAIN[2])))
    assert found["cupboard"] == pytest.approx(1.65)


def test_the_way_is_told_from_the_floor() -> None:
    reach = reach_of(one_room(fixtures=CHAIN).bare, kind("cat"), rooms=LIVING)
    last = next(i for i, top in enumerate(reach.tops) if top.thing == "cupboard")
    assert [top.thing for top in reach.way_to(last)] == [None, "chair", "board", "cupboard"]


def test_a_gap_is_as_hard_as_the_leap_that_it_takes() -> None:
    """From a top to its like 1.2 m away: 1.2 m of a leap of 1.5 m for a cat, as 1.28 m of its jump of 1.6 m."""
    two = (box("near", 1.0, 1.0), box("far", 2.8, 2.1))
    found = needs(one_room(fixtures=two))
    assert found["far"] == pytest.approx(1.28)


def test_shelves_are_climbed_from_their_underside() -> None:
    hung = box("hung", 1.0, 0.9, kind="shelf", base_m=1.2)
    standing = box("standing", 3.0, 2.1, kind="shelf")
    found = needs(one_room(fixtures=(hung, standing)))
    assert found["standing"] == 0.0
    assert found["hung"] == pytest.approx(1.2)
    assert needs(one_room(fixtures=(hung, standing)), "big-dog")["standing"] == pytest.approx(2.1)


@pytest.mark.parametrize(
    ("fixtures", "absent"),
    [
        ((box("curtain", 1.0, 0.5, kind="curtain"),), "curtain"),
        ((box("tall", 1.0, 2.3),), "tall"),
        ((box("low", 1.0, 0.5), box("over", 1.0, 0.5, base_m=0.6)), "low"),
    ],
    ids=["a curtain", "no room under the ceiling", "no room under a shelf"],
)
def test_what_nothing_stands_on(fixtures: tuple[Fixture, ...], absent: str) -> None:
    assert absent not in needs(one_room(fixtures=fixtures))


def test_what_is_too_narrow_for_a_dog() -> None:
    rail = box("rail", 1.0, 0.5, size_m=(1.0, 0.1))
    assert needs(one_room(fixtures=(rail,)))["rail"] == pytest.approx(0.5)
    assert needs(one_room(fixtures=(rail,)), "big-dog")["rail"] == float("inf")


def test_what_stands_in_another_room_is_not_got_onto() -> None:
    there = box("there", 8.0, 0.5)
    site = two_rooms_and_hall(fixtures=(there,))
    assert needs(site, rooms=frozenset({"kitchen"}))["there"] == float("inf")
    assert needs(site, rooms=frozenset({"study"}))["there"] == pytest.approx(0.5)


def test_across_an_open_edge_it_jumps() -> None:
    """Two halves of a room with nothing between them; one that stays in a half keeps to what stands there."""
    site = two_rooms_and_hall(
        fixtures=(box("here", 5.7, 1.0), box("there", 6.6, 1.5)),
        open_edges=(open_edge("hall", "study", ((6.15, 0.0), (6.15, 6.0))),),
    )
    both = frozenset({"hall", "study"})
    assert needs(site, rooms=both)["there"] == pytest.approx(1.0)
    assert needs(site, rooms=frozenset({"hall"}))["there"] == float("inf")


def test_a_stair_is_walked_and_jumped_from() -> None:
    """From the step at 1.35 m a cupboard of 2.0 m beside the flight is 0.65 m up."""
    first = Storey(id="first", name="first floor", elevation_m=2.7)
    stair = Stair(id="stair", name="stairs", lower="ground", upper="first", line_m=((0.5, 1.0), (4.5, 1.0)))
    beside = box("beside", 2.6, 2.0, centre_m=(2.6, 1.8))
    site = one_room(storeys=(*one_room().storeys, first), stairs=(stair,), fixtures=(beside,))
    found = needs(site)
    assert found["stair"] == 0.0
    assert found["beside"] < 0.75


@given(
    st.lists(st.tuples(st.floats(0.4, 4.6), st.floats(0.3, 2.0)), min_size=1, max_size=6),
    st.floats(0.1, 2.0),
    st.floats(0.0, 1.0),
)
def test_a_higher_jump_loses_no_top_and_another_thing_makes_none_harder(
    places: list[tuple[float, float]], jump: float, more: float
) -> None:
    boxes = tuple(box(f"box-{i}", x, top, size_m=(0.3, 0.3)) for i, (x, top) in enumerate(places))
    reach = reach_of(one_room(fixtures=boxes).bare, kind("small-dog"), rooms=LIVING)
    assert set(_got(reach, jump)) <= set(_got(reach, jump + more))
    fewer = needs(one_room(fixtures=boxes[:-1]), "small-dog")
    # In a far corner, clear of all others: it takes no room above them.
    corner = box("corner", 4.8, 0.5, centre_m=(4.8, 3.7), size_m=(0.3, 0.3))
    added = needs(one_room(fixtures=(*boxes[:-1], corner)), "small-dog")
    assert all(added[thing] <= need for thing, need in fewer.items())


def _got(reach: Reach, jump: float) -> list[int]:
    return [i for i, need in enumerate(reach.needs()) if need <= jump]


def test_neither_the_order_of_things_nor_a_quarter_turn_changes_anything() -> None:
    site = one_room(fixtures=CHAIN)
    assert needs(one_room(fixtures=tuple(reversed(CHAIN)))) == needs(site)
    turned = needs(quarter_turned(site))
    assert turned == pytest.approx(needs(site))


def test_a_house_without_a_room() -> None:
    assert tops_of(one_room(spaces=(), fixtures=CHAIN).bare) == ()
    assert reach_of(one_room(spaces=()).bare, kind("cat"), rooms=frozenset()).needs().tolist() == []

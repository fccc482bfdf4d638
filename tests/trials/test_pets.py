"""Where animals get by what stands open."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import one_room, opening, two_rooms_and_hall
from wardwright.model.fabric import Stair, Storey
from wardwright.model.site import Site
from wardwright.trials.pets import door_between, open_to, stands_open, ways_to

TOLD = (("habit", "told"), ("habit_night", "told"))


def doors(study: str = "shut", night: str = "shut") -> Site:
    """The front door, the kitchen's always shut, the study's as said."""
    told: Any = {"basis": TOLD}
    return two_rooms_and_hall(
        openings=(
            opening("front-door", "south", 5.25, **told),
            opening("kitchen-door", "kitchen-wall", 4.0, **told),
            opening("study-door", "study-wall", 4.0, habit=study, habit_night=night, **told),
        )
    )


@pytest.mark.parametrize(
    ("study", "night", "spaces"),
    [
        ("shut", "shut", []),
        ("open", "shut", ["study"]),
        ("shut", "open", ["study"]),
        ("ajar", "shut", ["study"]),
    ],
)
def test_a_door_that_stands_open_by_day_or_by_night_lets_it_through(
    study: str, night: str, spaces: list[str]
) -> None:
    found = open_to(doors(study, night).bare, frozenset({"hall"}))
    assert [one.space for one in found] == spaces


def test_where_nobody_has_said_a_door_may_stand_open() -> None:
    site = two_rooms_and_hall()
    assert stands_open(site.opening("study-door"))
    found = open_to(site.bare, frozenset({"kitchen"}))
    assert [(one.space, one.before) for one in found] == [("hall", "kitchen"), ("study", "hall")]
    assert [one.by for one in ways_to(found, "study")] == ["study-door", "kitchen-door"]


def test_a_door_that_is_kept_shut_ends_the_way() -> None:
    site = two_rooms_and_hall()
    found = open_to(site.bare, frozenset({"kitchen"}), frozenset({"study-door"}))
    assert [one.space for one in found] == ["hall"]


def test_a_stair_is_no_door() -> None:
    first = Storey(id="first", name="first floor", elevation_m=2.7)
    room = one_room().spaces[0].model_copy(update={"id": "bedroom", "storey": "first"})
    stair = Stair(id="stair", name="stairs", lower="ground", upper="first", line_m=((0.5, 1.0), (4.5, 1.0)))
    site = one_room(storeys=(*one_room().storeys, first), spaces=(*one_room().spaces, room), stairs=(stair,))
    (up,) = open_to(site.bare, frozenset({"living"}))
    assert (up.space, up.by, up.is_door) == ("bedroom", "stair", False)
    assert door_between(site.bare, "bedroom", frozenset({"living"})) is None


def test_the_one_door_that_keeps_it_out() -> None:
    site = two_rooms_and_hall().bare
    assert door_between(site, "study", frozenset({"hall", "kitchen"})) == "study-door"
    assert door_between(site, "hall", frozenset({"study", "kitchen"})) is None
    assert door_between(site, "study", frozenset({"kitchen"})) is None

"""Where animals get by what stands open, and whether their walks trip a detector."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, opening, pet, two_rooms_and_hall
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from wardwright.model.fabric import Stair, Storey
from wardwright.model.site import Site
from wardwright.rules.animals import animals
from wardwright.rules.perches import under_zones
from wardwright.trials.pets import REACH_SHARES, Tripped, door_between, open_to, stands_open, tripped, ways_to

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


def played(site: Site) -> tuple[Tripped, ...]:
    device = site.devices[0]
    sheet = CATALOGUE.sheet(device.sheet).movement
    assert sheet is not None
    under = under_zones(site, device, sheet)
    return tripped(site.bare, CATALOGUE, device, animal=animals(site, CATALOGUE)[0], under=under)


def test_a_cat_that_walks_along_the_sideboard_trips_it_and_one_on_the_floor_does_not() -> None:
    """The sideboard lies 4.4 m off, where the zones are 0.12 m wide: along its 1 m several are filled and left."""
    site = one_room(devices=(PASSING_PETS,), fixtures=(SIDEBOARD,), pets=(pet("cat"),))
    floor, sideboard = played(site)
    assert floor.seconds == (float("inf"),) * len(REACH_SHARES)
    # At 0.64 m/s the whole walk there and back takes 3 s at most.
    assert 0.0 < sideboard.seconds[1] < 3.2


def test_less_reach_never_trips_it_sooner() -> None:
    site = one_room(devices=(on_wall("fan", "fan", "west", 2.0),), pets=(pet("big-dog"),))
    for one in played(site):
        assert list(one.seconds) == sorted(one.seconds)


def test_a_dog_on_the_floor_trips_a_detector_whose_zones_come_down() -> None:
    site = one_room(devices=(on_wall("fan", "fan", "west", 2.0),), pets=(pet("big-dog"),))
    (floor,) = played(site)
    assert floor.seconds[1] < 6.0


def test_where_there_is_nothing_to_walk_on() -> None:
    site = one_room(devices=(PASSING_PETS,), pets=(pet("cat"),))
    assert tripped(site.bare, CATALOGUE, PASSING_PETS, animal=animals(site, CATALOGUE)[0], under=()) == ()

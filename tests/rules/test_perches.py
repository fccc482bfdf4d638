"""Where animals get up to, against the zones."""

from __future__ import annotations

import math
from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, pet
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from wardwright.model.fabric import Stair, Storey
from wardwright.model.site import Site
from wardwright.rules.animal_tops import tops_of
from wardwright.rules.animals import animals
from wardwright.rules.perches import InView, on_floor, on_things, still_under, under_zones

TABLE = CATALOGUE.sheet("fan-passing-pets").movement
assert TABLE is not None


def house(kind: str = "cat", **parts: Any) -> Site:
    return one_room(**({"devices": (PASSING_PETS,), "pets": (pet(kind),)} | parts))


def inside(site: Site) -> InView | None:
    assert TABLE is not None
    return on_things(site, site.devices[0], TABLE, animal=animals(site, CATALOGUE)[0])


# The middle row passes at 2.2 m - 0.1405 d: over the sideboard's far corners, 4.93 m off, at 1.507 m.
def test_a_cat_on_the_sideboard_comes_into_the_middle_row() -> None:
    found = inside(house(fixtures=(SIDEBOARD,)))
    assert found is not None
    assert (found.on, found.subject) == ("sideboard", "sideboard")
    assert found.top_m == pytest.approx(1.4 + 0.28)
    assert found.zone_m == pytest.approx(2.2 - math.hypot(4.91, 0.45) * math.tan(math.radians(8.0)))
    assert found.over_m == pytest.approx(0.173, abs=0.001)


# A lower box leaves it under the row; a rabbit does not get up; a curtain is no place to stand.
@pytest.mark.parametrize(
    ("kind", "facts"),
    [("cat", {"height_m": 1.2}), ("rabbit", {}), ("cat", {"kind": "curtain"})],
    ids=["too low", "too high to jump", "a curtain"],
)
def test_what_stays_below(kind: str, facts: dict[str, Any]) -> None:
    assert inside(house(kind, fixtures=(SIDEBOARD.model_copy(update=facts),))) is None


def test_a_place_where_the_animal_may_not_be_is_left_out() -> None:
    site = house(fixtures=(SIDEBOARD,))
    elsewhere = site.model_copy(update={"pets": (pet("cat", spaces=("nowhere",)),)})
    assert inside(elsewhere) is None


def test_one_that_climbs_gets_higher_than_it_jumps() -> None:
    """Shelves 2.0 m high are above a cat's jump of 1.6 m, and the far row passes below its top there."""
    tall = SIDEBOARD.model_copy(update={"height_m": 2.0, "centre_m": (2.0, 2.0)})
    assert inside(house(fixtures=(tall,))) is None
    found = inside(house(fixtures=(tall.model_copy(update={"kind": "shelf"}),)))
    assert found is not None
    # Over its far corners, half a step inside them, the far row is at 2.003 m, under 2.0 + 0.28 m.
    assert found.zone_m == pytest.approx(
        2.2 - math.hypot(2.21, 0.45) * math.tan(math.radians(5.0)), abs=0.002
    )


def test_a_stair_is_climbed_without_a_jump() -> None:
    """It rises 2.7 m over 4 m toward the east: at x = 2.5 it is 1.35 m up, where the middle row is at 1.85 m."""
    first = Storey(id="first", name="first floor", elevation_m=2.7)
    stair = Stair(id="stair", name="stairs", lower="ground", upper="first", line_m=((0.5, 2.0), (4.5, 2.0)))
    site = house("small-dog", storeys=(*one_room().storeys, first), stairs=(stair,))
    found = inside(site)
    assert found is not None
    assert found.subject == "stair"
    assert found.top_m > found.zone_m


def test_on_the_floor_a_tall_dog_meets_the_lowest_zone_at_the_far_end() -> None:
    """Over 5 m the middle row comes down to 2.2 - 5.29 x 0.1405 = 1.46 m in the far corners."""
    site = house("big-dog", pets=(pet("big-dog", height_m=1.48),))
    assert TABLE is not None
    found = on_floor(site, PASSING_PETS, TABLE, animal=animals(site, CATALOGUE)[0])
    assert found is not None
    assert (found.on, found.subject, found.top_m) == ("the floor", None, 1.48)
    assert found.zone_m == pytest.approx(2.2 - math.hypot(4.91, 1.95) * math.tan(math.radians(8.0)))
    low = house("big-dog", pets=(pet("big-dog", height_m=1.4),))
    assert on_floor(low, PASSING_PETS, TABLE, animal=animals(low, CATALOGUE)[0]) is None


def test_the_floor_behind_the_fan_counts_for_nothing() -> None:
    """Looking along the south wall from its west end, the room's north-west corner is out of the fan."""
    fan = on_wall("fan", "fan-passing-pets", "south", 0.3, heading_deg=0.0)
    site = house("big-dog", devices=(fan,), pets=(pet("big-dog", height_m=1.5),))
    assert TABLE is not None
    found = on_floor(site, fan, TABLE, animal=animals(site, CATALOGUE)[0])
    assert found is None or found.place[0] > found.place[1]


def test_zones_are_remembered_by_where_they_lie() -> None:
    """The same sheet by another name, in the same place, leaves the same room."""
    site = house(fixtures=(SIDEBOARD,))
    assert TABLE is not None
    one = under_zones(site, PASSING_PETS, TABLE)
    assert [tops_of(site.bare)[under.number].kind for under in one] == ["floor", SIDEBOARD.kind]
    assert under_zones(site, PASSING_PETS.model_copy(update={"id": "other"}), TABLE) is one
    tilted = under_zones(site, PASSING_PETS.model_copy(update={"tilt_deg": -1.0}), TABLE)
    assert min(under.free_m for under in tilted) > min(under.free_m for under in one)


def test_the_same_places_under_the_zones_once_it_hangs_higher() -> None:
    """0.1 m higher its zones leave 0.1 m more over the same place."""
    site = house(fixtures=(SIDEBOARD,))
    assert TABLE is not None
    before = under_zones(site, PASSING_PETS, TABLE)
    mount = PASSING_PETS.mount.model_copy(update={"height_m": PASSING_PETS.mount.height_m + 0.1})  # type: ignore[union-attr]
    higher = PASSING_PETS.model_copy(update={"mount": mount})
    after = still_under(site.bare, higher, TABLE, before=PASSING_PETS, under=before)
    assert [one.place for one in after] == [one.place for one in before]
    assert [one.free_m for one in after] == pytest.approx([one.free_m + 0.1 for one in before])
    assert still_under(site.bare, PASSING_PETS, TABLE, before=PASSING_PETS, under=before) == before
    assert still_under(site.bare, higher, TABLE, before=PASSING_PETS, under=()) == ()
    away = PASSING_PETS.model_copy(update={"heading_deg": 180.0})
    assert still_under(site.bare, away, TABLE, before=PASSING_PETS, under=before) == ()

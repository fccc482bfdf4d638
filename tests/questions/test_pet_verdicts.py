"""Whether a detector can stay with an animal in."""

from __future__ import annotations

from typing import Any

from common.houses import CATALOGUE, on_wall, one_room, pet, two_rooms_and_hall
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from wardwright.model.site import Site
from wardwright.questions.pet_verdicts import decisive, settled, verdict_of, worst_of
from wardwright.rules.animals import animals
from wardwright.trials.pet_room import PetRoom, room_for

SILENT = on_wall("fan", "fan", "west", 2.0)


def rooms(**parts: Any) -> tuple[PetRoom, ...]:
    return rooms_of(one_room(**({"devices": (PASSING_PETS,)} | parts)))


def rooms_of(site: Site) -> tuple[PetRoom, ...]:
    device = site.devices[0]
    sheet = CATALOGUE.sheet(device.sheet).movement
    assert sheet is not None
    return tuple(
        room_for(site.bare, CATALOGUE, device, sheet=sheet, animal=one) for one in animals(site, CATALOGUE)
    )


def test_on_the_floor_under_the_zones_of_a_sheet_that_passes_it() -> None:
    (cat,) = rooms(pets=(pet("cat"),))
    assert verdict_of(cat) == "good"


def test_on_a_thing_in_the_zones_no_sheet_vouches_for_it() -> None:
    (cat,) = rooms(pets=(pet("cat"),), fixtures=(SIDEBOARD,))
    assert verdict_of(cat) == "bad"


def test_too_heavy_for_its_sheet_though_below_the_zones() -> None:
    (dog,) = rooms(pets=(pet("big-dog", height_m=0.6, mass_kg=30.0),))
    assert (dog.estimate.low > 0.0, verdict_of(dog)) == (True, "thin")


def test_tall_on_the_floor_and_light_enough_for_its_sheet() -> None:
    """A dog of 1.48 m and 15 kg is no real one: the sheet's word stands against the zones."""
    told: Any = (("height_m", "told"), ("mass_kg", "told"))
    (dog,) = rooms(pets=(pet("big-dog", height_m=1.48, mass_kg=15.0, basis=told),))
    assert (dog.estimate.value < 0.0, verdict_of(dog)) == (True, "thin")


def test_where_the_zones_come_down_to_the_floor() -> None:
    (cat,) = rooms(pets=(pet("cat"),), devices=(SILENT,))
    assert verdict_of(cat) == "bad"


def test_an_animal_that_never_comes_into_sight() -> None:
    told: Any = (("habit", "told"), ("habit_night", "told"))
    shut = tuple(one.model_copy(update={"basis": told}) for one in two_rooms_and_hall().openings)
    east = on_wall("fan", "fan", "east", 2.0)
    site = two_rooms_and_hall(devices=(east,), openings=shut, pets=(pet("cat", spaces=("kitchen",)),))
    assert verdict_of(rooms_of(site)[0]) == "good"


def test_the_worst_of_several() -> None:
    both = rooms(pets=(pet("rabbit"), pet("cat")), fixtures=(SIDEBOARD,))
    assert worst_of(both).animal.pet.id == "cat"


def test_what_is_settled_before_it_walks_is_the_verdict() -> None:
    told: Any = (("height_m", "told"), ("mass_kg", "told"))
    for some in (
        rooms(pets=(pet("cat"),)),
        rooms(pets=(pet("big-dog", height_m=0.6, mass_kg=30.0, basis=told),)),
        rooms(pets=(pet("rabbit"), pet("cat")), fixtures=(SIDEBOARD,)),
    ):
        for one in some:
            assert settled(one.left) in (None, verdict_of(one))


def test_the_walks_decide_on_the_tops_that_its_sheet_does_not_vouch_for() -> None:
    (cat,) = rooms(pets=(pet("cat"),), fixtures=(SIDEBOARD,))
    assert settled(cat.left) is None
    assert [cat.left.told.tops[one.number].thing for one in decisive(cat.left)] == ["sideboard"]
    told: Any = (("height_m", "told"), ("mass_kg", "told"))
    (tall,) = rooms(pets=(pet("big-dog", height_m=1.48, mass_kg=15.0, basis=told),))
    assert (settled(tall.left), decisive(tall.left)) == (None, ())
    (silent,) = rooms(pets=(pet("cat"),), devices=(SILENT,))
    assert [silent.left.told.tops[one.number].kind for one in decisive(silent.left)] == ["floor"]

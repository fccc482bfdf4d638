"""Changes that are known to be no better before they are tried."""

from __future__ import annotations

from functools import partial
from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, pet
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.fabric import Stair, Storey
from wardwright.model.site import Site
from wardwright.questions.answer import WORST_FIRST
from wardwright.questions.beaten_changes import beaten
from wardwright.questions.pet_changes import Change, Trial, changes
from wardwright.questions.pet_verdicts import verdict_of, worst_of
from wardwright.rules.animals import animals
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.pet_room import room_for


def told(site: Site, catalogue: Catalogue, device: Device) -> tuple[str, tuple[Change, ...], frozenset[int]]:
    """The verdict as it is, what could be changed, and which of that is known to be no better."""
    sheet = catalogue.sheet(device.sheet).movement
    assert sheet is not None
    house, household = site.bare, animals(site, catalogue)
    now = tuple(room_for(house, catalogue, device, sheet=sheet, animal=one) for one in household)
    verdict = verdict_of(worst_of(now))
    every = tuple(changes(house, catalogue, Trial(device, sheet, household, device.sheet), now=now))
    return verdict, every, beaten(house, catalogue, every, device=device, now=now, verdict=verdict)


def with_stairs(**parts: Any) -> Site:
    first = Storey(id="first", name="first floor", elevation_m=2.7)
    room = one_room().spaces[0].model_copy(update={"id": "bedroom", "storey": "first"})
    stair = Stair(id="stair", name="stairs", lower="ground", upper="first", line_m=((0.5, 1.0), (4.5, 1.0)))
    return one_room(
        storeys=(*one_room().storeys, first), spaces=(*one_room().spaces, room), stairs=(stair,), **parts
    )


FAN = on_wall("fan", "fan", "west", 2.0)
HOUSES = {
    "a dog on the stairs": with_stairs(devices=(FAN,), pets=(pet("big-dog"),)),
    "a dog and a cat on the stairs": with_stairs(devices=(FAN,), pets=(pet("big-dog"), pet("cat"))),
    "a cat on the sideboard": one_room(devices=(FAN,), pets=(pet("cat"),), fixtures=(SIDEBOARD,)),
    "too heavy": one_room(devices=(PASSING_PETS,), pets=(pet("big-dog", height_m=0.6, mass_kg=30.0),)),
}


@pytest.mark.parametrize("site", HOUSES.values(), ids=HOUSES)
def test_what_is_known_to_be_no_better_is_none_when_it_is_tried(site: Site) -> None:
    verdict, every, known = told(site, CATALOGUE, site.devices[0])
    for number in known:
        trial = every[number].trial
        play = partial(room_for, site.bare, CATALOGUE, trial.device, sheet=trial.sheet)
        after = verdict_of(worst_of(tuple(play(animal=one) for one in trial.household)))
        assert WORST_FIRST.index(after) <= WORST_FIRST.index(verdict)  # type: ignore[arg-type]


def test_on_the_stairs_and_in_view_all_ways_of_hanging_it_are_known() -> None:
    for name, is_bad in (("a dog on the stairs", True), ("too heavy", False)):
        site = HOUSES[name]
        verdict, every, known = told(site, CATALOGUE, site.devices[0])
        assert (verdict == "bad") == is_bad
        hung = {i for i, one in enumerate(every) if one.action in ("change-mount", "turn-device")}
        assert hung == known, name
        assert hung


def test_where_its_sheet_passes_the_animal_nothing_is_known() -> None:
    site = one_room(devices=(PASSING_PETS,), pets=(pet("cat"),), fixtures=(SIDEBOARD,))
    assert told(site, CATALOGUE, PASSING_PETS)[2] == frozenset()


def test_in_the_terrace() -> None:
    site, catalogue = read_sample("terrace"), load_catalogue()
    for name, verdict in (("hall-movement", "bad"), ("living-movement", "thin")):
        was, every, known = told(site, catalogue, site.device(name))
        assert was == verdict
        assert {every[number].action for number in known} == {"change-mount", "turn-device"}

"""MOV106: weight, height, where the animal may be, and the sheet that passes it."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, opening, pet, two_rooms_and_hall
from common.mending import mended
from common.rule_houses.movement import FACING_NORTH, PASSING_PETS
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.physics.detection.from_site import watch
from wardwright.physics.detection.walkers import HEIGHTS_M
from wardwright.rules.ahead import CELL_M, ahead_of
from wardwright.rules.animals import Roaming, animals
from wardwright.rules.kit import movement_detectors
from wardwright.rules.movement.animal_heavier_than_its_detector_passes import (
    POSTURES,
    ROOM_TO_WALK_M2,
)
from wardwright.rules.movement.animal_heavier_than_its_detector_passes import (
    animal_heavier_than_its_detector_passes as rule,
)
from wardwright.rules.registry import faults_of, findings_of
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def test_a_plain_detector_passes_nothing() -> None:
    site = one_room(devices=(FACING_NORTH,), pets=(pet("small-dog"),))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    # Its sheet is silent on animals, so this is advice.
    assert (found.estimate.value, found.limit, found.severity) == (8.0, 0.0, "advise")
    assert dict(found.mends[0].values) == {"sheet": "fan-passing-pets"}
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


@pytest.mark.parametrize(("mass_kg", "count"), [(17.9, 0), (18.0, 0), (18.1, 1)])
def test_the_weight_on_the_sheet_binds(mass_kg: float, count: int) -> None:
    site = one_room(devices=(PASSING_PETS,), pets=(pet("big-dog", mass_kg=mass_kg),))
    found = findings_of(rule, site, CATALOGUE)
    assert len(found) == count
    assert all((one.severity, one.mends) == ("must mend", ()) for one in found)
    assert all("no sheet passes it" in one.cure for one in found)


def test_light_and_tall_is_another_fault() -> None:
    site = one_room(devices=(PASSING_PETS,), pets=(pet("big-dog", mass_kg=15.0, height_m=1.48),))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.estimate.unit) == (1.48, "m")
    assert found.limit == pytest.approx(1.457, abs=0.001)
    assert "taller than its lowest zone" in found.message


@pytest.mark.parametrize(("habit", "count"), [("shut", 0), ("open", 1)])
def test_a_dog_in_the_study_counts_through_the_open_door(habit: str, count: int) -> None:
    """The hall's detector looks east over the study's door."""
    fan = on_wall("fan", "fan", "kitchen-wall", 4.0, side="right")
    site = two_rooms_and_hall(
        devices=(fan,),
        pets=(pet("small-dog", spaces=("study",)),),
        openings=(opening("study-door", "study-wall", 4.0, habit=habit),),
    )
    assert len(findings_of(rule, site, CATALOGUE)) == count


def test_the_new_sheet_brings_its_own_height() -> None:
    table = CATALOGUE.sheet("fan-passing-pets").movement
    assert table is not None
    low = CATALOGUE.sheet("fan-passing-pets").model_copy(
        update={"movement": table.model_copy(update={"height_low_m": 2.0, "height_high_m": 2.1})}
    )
    rest: tuple[Any, ...] = tuple(sheet for sheet in CATALOGUE.sheets if sheet.id != low.id)
    site: Site = one_room(devices=(FACING_NORTH,), pets=(pet("cat"),))
    (found,) = findings_of(rule, site, CATALOGUE.model_copy(update={"sheets": (*rest, low)}))
    assert dict(found.mends[0].values) == {"sheet": "fan-passing-pets", "height_m": 2.1}


def test_one_finding_about_the_heaviest_with_a_sheet_for_all() -> None:
    site = one_room(devices=(FACING_NORTH,), pets=(pet("cat"), pet("small-dog", mass_kg=12.0)))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.related) == (12.0, ("small-dog",))
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_no_sheet_whose_zones_the_animal_would_stand_in() -> None:
    """The only sheet that passes its weight has a zone at 1.46 m in the corners of the room."""
    tall = pet("big-dog", mass_kg=15.0, height_m=1.48)
    plain = PASSING_PETS.model_copy(update={"sheet": "fan"})
    (found,) = findings_of(rule, one_room(devices=(plain,), pets=(tall,)), CATALOGUE)
    assert found.mends == ()
    (found,) = findings_of(rule, one_room(devices=(FACING_NORTH,), pets=(tall,)), CATALOGUE)
    assert len(found.mends) == 1  # looking across the room it falls no lower than 1.55 m


def slow_seen(site: Site, catalogue: Catalogue, device: Device, *, animal: Roaming) -> bool:
    """Whether the animal is on more floor than it passes by, by the whole shape of what may be noticed."""
    sheet = catalogue.sheet(device.sheet).movement
    assert sheet is not None
    ahead = ahead_of(site, device, sheet)
    floor = animal.floor_in(ahead)
    base = ahead.level.floor_m
    in_sight = ahead.in_fan(floor) & (ahead.heights(floor).seen_length(base, base + animal.height_m) > 0.0)
    posture = next((one for one in POSTURES if HEIGHTS_M[one] >= animal.height_m), POSTURES[-1])
    shape = watch(site, catalogue, device, posture=posture)
    seen = floor[in_sight & shape.high[shape.grid.cells_of(floor)]]
    return len(seen) * CELL_M**2 >= ROOM_TO_WALK_M2


@pytest.mark.parametrize("name", ["terrace", "bungalow", "terrace-better", "lakeside"])
@pytest.mark.parametrize("kind", ["cat", "small-dog", "big-dog"])
def test_what_is_plainly_seen_decides_no_otherwise_than_the_whole_shape(name: str, kind: str) -> None:
    catalogue, site = load_catalogue(), read_sample(name)
    site = site.model_copy(update={"pets": (pet(kind),)})
    (animal,) = animals(site, catalogue)
    expected = {
        device.id
        for device, sheet in movement_detectors(site, catalogue)
        if animal.mass_kg > sheet.passes_animals_up_to_kg
        and slow_seen(site, catalogue, device, animal=animal)
    }
    heavy = {
        one.subject for one in faults_of(rule, site, catalogue) if one.estimate and one.estimate.unit == "kg"
    }
    assert heavy == expected

"""MOV106: weight, height, where the animal may be, and the sheet that passes it."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, opening, pet, two_rooms_and_hall
from common.mending import mended
from common.rule_houses.movement import FACING_NORTH, PASSING_PETS
from wardwright.model.site import Site
from wardwright.rules.movement.animal_heavier_than_its_detector_passes import (
    animal_heavier_than_its_detector_passes as rule,
)
from wardwright.rules.registry import findings_of


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

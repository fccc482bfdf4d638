import math

import pytest

from wardwright.model.surroundings import Ground, GroundThing
from wardwright.rules.outside_ears import heard_outside, outside_ears
from wardwright.rules.sound_heard import INTRUDER_KINDS, sounders
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")
EVERY = sounders(SITE, CATALOGUE, INTRUDER_KINDS)


def neighbour(y: float) -> GroundThing:
    ring = ((0.0, y), (4.0, y), (4.0, y + 4.0), (0.0, y + 4.0))
    return GroundThing(id=f"house-{y:g}", name="House", kind="building", outline_m=ring, height_m=6.0)


def levels(*things: GroundThing) -> dict[str, float]:
    site = SITE.model_copy(update={"ground": SITE.ground.model_copy(update={"things": things})})
    return {
        one.place.id: one.level.value
        for one in heard_outside(site, CATALOGUE, EVERY)
        if one.level is not None
    }


def test_boundary_street_and_buildings_are_listened_at() -> None:
    assert [one.id for one in outside_ears(SITE)] == ["boundary", "street"]
    assert outside_ears(SITE.model_copy(update={"ground": Ground()})) == ()


def test_a_house_farther_off_hears_less_and_one_behind_much_less() -> None:
    found = levels(neighbour(-12.0), neighbour(-24.0), neighbour(30.0))
    assert found["house--12"] > found["house--24"] > found["house-30"]
    assert found["house--24"] - found["house-30"] > 10.0


def test_a_sounder_alone_outside_falls_with_distance_as_in_the_open() -> None:
    alone = tuple(one for one in EVERY if one.room < 0)
    found = {one.place.id: one for one in heard_outside(SITE, CATALOGUE, alone)}
    street = found["street"]
    assert street.level is not None
    x, y, z = next(p for p in street.place.points if p[:2] == street.at_m)
    place = alone[0].place
    height = SITE.storey(place.storey).elevation_m + place.height_m
    away2 = (x - place.x_m) ** 2 + (y - place.y_m) ** 2 + (z - height) ** 2
    # 103 dBA at 1 m on a wall.
    assert street.level.value == pytest.approx(103.0 - 10.0 * math.log10(away2), abs=0.01)

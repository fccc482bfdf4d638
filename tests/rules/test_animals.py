"""How big the animals are, and where they may be."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room, pet, two_rooms_and_hall
from wardwright.errors import CatalogueError, NotComputable
from wardwright.rules.ahead import ahead_of
from wardwright.rules.animals import animals


def test_what_is_told_comes_before_what_is_usual() -> None:
    site = one_room(pets=(pet("big-dog", mass_kg=42.0), pet("cat")))
    dog, cat = animals(site, CATALOGUE)
    assert (dog.mass_kg, dog.mass_basis, dog.height_m, dog.height_basis) == (42.0, "told", 0.65, "default")
    assert (cat.mass_kg, cat.height_m, cat.row.jump_m, cat.row.climbs) == (4.5, 0.28, 1.6, True)


def test_nowhere_named_is_everywhere_of_ours() -> None:
    everywhere = animals(two_rooms_and_hall(pets=(pet("cat"),)), CATALOGUE)[0]
    assert [space.id for space in everywhere.spaces] == ["hall", "kitchen", "study"]
    kept = animals(two_rooms_and_hall(pets=(pet("cat", spaces=("study",)),)), CATALOGUE)[0]
    assert [space.id for space in kept.spaces] == ["study"]
    assert kept.rooms == {"study"}


def test_the_floor_is_that_of_its_spaces() -> None:
    fan = on_wall("fan", "fan", "south", 2.0)
    site = two_rooms_and_hall(pets=(pet("cat", spaces=("study",)),), devices=(fan,))
    table = CATALOGUE.sheet("fan").movement
    assert table is not None
    floor = animals(site, CATALOGUE)[0].floor_in(ahead_of(site, fan, table))
    # Study: 4 m by 6 m, and half of the cells of the wall's face.
    assert len(floor) * 0.01 == pytest.approx(24.0, abs=1.0)
    assert floor[:, 0].min() > 6.1


def test_without_an_animal_nothing_is_known_of_any() -> None:
    with pytest.raises(NotComputable, match="no animal"):
        animals(one_room(), CATALOGUE)


def test_a_kind_without_a_row_is_said() -> None:
    with pytest.raises(CatalogueError, match="no animal 'cat'"):
        animals(one_room(pets=(pet("cat"),)), CATALOGUE.model_copy(update={"animals": ()}))

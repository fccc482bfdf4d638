import pytest

from wardwright.errors import CatalogueError
from wardwright.model.sound_make import (
    OPEN,
    _loss,
    fixture_absorption,
    floor_losses,
    is_known,
    leaf_loss,
    spectrum_of,
    swallowed_by,
    wall_losses,
)
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
TERRACE = read_sample("terrace")
STUD = TERRACE.wall("hall-living-wall")
UNKNOWN = STUD.model_copy(update={"construction": "unknown"})


def test_a_wall_whose_make_is_told_has_one_loss() -> None:
    light, likely, heavy = wall_losses(CATALOGUE, (STUD,))
    assert light == likely == heavy == (17, 31, 33, 40, 38, 36)
    assert is_known(CATALOGUE, STUD)


def test_a_wall_whose_make_nobody_told_may_be_light_or_heavy() -> None:
    assert not is_known(CATALOGUE, UNKNOWN)
    for walls in ((UNKNOWN,), (UNKNOWN.model_copy(update={"thickness_m": 0.3}),), ()):
        light, likely, heavy = wall_losses(CATALOGUE, walls)
        assert sum(light) <= sum(likely) <= sum(heavy)
        assert sum(light) < sum(heavy)
    assert floor_losses(CATALOGUE)[0] != floor_losses(CATALOGUE)[2]


def test_of_two_walls_the_better_counts_band_by_band() -> None:
    brick = STUD.model_copy(update={"construction": "brick"})
    assert wall_losses(CATALOGUE, (STUD, brick))[1] == (32, 34, 40, 47, 55, 61)


def test_a_leaf_with_glass_is_no_better_than_the_glass() -> None:
    plain = TERRACE.opening("front-door").model_copy(update={"glazing": None})
    glazed = plain.model_copy(update={"glazing": "single-plain"})
    assert leaf_loss(CATALOGUE, plain, is_outside=True) == (29, 31, 31, 31, 39, 43)
    assert leaf_loss(CATALOGUE, glazed, is_outside=True) == (18, 21, 26, 31, 33, 22)


def test_leaves_by_kind() -> None:
    door = TERRACE.opening("living-door")
    assert leaf_loss(CATALOGUE, door, is_outside=False) == (14, 19, 23, 18, 17, 21)
    assert leaf_loss(CATALOGUE, door.model_copy(update={"kind": "gap"}), is_outside=False) == OPEN
    pane = door.model_copy(update={"kind": "window"})
    assert leaf_loss(CATALOGUE, pane, is_outside=True) == (21, 20, 25, 35, 39, 34)


def test_a_surface_goes_by_its_use_or_its_wall_and_otherwise_by_what_is_usual() -> None:
    bedroom, kitchen = TERRACE.space("bedroom-1"), TERRACE.space("kitchen")
    assert swallowed_by(CATALOGUE, "floor", space=bedroom).id == "floor-carpet"
    assert swallowed_by(CATALOGUE, "floor", space=kitchen).id == "floor-hard"
    assert swallowed_by(CATALOGUE, "wall", space=kitchen, wall=STUD).id == "wall-stud"
    assert swallowed_by(CATALOGUE, "wall", space=kitchen, wall=UNKNOWN).id == "wall-plastered"
    assert fixture_absorption(CATALOGUE, "bed") is not None
    assert fixture_absorption(CATALOGUE, "worktop") is None


def test_what_has_no_row_is_said() -> None:
    empty = CATALOGUE.model_copy(update={"absorptions": ()})
    with pytest.raises(CatalogueError, match="no absorption of a floor"):
        swallowed_by(empty, "floor", space=TERRACE.space("hall"))
    with pytest.raises(CatalogueError, match="no spectrum of a camera"):
        spectrum_of(CATALOGUE, "camera")
    with pytest.raises(CatalogueError, match="no transmission 'felt'"):
        _loss(CATALOGUE, "felt")

import pytest

from wardwright.model.catalogue import Construction
from wardwright.model.fabric import Wall
from wardwright.model.wall_classes import class_of_wall, layers_as_drawn
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
MADE = {row.id: row for row in CATALOGUE.constructions}
CLASSES = {row.id: row.wall_class for row in CATALOGUE.radio_materials}


@pytest.mark.parametrize(
    ("construction", "expected"),
    [
        ("plasterboard-stud", "light"), ("brick", "masonry"), ("cavity-brick", "masonry"), ("concrete", "concrete"),
        ("timber", "timber"), ("plasterboard-foil", "coated"), ("steel-sheet", "metal"), ("stone", "masonry"),
        ("glass-wall", "glass"), ("unknown", "unknown"),
    ],
)  # fmt: skip
def test_the_heaviest_layer_decides(construction: str, expected: str) -> None:
    assert class_of_wall(MADE[construction], CLASSES) == expected


def test_what_is_not_in_the_catalogue_is_unknown() -> None:
    assert class_of_wall(None, CLASSES) == "unknown"


def wall(thickness: float) -> Wall:
    return Wall(id="w", storey="g", line_m=((0, 0), (1, 0)), thickness_m=thickness)


def test_a_solid_wall_is_as_thick_as_it_is_drawn() -> None:
    brick: Construction = MADE["brick"]
    assert layers_as_drawn(brick, wall(0.115)) == brick.layers
    assert layers_as_drawn(brick, wall(0.343))[0] == ("brick", pytest.approx(0.33))


def test_a_wall_with_a_cavity_is_as_its_row_says() -> None:
    cavity = MADE["cavity-brick"]
    assert layers_as_drawn(cavity, wall(0.6)) == cavity.layers


def test_of_unknown_make_it_has_no_layers() -> None:
    assert layers_as_drawn(MADE["unknown"], wall(0.3)) == ()
    assert layers_as_drawn(None, wall(0.3)) == ()

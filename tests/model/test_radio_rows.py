import pytest

from wardwright.errors import CatalogueError
from wardwright.model.radio_rows import WallLoss
from wardwright.model.sheets import SheetText, read_rows
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
MATERIALS = {row.id: row for row in CATALOGUE.radio_materials}
LOSS = """
[[wall_loss]]
id = "odd"
name = "odd"
value_db = 9.0
low_db = 1.0
high_db = 5.0
source = "own"
mark = "assumption"

[[source]]
id = "own"
title = "own"
seen = "own"
"""


def test_every_layer_of_every_construction_is_a_material() -> None:
    layers = {name for row in CATALOGUE.constructions for name, _ in row.layers}
    layers |= {name for row in CATALOGUE.wall_losses for name, _ in row.layers}
    assert layers - set(MATERIALS) == set()


def test_every_class_of_a_material_has_its_loss() -> None:
    classes = {row.wall_class for row in MATERIALS.values()} - {"none"}
    assert classes <= {row.id for row in CATALOGUE.wall_losses}


def test_only_own_rows_are_no_published_ones() -> None:
    assert {row.mark for row in MATERIALS.values() if row.source == "itu-p2040"} == {"published"}
    # Below 1 GHz most of the Recommendation's rows are stretched, and say so by their band.
    assert MATERIALS["brick"].from_ghz == 1.0


def test_a_loss_out_of_order_is_refused() -> None:
    with pytest.raises(CatalogueError, match="'value_db' 9 is not between 'low_db' 1 and 'high_db' 5"):
        read_rows([SheetText("odd.toml", LOSS)])


@pytest.mark.parametrize("row", CATALOGUE.wall_losses, ids=lambda row: row.id)
def test_losses_are_in_order(row: WallLoss) -> None:
    assert 0.0 <= row.low_db <= row.value_db <= row.high_db

"""Cells and stand-by batteries as rows: what is refused."""

from __future__ import annotations

import pytest

from wardwright.errors import CatalogueError
from wardwright.model.power_sheets import Cell
from wardwright.model.sheets import SheetText, read_rows
from wardwright.store.catalogue import load_catalogue

SHEET = '[[sheet]]\nid = "k"\nname = "k"\nkind = "keypad"\nsource = "own"\nmark = "assumption"\n'
SOURCE = '[[source]]\nid = "own"\ntitle = "own"\nseen = "own"\n'


def test_a_cell_that_is_not_there_is_named() -> None:
    cells = '[sheet.cells]\ncell = "lithium-cr2033"\nstandby_ua = 1.0\npulse_ma = 1.0\npulse_ms = 1.0\n'
    with pytest.raises(CatalogueError, match="'cell' names the cell 'lithium-cr2033', which does not exist"):
        read_rows([SheetText("mine.toml", SOURCE + SHEET + cells)])


def test_a_battery_that_is_not_there_is_named() -> None:
    battery = '[sheet.standby]\nbattery = "lead"\nbattery_ah = 1.0\nquiet_a = 0.1\n'
    with pytest.raises(CatalogueError, match="which does not exist"):
        read_rows([SheetText("mine.toml", SOURCE + SHEET + battery)])


@pytest.mark.parametrize("cell", load_catalogue().cells, ids=lambda cell: cell.id)
def test_the_catalogues_cells_hold_together(cell: Cell) -> None:
    assert cell.loss_low_share <= cell.loss_share <= cell.loss_high_share
    warmth = [share for _, share in cell.warmth]
    assert [at for at, _ in cell.warmth] == sorted(at for at, _ in cell.warmth)
    assert warmth == sorted(warmth)
    if cell.capacity_mah is None:
        assert cell.service_low_years is not None
        assert cell.service_high_years is not None
    else:
        assert cell.capacity_low_mah is not None
        assert cell.capacity_high_mah is not None
        assert cell.capacity_low_mah <= cell.capacity_mah <= cell.capacity_high_mah
        assert cell.shelf_years is not None


@pytest.mark.parametrize(
    "sheet", [one for one in load_catalogue().sheets if one.power == "cell"], ids=lambda one: one.id
)
def test_every_device_on_cells_says_what_it_draws(sheet) -> None:  # type: ignore[no-untyped-def] # noqa: ANN001 - a row
    assert sheet.cells is not None

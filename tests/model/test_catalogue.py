import pytest

from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.device_sheets import DeviceSheet

FIGURE = Figure(id="f", name="f", value=1.0, low=0.5, high=2.0, unit="s", source="own", mark="assumption")
SHEET = DeviceSheet(id="s", name="s", kind="keypad", source="own", mark="assumption")


def test_rows_are_found_by_id() -> None:
    catalogue = Catalogue(sheets=(SHEET,), figures=(FIGURE,))
    assert catalogue.sheet("s") is SHEET
    assert catalogue.figure("f") is FIGURE


def test_a_row_that_is_not_there_is_said_with_those_that_are() -> None:
    catalogue = Catalogue(sheets=(SHEET,))
    with pytest.raises(CatalogueError, match=r"there is no device sheet 'x'. .*use one of s"):
        catalogue.sheet("x")
    with pytest.raises(CatalogueError, match=r"there is no figure 'x'. Add its row to figures.toml"):
        catalogue.figure("x")


def test_what_a_sheet_does_not_say_is_not_known() -> None:
    assert (SHEET.grade, SHEET.environmental_class, SHEET.frequency_mhz) == (None, None, None)

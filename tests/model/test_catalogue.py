import pytest

from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.limits import Limit

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


def limit(value: float, pack: str = "any", country: str | None = None) -> Limit:
    facts = {"id": "l", "name": "l", "unit": "s", "source": "own", "mark": "published"}
    return Limit.model_validate(facts | {"value": value, "pack": pack, "country": country})


def test_a_limit_of_the_pack_goes_before_one_for_any() -> None:
    catalogue = Catalogue(limits=(limit(1.0), limit(2.0, "us"), limit(3.0, "us", "US")))
    assert catalogue.limit("l", "us").value == 2.0
    assert catalogue.limit("l", "uk-eu").value == 1.0


def test_a_countrys_limit_is_given_only_there() -> None:
    catalogue = Catalogue(limits=(limit(1.0, "any", "BE"), limit(2.0, "uk-eu")))
    assert [row.value for row in catalogue.limits_in("l", "uk-eu", "BE")] == [2.0, 1.0]
    assert [row.value for row in catalogue.limits_in("l", "uk-eu", "FR")] == [2.0]
    assert [row.value for row in catalogue.limits_in("l", "uk-eu")] == [2.0]
    assert catalogue.limits_in("l", "us") == ()


def test_a_limit_that_its_pack_has_not_is_said() -> None:
    catalogue = Catalogue(limits=(limit(1.0, "uk-eu"),))
    with pytest.raises(
        CatalogueError, match=r"no limit 'l' in the rule pack 'us'. Add its row to limits.toml"
    ):
        catalogue.limit("l", "us")

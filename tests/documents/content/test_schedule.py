from __future__ import annotations

from collections.abc import Callable
from datetime import date

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.paper import Table
from wardwright.documents.content.schedule import device_table, kinds_fitted, schedule, zone_table
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def cells(table: Table, name: str) -> dict[str, object]:
    row = next(row for row in table.rows if name in row)
    return {column.heading: cell for column, cell in zip(table.columns, row, strict=True)}


def test_the_schedule_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    kept("schedule.txt", as_text(schedule(fitted(), CATALOGUE, drawn_up=DAY)))


def test_numbers_and_dates_are_what_they_are_and_units_stand_in_the_heading() -> None:
    table = device_table(fitted(), CATALOGUE)
    assert {column.heading: column.unit for column in table.columns}["Height"] == "m"
    keypad, contact = cells(table, "Ground hall keypad"), cells(table, "Ground front door contact")
    assert keypad["Height"] == 1.2
    assert (contact["Zone"], contact["Made on"]) == (1, date(2026, 3, 31))
    assert contact["Fixed by"] == "adhesive"


def test_what_nobody_said_is_not_known_and_never_nought_or_empty() -> None:
    site = fitted()
    for table in (device_table(site, CATALOGUE), zone_table(site, CATALOGUE)):
        assert all(len(row) == len(table.columns) for row in table.rows)
        assert all(cell not in ("", None) for row in table.rows for cell in row)
    keypad = cells(device_table(site, CATALOGUE), "Ground hall keypad")
    assert (keypad["Made on"], keypad["End of life"]) == ("not known", "not known")
    assert keypad["Fixed by"] == "not decided"


def test_the_end_of_a_life_is_counted_from_its_making() -> None:
    table = device_table(fitted(), CATALOGUE)
    life = CATALOGUE.sheet("contact-radio").life_years
    end = cells(table, "Ground front door contact")["End of life"]
    assert end == ("not known" if life is None else date(2026 + int(life), 3, 31))


def test_names_are_cut_as_the_display_cuts_them() -> None:
    table = zone_table(fitted(), CATALOGUE)
    assert cells(table, "Ground front door")["On the display"] == "Ground front doo"
    assert cells(table, "Ground front door")["Cut off"] == "yes"
    assert cells(table, "@K\u00fcche")["Cut off"] == "no"


def test_kinds_are_counted_and_a_device_without_a_sheet_is_of_none() -> None:
    house = fitted()
    kinds = kinds_fitted(house, CATALOGUE)
    assert kinds["control-unit"] == 1
    assert kinds.total() == len(house.devices)
    lost = tuple(one.model_copy(update={"sheet": "no-such-sheet"}) for one in house.devices)
    assert not kinds_fitted(house.model_copy(update={"devices": lost}), CATALOGUE)


def test_a_device_without_a_sheet_is_still_listed(site: Site) -> None:
    lost = site.model_copy(
        update={"devices": (site.devices[0].model_copy(update={"sheet": "gone"}), *site.devices[1:])}
    )
    row = device_table(lost, CATALOGUE).rows[0]
    assert "gone" in row

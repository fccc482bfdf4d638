from __future__ import annotations

from collections.abc import Callable

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.paper import Table
from wardwright.documents.content.programming import programming_sheet
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def tables(site: Site) -> dict[str, Table]:
    sections = programming_sheet(site, CATALOGUE, drawn_up=DAY).sections
    return {section.table.name: section.table for section in sections if section.table is not None}


def zone(site: Site, number: int) -> dict[str, object]:
    table = tables(site)["Zones"]
    row = next(row for row in table.rows if row[0] == number)
    return {column.heading: cell for column, cell in zip(table.columns, row, strict=True)}


def test_the_sheet_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    kept("programming.txt", as_text(programming_sheet(fitted(), CATALOGUE, drawn_up=DAY)))


def test_every_zone_is_there_by_its_number() -> None:
    site = fitted()
    assert [row[0] for row in tables(site)["Zones"].rows] == sorted(one.number for one in site.zones)


def test_who_is_told_and_what_sounds_hang_on_the_state() -> None:
    found = zone(fitted(), 1)
    assert found["Sounders"] == "inside"
    assert found["Told"] == "part set: household; set: household and keyholder"


def test_a_zone_on_soak_only_writes_to_the_log() -> None:
    found = zone(fitted(), 4)
    assert (found["Sounders"], found["Told"], found["Soak"]) == ("log only", "log only", "yes")
    assert (found["Confirmation group"], found["Limit"], found["Parts"]) == ("a", 3, "always")


def test_each_signal_stands_once_for_each_state_and_says_where_it_is_not_usual() -> None:
    rows = tables(fitted())["Responses"].rows
    assert len({row[:2] for row in rows}) == len(rows) == 18
    assert [row[:2] for row in rows if row[-1] != "yes"] == [("intruder", "set")]


def test_times_say_how_they_are_known() -> None:
    rows = {row[0]: row[1:] for row in tables(read_sample("terrace"))["Times"].rows}
    assert rows["Entry time"] == (30.0, "s", "told")
    assert rows["A device counts as lost after"] == ("not decided", "", "default")

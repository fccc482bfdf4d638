from __future__ import annotations

from collections.abc import Callable

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.job_pack import job_pack, pick_list
from wardwright.documents.content.paper import Table
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def table_of(site: Site, heading: str) -> Table:
    paper = job_pack(site, CATALOGUE, drawn_up=DAY)
    table = next(one.table for one in paper.sections if one.heading.startswith(heading))
    assert table is not None
    return table


def test_the_job_pack_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    kept("job-pack.txt", as_text(job_pack(fitted(), CATALOGUE, drawn_up=DAY)))


def test_what_stays_from_before_is_not_picked() -> None:
    site = fitted()
    staying = [one for one in site.devices if one.is_existing]
    assert len(staying) == 1
    rows = pick_list(site, CATALOGUE).rows
    assert sum(int(row[2]) for row in rows if isinstance(row[2], int)) == len(site.devices) - 1
    assert staying[0].name not in str(rows)


def test_cells_are_counted_over_all_devices_by_kind() -> None:
    rows = {row[1]: row[2] for row in table_of(fitted(), "Cells").rows if row[0] == "cells"}
    fresh = [one for one in fitted().devices if not one.is_existing]
    cells = [CATALOGUE.sheet(one.sheet).cells for one in fresh]
    assert sum(int(count) for count in rows.values() if isinstance(count, int)) == sum(
        one.count for one in cells if one is not None
    )


def test_a_sounder_outside_asks_for_a_ladder_and_a_keypad_for_none() -> None:
    reached = {str(row[1]): row[3] for row in table_of(fitted(), "Drilling").rows}
    assert reached["First bedroom 1 sounder"] == "ladder outside"
    assert reached["Ground hall keypad"] == "from the floor"
    assert reached["Ground hall movement"] == "steps"


def test_nothing_known_of_a_risk_is_no_all_clear() -> None:
    rows = {row[0]: str(row[1]) for row in table_of(fitted(), "Site risks").rows}
    assert "surface not known" in rows["Old coatings that may hold asbestos"]
    assert rows["Cables and pipes in the wall"].startswith("not known")
    assert rows["Animals"] == "Dog"

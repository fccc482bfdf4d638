from __future__ import annotations

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.as_built import as_built
from wardwright.documents.content.plan_sheets import plan_sheets
from wardwright.documents.content.programming import programming_sheet
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_it_has_the_plan_every_device_every_zone_and_the_programme() -> None:
    site = fitted()
    paper = as_built(
        site,
        CATALOGUE,
        plan=plan_sheets(site, CATALOGUE, drawn_up=DAY),
        programming=programming_sheet(site, CATALOGUE, drawn_up=DAY),
        drawn_up=DAY,
    )
    assert paper.copy == "fitter"
    assert [one.drawing is not None for one in paper.sections[:2]] == [True, True]
    tables = {one.heading: one.table for one in paper.sections if one.table is not None}
    assert len(tables["Devices"].rows) == len(site.devices)
    assert len(tables["Zones"].rows) == len(site.zones)
    assert not any(table.is_ticked for table in tables.values()), "a record is not keyed in from"
    text = as_text(paper)
    assert "First landing control unit" in text
    assert f"Entry time | {site.programme.entry_time_s:g}" in text
    assert "____ Compared with the wall on" in text

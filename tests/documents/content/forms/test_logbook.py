from __future__ import annotations

from common.fitted import DAY, fitted
from wardwright.documents.content.forms.logbook import MONTHS, logbook
from wardwright.store.catalogue import load_catalogue


def test_it_has_the_months_and_empty_pages() -> None:
    paper = logbook(fitted(), load_catalogue(), drawn_up=DAY)
    assert paper.copy == "open"
    tables = [one.table for one in paper.sections if one.table is not None]
    assert tuple(row[0] for row in tables[0].rows) == MONTHS
    assert all(cell == "" for table in tables[1:] for row in table.rows for cell in row)
    assert len(tables) == 3

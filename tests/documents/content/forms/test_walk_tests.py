from __future__ import annotations

import pytest

from common.fitted import DAY
from wardwright.documents.content.forms.walk_tests import walk_tests
from wardwright.questions.proving_plan import proving_plan
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


@pytest.mark.parametrize("name", ["one-room", "terrace-better"])
def test_every_test_and_every_walk_has_a_row_to_fill_in(name: str) -> None:
    site = read_sample(name)
    plan = proving_plan(site, CATALOGUE)
    paper = walk_tests(plan, site, CATALOGUE, drawn_up=DAY)
    tables = [one.table for one in paper.sections if one.table is not None]
    assert len(tables) == len(plan.round.stops)
    assert all(table.is_filled_in for table in tables)
    rows = [row for table in tables for row in table.rows]
    tests = sum(len(stop.tests) for stop in plan.round.stops)
    assert len(rows) == tests + len(plan.walks)
    assert all(row[1:] == ("", "") for row in rows)
    assert paper.copy == "fitter"

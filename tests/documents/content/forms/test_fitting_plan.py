from __future__ import annotations

from collections.abc import Callable

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.fitting_plan import fitting_plan
from wardwright.questions.fit_plan import fit_plan
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def test_the_plan_of_fitting_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    site = fitted()
    plan = fit_plan(site, CATALOGUE, is_quick=True)
    kept("fitting.txt", as_text(fitting_plan(plan, site, CATALOGUE, drawn_up=DAY)))


def test_every_new_device_has_its_row_once_with_how_far_it_may_give_way() -> None:
    site = read_sample("one-room")
    paper = fitting_plan(fit_plan(site, CATALOGUE), site, CATALOGUE, drawn_up=DAY)
    rows = [row for one in paper.sections if one.table is not None for row in one.table.rows]
    assert sorted(str(row[0]) for row in rows) == sorted(one.name for one in site.devices)
    assert all(len(row) == 3 for row in rows)
    assert any("cm" in str(row[2]) for row in rows)
    assert paper.copy == "fitter"
    assert "asbestos" in " ".join(paper.sections[0].points)

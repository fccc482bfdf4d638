"""The plan of fitting on a terminal and as JSON."""

from __future__ import annotations

from common.priced_room import priced_room
from wardwright.documents.writers.fit_plan_text import fit_plan_json, fit_plan_text
from wardwright.questions.fit_plan import FitPlan, fit_plan
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
SITE = priced_room()
PLAN = fit_plan(SITE, CATALOGUE)


def test_the_text_goes_stage_by_stage() -> None:
    text = fit_plan_text(PLAN, SITE, CATALOGUE, width=80)
    assert text.isascii()
    assert all(len(line) <= 80 for line in text.splitlines())
    places = [
        text.index(words) for words in ("1. Walk the job", "   unit\n", "   hall\n", "Springs, lids, seals")
    ]
    assert places == sorted(places)
    assert "May be moved down: 20 cm; at 40 cm MOV102 for hall." in text
    assert "Drill nothing where services run" in text


def test_a_quick_plan_says_nothing_of_moves() -> None:
    quick = fit_plan_text(fit_plan(SITE, CATALOGUE, is_quick=True), SITE, CATALOGUE)
    assert "May be moved" not in quick
    assert "tried on the model" not in quick


def test_the_json_is_the_plan() -> None:
    assert FitPlan.model_validate_json(fit_plan_json(PLAN)) == PLAN

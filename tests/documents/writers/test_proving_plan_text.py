"""The walk-test plan on a terminal and as JSON."""

from __future__ import annotations

from wardwright.documents.writers.proving_plan_text import proving_plan_json, proving_plan_text
from wardwright.questions.proving_plan import ProvingPlan, proving_plan
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("one-room")
PLAN = proving_plan(SITE, CATALOGUE)


def test_stops_stand_in_walking_order_with_their_walks() -> None:
    text = proving_plan_text(PLAN, SITE, CATALOGUE, width=80)
    assert text.isascii()
    assert all(len(line) <= 80 for line in text.splitlines())
    assert "Wait 180 s out of its sight before each walk." in text
    assert "it notices" in text
    assert "Crawling and very slow" in text
    places = [text.index(f"\n{number}. ") for number in range(1, len(PLAN.round.stops) + 1)]
    assert places == sorted(places)


def test_a_detector_without_walks_is_named() -> None:
    blind = PLAN.model_copy(update={"walks": (), "without_walks": ("workroom-movement",)})
    assert "what it sees is not known" in proving_plan_text(blind, SITE, CATALOGUE)


def test_the_json_is_the_plan() -> None:
    assert ProvingPlan.model_validate_json(proving_plan_json(PLAN)) == PLAN

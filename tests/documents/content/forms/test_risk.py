from __future__ import annotations

from collections.abc import Callable

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.risk import risk
from wardwright.model.site import Site
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def text(site: Site) -> str:
    return as_text(risk(site, CATALOGUE, (), drawn_up=DAY))


def test_the_risk_record_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    site = fitted()
    kept("risk.txt", as_text(risk(site, CATALOGUE, ask(site, CATALOGUE), drawn_up=DAY)))


def test_what_is_left_without_protection_follows_the_devices() -> None:
    site = fitted()
    assert "full set | Garden door, Kitchen window and Bathroom window" in text(site)
    none = text(site.model_copy(update={"devices": (), "zones": ()}))
    assert "full set | Front door, Garden door, Kitchen window, Living window and Bathroom window" in none
    assert "Sounders: 0 inside, 0 outside." in none


def test_no_grade_and_an_american_place_are_told_so() -> None:
    site = read_sample("terrace")
    place = site.place.model_copy(update={"rule_pack": "us"})
    needs = site.needs.model_copy(update={"grade": None})
    told = text(site.model_copy(update={"place": place, "needs": needs}))
    assert "No security grade is aimed at. Rules and editions used: the American ones." in told


def test_a_lock_that_is_not_known_is_not_told_as_weak() -> None:
    site = fitted()
    openings = tuple(one.model_copy(update={"lock": "unknown"}) for one in site.openings)
    told = text(site.model_copy(update={"openings": openings}))
    assert "Lock not known: Front door" in told
    assert "a latch alone" not in told

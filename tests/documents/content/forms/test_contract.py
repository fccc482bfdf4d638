from __future__ import annotations

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.contract import contract
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_it_has_the_five_papers_of_an_order() -> None:
    paper = contract(fitted(), CATALOGUE, drawn_up=DAY)
    assert [one.heading for one in paper.sections][:5] == [
        "Terms",
        "Privacy notice",
        "Cancellation notice",
        "Request to begin early",
        "Maintenance agreement",
    ]
    assert all(one.blanks for one in paper.sections[:5])
    assert paper.copy == "client"


def test_the_time_to_cancel_is_that_of_the_place() -> None:
    site = fitted()
    assert "within 14 days" in as_text(contract(site, CATALOGUE, drawn_up=DAY))
    place = site.place.model_copy(update={"rule_pack": "us"})
    other = as_text(contract(site.model_copy(update={"place": place}), CATALOGUE, drawn_up=DAY))
    assert "14 days" not in other
    assert "how many, we write here" in other

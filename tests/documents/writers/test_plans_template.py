"""The plans on the page: one for each storey, with a remark where nothing is noticed."""

from __future__ import annotations

from wardwright.documents.content.page import page_of
from wardwright.documents.writers.html import write_html
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def test_each_storey_has_its_plan_and_its_remark() -> None:
    page = page_of(read_sample("terrace"), load_catalogue(), (), ())
    text = write_html(page).decode()
    part = text[text.index('<section id="plans"') : text.index('<section id="answers"')]
    assert part.count("<figure") == len(page.storeys) == 2
    assert all(storey.remark in part for storey in page.storeys)
    assert any(storey.remark for storey in page.storeys)

"""The steps after the design in a real browser: what is fitted and tested where, papers to keep, dates."""

from __future__ import annotations

from typing import Any

import pytest

from common.served import Served
from wardwright.documents.paper_list import TITLES
from web.conftest import JOB, OpenPage, until


def at(page: Any, step: str) -> None:
    page.get_by_role("button", name=step, exact=True).click()
    page.wait_for_selector(".later")


@pytest.mark.parametrize("step", ["Fit", "Prove"])
def test_every_device_stands_on_its_storey_and_is_shown_on_the_plan(
    open_page: OpenPage, served: Served, step: str
) -> None:
    page = open_page()
    at(page, step)
    page.wait_for_selector("[data-kit]")
    listed = page.locator("[data-kit]").evaluate_all("all => all.map(one => one.dataset.kit)")
    kept = [one["id"] for one in served.said(f"/{JOB}")["site"]["devices"]]
    assert sorted(listed) == sorted(kept)
    before = page.locator(".over").inner_html()
    page.locator('[data-kit="hall-movement"] .tag').click()
    page.wait_for_selector('[data-device="hall-movement"].is-chosen')
    if step == "Prove":
        until(lambda: page.locator(".over").inner_html() not in ("", before))  # what it sees is drawn alone
    assert page.locator(".not-yet").inner_text()


def test_a_paper_of_each_class_is_kept_under_a_name_that_says_whose_it_is(open_page: OpenPage) -> None:
    page = open_page()
    at(page, "Hand over")
    page.wait_for_selector(".copy")
    assert page.locator(".copy").count() == len(TITLES)
    assert "plan of how to get into the house" in page.locator(".copy.is-fitter .warning").inner_text()
    for copy, folder in (("client", "client-confidential"), ("open", "open")):
        with page.expect_download(timeout=60_000) as waited:
            page.locator(f".copy.is-{copy} a").first.click()
        assert waited.value.suggested_filename.startswith(f"terrace-{folder}-")


def test_a_paper_is_looked_at_page_by_page_before_it_is_printed(open_page: OpenPage) -> None:
    page = open_page()
    at(page, "Hand over")
    page.wait_for_selector(".copy.is-client button")
    page.locator(".copy.is-client button").first.click()
    page.wait_for_selector(".paper-look .pages img", timeout=60_000)
    first = page.locator(".paper-look .pages img").first
    until(lambda: first.evaluate("one => one.naturalWidth") > 500)
    many = page.locator(".paper-look .pages img").count()
    assert str(many) in page.locator(".paper-look [role=status]").inner_text() or many == 1
    assert first.get_attribute("alt").startswith("Page 1 of")
    assert page.locator(".paper-look .whose").inner_text()
    printed = page.locator(".paper-look a.main")
    assert "printed=true" in printed.get_attribute("href")
    page.keyboard.press("Escape")
    until(lambda: page.locator(".paper-look").count() == 0)


def test_what_has_a_date_stands_by_day(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    at(page, "Look after")
    care = served.said(f"/{JOB}/steps")["care"]
    page.wait_for_selector(".later h3")
    days = page.locator(".dates time").evaluate_all("all => all.map(one => one.dateTime)")
    assert days == [one["on"] for one in care["dates"]]
    until(lambda: care["lasting"][0] in page.locator(".later").inner_text())

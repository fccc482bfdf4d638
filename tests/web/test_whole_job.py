"""A job carried from new to signed order in a real browser."""

from __future__ import annotations

from typing import Any

import pytest

from common.served import Served
from web.conftest import OpenPage, until


def at(page: Any, step: str) -> None:
    page.get_by_role("button", name=step, exact=True).click()


@pytest.mark.parametrize("shape", ["desktop", "tablet"])
def test_from_a_sample_by_a_mend_a_quote_and_the_proposal_to_a_signed_order(
    open_page: OpenPage, served: Served, shape: str
) -> None:
    page: Any = open_page(shape)
    page.get_by_role("button", name="All jobs").click()
    page.get_by_role("button", name="Terrace, weak first design").click()
    page.wait_for_selector(".answer")
    name = page.evaluate("decodeURIComponent(location.hash.slice(1))")
    before = len(served.said(f"/{name}")["site"]["devices"])
    # The design is mended from a question.
    page.locator('button:has-text("Do this"):visible').first.click()
    until(lambda: served.said(f"/{name}")["revision"] == 2)
    assert len(served.said(f"/{name}")["site"]["devices"]) >= before
    # It is priced.
    page.locator("details.quote > summary").click()
    page.wait_for_selector(".quote .options", timeout=60_000)
    # The proposal is looked at.
    at(page, "Hand over")
    page.get_by_role("button", name="Look at: Design proposal").first.click()
    page.wait_for_selector(".paper-look .pages img", timeout=60_000)
    page.keyboard.press("Escape")
    # The order is signed.
    form = page.locator(".signed form")
    form.locator("input").first.fill("A. Client")
    form.locator("input").nth(1).fill("the design as ordered")
    until(lambda: form.locator("button[type=submit]").is_enabled())
    form.locator("button[type=submit]").click()
    until(lambda: "A. Client" in page.locator(".signed ul").first.inner_text(), 90.0)
    (kept,) = served.said(f"/{name}/signed")
    assert (kept["author"], kept["what"], kept["revision"]) == ("A. Client", "the design as ordered", 2)
    assert kept["is_same_house"]
    assert kept["answers"] > 40

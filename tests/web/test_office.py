"""The firm once for all jobs, and a job's quote in options, in a real browser."""

from __future__ import annotations

from typing import Any

from web.conftest import OpenPage, until


def test_the_firms_data_are_told_once_and_the_quote_is_by_them(open_page: OpenPage) -> None:
    page: Any = open_page()
    page.locator("details.quote > summary").click()
    page.wait_for_selector(".quote .options", timeout=60_000)
    assert page.locator("details.quote > .hint").first.inner_text().startswith("At made-up rates")
    page.get_by_role("button", name="All jobs").click()
    page.locator(".office > summary").click()
    page.get_by_label("Name", exact=True).fill("Example Alarms")
    page.get_by_label("Currency, three letters").fill("gbp")
    page.get_by_label("An hour of one fitter").fill("much")
    page.get_by_role("button", name="Keep").click()
    page.wait_for_selector(".office .fault")
    page.get_by_label("An hour of one fitter").fill("48,50")
    page.get_by_role("button", name="Keep").click()
    until(lambda: "kept" in page.locator(".office [role=status]").inner_text())
    assert not page.locator(".office .fault").count()
    page.locator("button.job").first.click()
    page.wait_for_selector(".answer")
    if not page.locator("details.quote[open]").count():
        page.locator("details.quote > summary").click()
    until(lambda: "At the rates of Example Alarms" in page.locator("details.quote").inner_text())
    page.get_by_role("button", name="Side by side").click()
    tops = page.locator("dialog.quote .options > li").evaluate_all(
        "all => all.map(one => one.getBoundingClientRect().top)"
    )
    assert len(tops) > 1
    assert max(tops) - min(tops) < 2.0
    page.keyboard.press("Escape")
    until(lambda: page.locator("dialog.quote").count() == 0)

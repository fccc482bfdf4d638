"""Seeded intruders sent in from the page: their number chosen, what came of them told, their ways on the plan."""

from __future__ import annotations

from typing import Any

import pytest

from common.served import Served
from web.conftest import JOB, SHAPES, OpenPage, assert_fits, assert_no_barrier, until


def sent_in(open_page: OpenPage, shape: str = "desktop", **more: Any) -> Any:
    page = open_page(shape, **more)
    page.locator(".sent-in summary").click()
    page.get_by_label("How many").select_option("2000")
    page.get_by_role("button", name="Send them in").click()
    page.wait_for_selector(".what-came h4")
    return page


def test_they_are_sent_in_and_what_they_did_is_told_and_drawn_until_the_house_is_another(
    open_page: OpenPage, served: Served
) -> None:
    page = sent_in(open_page)
    told = page.locator(".what-came").inner_text()
    assert "2,000 intruders, revision 1" in told
    assert "What these numbers cannot know" in told
    assert page.locator(".what-came .strip svg").count() == 1
    assert page.evaluate("document.activeElement.tagName") == "H3"
    page.get_by_role("button", name="Draw ways on which the design loses").click()
    assert page.locator(".over .ink-beaten").count() > 0
    page.get_by_role("button", name="Draw least-detected paths").click()
    assert page.locator(".over .ink-least-detected").count() > 0
    assert page.locator(".over .ink-beaten").count() == 0
    page.locator('[data-device="hall-movement"]').focus()
    page.keyboard.press("Delete")
    until(lambda: served.said(f"/{JOB}")["revision"] == 2)
    until(lambda: "changed since" in page.locator(".what-came").inner_text())
    assert page.locator(".over .ink-least-detected").count() == 0


@pytest.mark.parametrize("shape", SHAPES)
def test_no_barrier_and_room_enough(open_page: OpenPage, shape: str) -> None:
    page = sent_in(open_page, shape)
    page.get_by_role("button", name="Draw ways on which the design loses").click()
    assert_fits(page, ".sent-in")
    assert_no_barrier(page)

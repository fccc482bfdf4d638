"""Comparing with an earlier revision in a real browser: chosen from the history, told in words, drawn on the plan."""

from __future__ import annotations

import pytest

from common.served import Served
from web.conftest import JOB, OpenPage, dragged, until

MOVEMENT = "hall-movement"


def test_a_revision_of_the_history_is_compared_with_what_there_is_now(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    dragged(page, MOVEMENT, (2, -60))
    until(lambda: int(served.said(f"/{JOB}")["revision"]) == 2)
    page.locator('[data-device="hall-keypad"]').focus()
    page.keyboard.press("Delete")
    until(lambda: int(served.said(f"/{JOB}")["revision"]) == 3)
    page.get_by_text("Revisions", exact=True).click()
    page.get_by_role("button", name="Compare: revision 1").click()
    page.wait_for_selector(".comparison table")
    said = page.locator(".comparison").inner_text()
    assert "Compared with revision 1" in said
    assert "moved" in said
    keypad = page.locator(".things li").filter(has_text="Ground hall keypad").first
    assert "gone" in keypad.inner_text()
    kept = served.said(f"/{JOB}/comparison?before=1")["comparison"]
    rows = page.locator("[data-compared]").evaluate_all("all => all.map(one => one.dataset.compared)")
    assert rows
    assert set(rows) == {one["key"] for one in kept["answers"]}
    assert any(one["course"] == "not checked now" for one in kept["findings"])
    assert page.locator(".compared .was").count() > 0
    tests = page.locator(".due-tests")
    assert kept["tests"]["heading"] in tests.inner_text()
    assert tests.locator("ol > li").count() == len(kept["tests"]["stops"]) > 0
    assert page.locator(".fails").count() == sum(bool(one["fails"]) for one in kept["answers"])


def test_the_comparison_goes_along_with_new_edits_and_ends(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    page.locator(f'[data-device="{MOVEMENT}"]').focus()
    page.keyboard.press("]")
    until(lambda: int(served.said(f"/{JOB}")["revision"]) == 2)
    page.get_by_text("Revisions", exact=True).click()
    page.get_by_role("button", name="Compare: revision 1").click()
    page.wait_for_selector(".comparison .things")
    page.get_by_role("button", name="Take back").click()
    until(lambda: "The house is the same." in page.locator(".comparison").inner_text())
    page.get_by_role("button", name="Stop comparing").click()
    until(lambda: page.locator(".comparison").count() == 0)


@pytest.mark.parametrize("shape", ["phone", "desktop"])
def test_the_comparison_comes_into_sight_and_has_the_focus(
    open_page: OpenPage, served: Served, shape: str
) -> None:
    page = open_page(shape)
    page.locator(f'[data-device="{MOVEMENT}"]').focus()
    page.keyboard.press("]")
    until(lambda: int(served.said(f"/{JOB}")["revision"]) == 2)
    page.get_by_text("Revisions", exact=True).click()
    page.get_by_role("button", name="Compare: revision 1").click()
    page.wait_for_selector(".comparison .things")
    top = page.locator(".comparison h2").bounding_box()["y"]
    plan = page.locator("main").bounding_box()
    assert top >= (plan["y"] + plan["height"] if shape == "phone" else plan["y"])
    assert top < page.viewport_size["height"] - 60
    assert page.evaluate("document.activeElement.id") == "comparison-title"

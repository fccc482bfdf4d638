"""Signing in a real browser: this revision signed, and what is another since told apart."""

from __future__ import annotations

import sqlite3
from typing import Any

import pytest

from common.served import Served
from web.conftest import JOB, SHAPES, OpenPage, assert_fits, assert_no_barrier, until

MOVEMENT = '[data-device="hall-movement"]'


def handing_over(open_page: OpenPage, shape: str = "desktop", **more: Any) -> Any:
    page = open_page(shape, **more)
    page.get_by_role("button", name="Hand over", exact=True).click()
    page.wait_for_selector(".signed form")
    return page


def signed(served: Served) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = served.said(f"/{JOB}/signed")
    return found


def sign(page: Any) -> None:
    page.get_by_label("Who signs").fill("Fitter")
    page.get_by_role("button", name="Sign revision").click()
    page.wait_for_selector(".signed li")


def test_this_revision_is_signed_and_nothing_differs_until_the_house_does(
    open_page: OpenPage, served: Served
) -> None:
    page = handing_over(open_page)
    sign(page)
    (one,) = signed(served)
    assert (one["author"], one["what"], one["revision"]) == (
        "Fitter",
        "The design as shown to the customer",
        1,
    )
    page.get_by_role("button", name="Hold against today").click()
    assert "are as they were signed" in page.wait_for_selector(".since").inner_text()
    page.locator(MOVEMENT).focus()
    page.keyboard.press("Delete")
    until(lambda: served.said(f"/{JOB}")["revision"] == 2)
    until(lambda: "house changed since" in page.locator(".signed .states").inner_text())
    page.get_by_role("button", name="Hold against today").click()
    until(lambda: page.locator(".since .differ").count())
    told = page.locator(".since").inner_text()
    assert "Ground hall movement: gone" in told
    assert "the house changed" in told
    assert "the program changed" not in told
    page.get_by_role("button", name="Take back").click()
    until(lambda: "house as signed" in page.locator(".signed .states").inner_text())


def test_a_program_that_changed_is_told_from_a_house_that_did(open_page: OpenPage, served: Served) -> None:
    page = handing_over(open_page)
    sign(page)
    served.stop()
    # As if it had been signed by an earlier program, which found a race to be lost by more.
    with sqlite3.connect(served.folder / JOB) as base:
        base.execute(
            "UPDATE signed SET program = '0.0.9', "
            "answers = json_set(answers, '$[0].estimate.value', -99.0, '$[0].estimate.low', -120.0)"
        )
    base.close()
    served.start()
    page.reload()
    page = handing_over(open_page)
    assert "program changed since" in page.locator(".signed .states").inner_text()
    page.get_by_role("button", name="Hold against today").click()
    until(lambda: page.locator(".since .differ").count())
    told = page.locator(".since").inner_text()
    assert "the program is version 0.1.0 now; it was 0.0.9" in told
    assert told.count("the program changed") == 1
    assert "the house changed" not in told


def test_all_of_it_is_done_by_keys(open_page: OpenPage, served: Served) -> None:
    page = handing_over(open_page)
    page.get_by_label("Who signs").focus()
    page.keyboard.type("Fitter")
    page.keyboard.press("Tab")
    page.keyboard.type("the first design")
    page.keyboard.press("Enter")
    until(lambda: signed(served))
    assert signed(served)[0]["what"] == "the first design"
    page.wait_for_selector(".signed li")
    page.get_by_role("button", name="Hold against today: the first design").focus()
    page.keyboard.press("Enter")
    page.wait_for_selector(".since")
    assert "as they were signed" in page.evaluate("document.activeElement.textContent")


def test_a_code_and_nobody_are_refused(open_page: OpenPage, served: Served) -> None:
    page = handing_over(open_page)
    page.get_by_role("button", name="Sign revision").click()
    assert page.evaluate("document.activeElement.required")  # the browser asks for a name itself
    page.get_by_label("Who signs").fill("Fitter")
    page.get_by_label("What is signed").fill("with PIN 4711")
    page.get_by_role("button", name="Sign revision").click()
    assert "looks as if it held a code" in page.wait_for_selector(".signed .fault").inner_text()
    assert signed(served) == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("shape", sorted(SHAPES))
def test_no_barrier_and_room_enough(open_page: OpenPage, shape: str, scheme: str) -> None:
    page = handing_over(open_page, shape, color_scheme=scheme)
    sign(page)
    page.locator(MOVEMENT).focus()
    page.keyboard.press("Delete")
    until(lambda: "house changed since" in page.locator(".signed .states").inner_text())
    page.get_by_role("button", name="Hold against today").click()
    until(lambda: page.locator(".since .differ").count())
    assert_no_barrier(page)
    assert_fits(page, ".signed")

"""Saying in a real browser where somebody may be while a part is set: pressed, drawn and by keys on the plan."""

from __future__ import annotations

from typing import Any

from common.served import Served
from web.conftest import JOB, OpenPage, middle_of, until


def passes_of(served: Served, person: str) -> dict[str, tuple[list[str], list[str]]]:
    people = served.said(f"/{JOB}")["site"]["people"]
    told = next(one for one in people if one["id"] == person).get("passes", [])
    return {one["part"]: (one.get("may", []), one.get("may_not", [])) for one in told}


def drawing(page: Any, person: str) -> None:
    page.locator("details.passes summary").click()
    page.get_by_label("Person", exact=True).select_option(person)
    page.get_by_role("button", name="Draw it on the plan").click()
    page.locator(".plan-tools button").first.click()
    page.wait_for_selector('.pass-mark[data-space="kitchen"]')


def test_a_space_is_pressed_a_line_is_drawn_and_a_list_says_the_same(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    drawing(page, "teenager")
    kitchen = page.locator('.pass-mark[data-space="kitchen"]')
    page.mouse.click(*inside(page, "kitchen"))
    until(lambda: passes_of(served, "teenager") == {"night": ([], ["kitchen"])})
    until(lambda: kitchen.get_attribute("data-told") == "may not")
    assert "Teenager, night part set: is not to be here" in str(kitchen.get_attribute("aria-label"))
    assert page.get_by_label("Who may be where: Dining kitchen").input_value() == "may not"
    # The trip is none any more, and the others' still are.
    until(lambda: page.locator('[data-answer="8/teenager/kitchen/kitchen"]').count() == 0)
    page.mouse.move(*inside(page, "living"))
    page.mouse.down()
    page.mouse.move(*inside(page, "hall"), steps=12)
    page.mouse.up()
    until(lambda: passes_of(served, "teenager") == {"night": ([], ["hall", "kitchen", "living"])})


def test_the_keyboard_turns_a_space_and_undo_takes_it_back(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    drawing(page, "grandmother")
    page.locator('.pass-mark[data-space="living"]').focus()
    page.keyboard.press("Enter")
    until(lambda: passes_of(served, "grandmother") == {"night": ([], ["living"])})
    until(lambda: page.locator('.pass-mark[data-space="living"]').get_attribute("data-told") == "may not")
    page.keyboard.press("Enter")
    until(lambda: passes_of(served, "grandmother") == {"night": (["living"], [])})
    page.get_by_label("Who may be where: Hall").select_option("may")
    until(lambda: passes_of(served, "grandmother") == {"night": (["hall", "living"], [])})


def inside(page: Any, space: str) -> tuple[float, float]:
    """A place in a space where no device and no opening is pressed."""
    box = page.locator(f'.pass-mark[data-space="{space}"]').bounding_box()
    assert box is not None
    x, y = middle_of(page, f'.pass-mark[data-space="{space}"]')
    return x, y + 0.08 * box["height"]

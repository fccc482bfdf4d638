"""The list of questions in a real browser: grouped, folded, cut down, and the chosen one kept in view."""

from __future__ import annotations

import re
from typing import Any

import pytest

from common.served import Served
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample
from web.conftest import JOB, OpenPage, dragged, until

KEYS = "all => all.map(one => one.dataset.answer)"


def heads(page: Any) -> dict[int, str]:
    found = page.locator(".group").evaluate_all(
        "all => all.map(one => [one.dataset.question, one.querySelector('.head').getAttribute('aria-expanded')])"
    )
    return {int(number): is_open for number, is_open in found}


def test_answers_stand_by_question_and_what_is_met_stands_back(open_page: OpenPage) -> None:
    page = open_page()
    open_now = heads(page)
    assert open_now[1] == "true"
    assert open_now[3] == open_now[4] == "false"
    assert "is-good" in page.locator('.group[data-question="3"]').get_attribute("class")
    assert page.locator('[data-answer="1/landing-window"]').count() == 0
    page.locator('.group[data-question="1"] .more').click()
    page.wait_for_selector('[data-answer="1/landing-window"]')
    folded = page.locator('.group[data-question="3"] .head')
    assert "21 s" in folded.inner_text()
    folded.click()
    page.wait_for_selector('[data-answer="3/front-door"]')
    assert "entry and exit time" in page.locator('.group[data-question="3"] .asks').inner_text()


def test_the_counts_are_those_of_the_answers(open_page: OpenPage) -> None:
    page = open_page()
    said = page.locator(".questions .sum").inner_text()
    for group in page.locator(".group").all():
        head = group.locator(".head")
        if head.get_attribute("aria-expanded") == "false":
            head.click()
        if group.locator(".more[aria-expanded=false]").count():
            group.locator(".more").click()
    for look, word in (("bad", "not met"), ("thin", "thin"), ("unknown", "not known"), ("good", "met")):
        count = page.locator(f".answer.is-{look}").count()
        assert f"{count} {word}" in said.replace("\n", " ")


def test_the_list_is_cut_down_to_a_storey_and_to_the_thing_chosen_on_the_plan(open_page: OpenPage) -> None:
    page = open_page()
    page.locator(".filter select").select_option("first")
    until(lambda: page.locator('[data-answer="1/front-door"]').count() == 0)
    assert page.locator('[data-answer="1/bathroom-window"]').count() == 1
    page.locator(".filter select").select_option("")
    page.locator('[data-device="hall-movement"]').focus()
    page.keyboard.press("Enter")
    page.get_by_role("button", name="Only about").click()
    until(lambda: page.locator('[data-answer="5/kitchen-window"]').count() == 0)
    keys = page.locator(".answer").evaluate_all(KEYS)
    assert "11/hall-movement" in keys
    shown, whole = re.match(r"(\d+) of (\d+) answers", page.locator(".questions .sum").inner_text()).groups()
    assert len(keys) <= int(shown) < int(whole)
    page.get_by_role("button", name="Only about").click()
    page.wait_for_selector('[data-answer="1/front-door"]')


def test_the_chosen_answer_stays_in_view_while_others_change_places(
    open_page: OpenPage, served: Served
) -> None:
    new_job(served.folder / "long.job", read_sample("bungalow"), author="fitter").close()
    page = open_page(job="long.job")
    line = page.locator('[data-answer="11/corridor-movement"] .line')
    line.click()
    page.wait_for_selector(".whole")
    before = line.bounding_box()["y"]
    high = page.evaluate(ABOVE)
    dragged(page, "corridor-movement", (30, 60))
    until(lambda: int(served.said("/long.job")["revision"]) == 2)
    until(lambda: page.evaluate(ABOVE) != high)  # what stands above it is longer or shorter now
    page.wait_for_timeout(500)
    assert line.bounding_box()["y"] == pytest.approx(before, abs=2.0)


ABOVE = """() => document.querySelector('[data-answer="11/corridor-movement"]').offsetTop"""


def test_a_range_is_drawn_where_there_is_one_and_only_there(open_page: OpenPage) -> None:
    page = open_page(job=JOB)
    bar = page.locator('[data-answer="1/garden-door"] .bar .from-to').bounding_box()
    whole = page.locator('[data-answer="1/garden-door"] .bar').bounding_box()
    assert 0 < bar["width"] < whole["width"]
    page.locator('.group[data-question="1"] .more').click()
    assert page.locator('[data-answer="1/landing-window"] .bar').count() == 0


def test_on_a_small_screen_the_plan_stays_in_sight_and_what_is_chosen_on_it_is_told_below(
    open_page: OpenPage,
) -> None:
    page = open_page("phone")
    page.evaluate("scrollTo(0, 1500)")
    until(lambda: page.locator("main").bounding_box()["y"] == 0)
    plan = page.locator("main").bounding_box()
    page.locator('[data-device="hall-movement"] .touch').tap()
    page.wait_for_selector(".details")
    until(lambda: page.locator(".details").bounding_box()["y"] >= plan["y"] + plan["height"])
    assert page.locator(".details").bounding_box()["y"] < 740
    assert page.locator("main").bounding_box() == plan


def test_on_paper_the_answers_stand_in_light_ink_with_the_warning_of_the_fitters_copy(
    open_page: OpenPage,
) -> None:
    page = open_page(color_scheme="dark")
    page.emulate_media(media="print")
    assert "Fitter\u2019s copy" in page.locator(".printed").inner_text()
    assert page.locator('[data-answer="1/front-door"] .line').is_visible()
    assert not page.locator(".plan-tools").is_visible()
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(27, 26, 23)"

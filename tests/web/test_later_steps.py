"""The steps after the design in a real browser: what is fitted, what is tested, papers to keep, dates."""

from __future__ import annotations

from typing import Any

import pytest

from common.served import Served
from wardwright.documents.paper_list import TITLES
from web.conftest import JOB, SHAPES, OpenPage, assert_fits, assert_no_barrier, dot_of, dragged, until


def at(page: Any, step: str) -> None:
    page.get_by_role("button", name=step, exact=True).click()
    page.wait_for_selector(".later")


def test_devices_stand_in_the_order_of_fitting_and_a_pressed_one_shows_its_sheet_and_itself(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    at(page, "Fit")
    page.wait_for_selector("[data-kit]")
    listed = page.locator("[data-kit]").evaluate_all("all => all.map(one => one.dataset.kit)")
    said = served.said(f"/{JOB}/steps")["fit"]
    assert listed == [one["device"] for stage in said for one in stage["devices"]]
    assert page.locator(".stage h3").count() == len(said)
    line = page.locator('[data-kit="bedroom-1-sounder"]')
    assert "52 cm from the right end of the wall" in line.inner_text()
    assert not line.locator(".sheet").is_visible()
    line.locator(".press").focus()
    page.keyboard.press("Enter")
    page.wait_for_selector('[data-device="bedroom-1-sounder"].is-chosen')  # on the storey that it hangs on
    until(lambda: line.locator(".ways li").count() == 4)
    told = line.inner_text()
    assert "May be moved left" in told
    assert "Ladders" in told
    assert "signal read before any hole" in told
    page.keyboard.press("Enter")
    until(lambda: not line.locator(".sheet").is_visible())


def test_tests_stand_in_walking_order_and_a_pressed_one_is_drawn_alone(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    at(page, "Prove")
    page.wait_for_selector("[data-test]")
    stops = served.said(f"/{JOB}/steps")["prove"]["stops"]
    assert page.locator("[data-stop]").count() == len(stops)
    keys = page.locator(".tests > [data-test]").evaluate_all("all => all.map(one => one.dataset.test)")
    assert keys == [test["key"] for stop in stops for test in stop["tests"]]
    walks = page.locator('[data-test="view/hall-movement"] .walks .press')
    walks.first.focus()
    page.keyboard.press("Enter")
    until(lambda: page.locator(".over .ink-walk").count() == 1)
    assert page.locator('[data-device="hall-movement"].is-chosen').count() == 1
    assert "It notices within" in page.locator('[data-test="view/hall-movement"]').inner_text()
    page.locator('[data-test="sound/bedroom-1-bed"] > .press').click()
    page.wait_for_selector(".over .ink-level")
    assert page.locator(".plan-tools [aria-pressed=true]").inner_text() == "First floor"
    assert page.locator(".over .ink-walk").count() == 0
    page.get_by_role("button", name="Draw the whole round").click()
    until(lambda: page.locator(".over .ink-walk").count() > 1)
    page.get_by_role("button", name="Design", exact=True).click()
    until(lambda: page.locator(".over .ink-goal").count() == 0)  # what a step draws goes with it


@pytest.mark.parametrize("step", ["Fit", "Prove"])
@pytest.mark.parametrize("shape", SHAPES)
def test_no_barrier_and_room_enough_on_site(open_page: OpenPage, shape: str, step: str) -> None:
    page = open_page(shape)
    at(page, step)
    page.locator(".press").first.click()
    page.wait_for_selector(".is-chosen")
    assert_fits(page, ".later")
    assert_no_barrier(page)


def said_of(page: Any, key: str, outcome: str) -> None:
    page.locator(f'[data-result="{key}"]').get_by_role("button", name=outcome, exact=True).click()


def results(served: Served) -> dict[str, Any]:
    return {f"{one['step']}/{one['key']}": one for one in served.said(f"/{JOB}/steps/results")}


def test_what_is_written_down_is_counted_kept_and_there_again_after_a_reload(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    at(page, "Fit")
    page.wait_for_selector("[data-kit]")
    until(lambda: "0 of 7 done" in page.locator(".tally").inner_text())
    page.get_by_label("Written down by").fill("Sam")
    said_of(page, "fit/hall-movement", "Fitted")
    until(lambda: "1 of 7 done" in page.locator(".tally").inner_text())
    remark = page.locator('[data-result="fit/hall-movement"] input')
    remark.fill("5 cm to the right")
    remark.press("Tab")
    until(lambda: results(served)["fit/hall-movement"]["remark"] == "5 cm to the right")
    at(page, "Prove")
    page.wait_for_selector("[data-test]")
    said_of(page, "prove/radio/hall-keypad", "Passed")
    said_of(page, "prove/radio/hall-movement", "Not passed")
    reading = page.locator('[data-result="prove/radio/hall-movement"]').get_by_label("Reading, with its unit")
    reading.fill("-96 dBm")
    reading.press("Enter")
    said_of(page, "prove/opening/front-door-contact", "Not done")
    until(lambda: len(results(served)) == 4)
    until(lambda: results(served)["prove/radio/hall-movement"]["reading"] == "-96 dBm")
    told = page.locator(".tally").inner_text()
    assert "2 of" in told
    assert "1 not passed" in told
    page.reload()
    page.wait_for_selector(".answer")
    at(page, "Prove")
    until(lambda: page.locator('[data-result="prove/radio/hall-movement"].is-not-passed').count() == 1)
    assert "-96 dBm" in page.locator('[data-result="prove/radio/hall-movement"]').inner_text()
    assert "Sam" in page.locator('[data-result="prove/radio/hall-movement"]').inner_text()
    assert page.locator('[data-result="prove/opening/front-door-contact"].is-not-done').count() == 1
    assert page.locator(".written.is-passed").count() == 1
    assert page.locator(".tally").inner_text().split(",")[0].startswith("2 of")


def test_a_late_answer_takes_nothing_away_from_under_the_hand(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    at(page, "Prove")
    page.wait_for_selector("[data-test]")
    held: list[Any] = []

    def hold_back(route: Any) -> None:
        if held or route.request.method != "POST":
            route.continue_()
        else:
            held.append(route)

    page.route("**/steps/results", hold_back)
    said_of(page, "prove/radio/hall-keypad", "Not passed")
    until(lambda: held)
    reading = page.locator('[data-result="prove/radio/hall-keypad"]').get_by_label("Reading, with its unit")
    reading.focus()
    page.keyboard.type("-9")
    held[0].continue_()
    until(lambda: "waits" not in page.locator(".tally p").inner_text())
    page.unroute("**/steps/results")  # what is held back is let go only while the browser is asked something
    page.keyboard.type("6 dBm")
    page.keyboard.press("Tab")
    until(lambda: results(served)["prove/radio/hall-keypad"]["reading"] == "-96 dBm")
    assert results(served)["prove/radio/hall-keypad"]["outcome"] == "not passed"


def test_what_was_done_before_a_move_is_of_an_earlier_revision_until_it_is_done_again(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    at(page, "Fit")
    page.wait_for_selector("[data-kit]")
    said_of(page, "fit/hall-movement", "Fitted")
    said_of(page, "fit/hall-keypad", "Fitted")
    until(lambda: len(results(served)) == 2)
    page.locator('[data-device="hall-movement"]').focus()
    page.keyboard.press("ArrowRight")  # on site it is looked up, not moved
    dragged(page, "hall-movement", (2, -60))
    page.wait_for_timeout(300)
    assert served.said(f"/{JOB}")["revision"] == 1
    page.get_by_role("button", name="Design", exact=True).click()
    page.locator('[data-device="hall-movement"]').focus()
    page.keyboard.press("ArrowRight")
    until(lambda: served.said(f"/{JOB}")["revision"] == 2)
    at(page, "Fit")
    mark = page.locator('[data-result="fit/hall-movement"]')
    until(lambda: "Of an earlier revision: it was moved or turned" in mark.inner_text())
    told = page.locator(".tally").inner_text()
    assert "1 of 7 done" in told
    assert "1 of an earlier revision" in told
    said_of(page, "fit/hall-movement", "Fitted")
    until(lambda: "2 of 7 done" in page.locator(".tally").inner_text())
    assert "earlier" not in mark.inner_text()
    assert results(served)["fit/hall-movement"]["revision"] == 2


def test_without_a_link_results_wait_and_come_through_and_what_somebody_else_wrote_is_not_written_over(
    open_page: OpenPage, served: Served
) -> None:
    page, other = open_page(), open_page("tablet")
    for one in (page, other):
        at(one, "Prove")
        one.wait_for_selector("[data-test]")
    page.context.set_offline(True)
    said_of(page, "prove/radio/hall-keypad", "Passed")
    said_of(page, "prove/operation/hall-keypad", "Passed")
    until(lambda: "2 wait for the link" in page.locator(".tally").inner_text())
    assert results(served) == {}
    said_of(other, "prove/radio/hall-keypad", "Not passed")
    until(lambda: len(results(served)) == 1)
    page.context.set_offline(False)
    until(lambda: "prove/operation/hall-keypad" in results(served))
    until(lambda: "meanwhile" in page.locator(".note").inner_text())
    assert results(served)["prove/radio/hall-keypad"]["outcome"] == "not passed"
    until(lambda: page.locator('[data-result="prove/radio/hall-keypad"].is-not-passed').count() == 1)
    until(lambda: "wait" not in page.locator(".tally p").inner_text())


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
    steps = served.said(f"/{JOB}/steps")
    care, batteries = steps["care"], steps["batteries"]
    page.wait_for_selector(".later h3")
    days = page.locator(".dates time").evaluate_all("all => all.map(one => one.dateTime)")
    assert batteries
    assert days == [one["on"] for one in (*batteries, *care["dates"])]
    assert all(name in page.locator(".dates").first.inner_text() for name in batteries[0]["names"])
    until(lambda: care["lasting"][0] in page.locator(".later").inner_text())


@pytest.mark.parametrize("shape", ["desktop", "tablet"])
def test_a_device_pressed_on_the_plan_is_told_in_sight(open_page: OpenPage, shape: str) -> None:
    page = open_page(shape)
    at(page, "Fit")
    page.wait_for_selector("[data-kit]")
    line = page.locator('[data-kit="hall-keypad"]')
    page.locator('[data-device="hall-keypad"]').focus()
    page.keyboard.press("Enter")
    page.wait_for_selector('[data-kit="hall-keypad"].is-chosen')
    until(lambda: line.locator(".where").evaluate(SEEN))
    at(page, "Prove")
    page.wait_for_selector("[data-test]")
    x, y = dot_of(page, "garden-door-contact")
    page.mouse.click(x, y)
    test = page.locator('.tests > [data-about="garden-door-contact"]').first
    until(lambda: test.locator("> .press .tag").evaluate(SEEN))
    assert "is-about" in test.get_attribute("class")


SEEN = """one => { const at = one.getBoundingClientRect();
  return one.contains(document.elementFromPoint(at.left + 5, at.top + 5)); }"""

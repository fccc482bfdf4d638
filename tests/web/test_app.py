"""What people do in the app, done in a real browser; what it kept is asked of the server."""

from __future__ import annotations

from typing import Any

import pytest

from common.served import Served
from web.conftest import (
    JOB,
    SHAPES,
    OpenPage,
    assert_no_barrier,
    dot_of,
    dragged,
    middle_of,
    touch_dragged,
    until,
)

MOVEMENT = "hall-movement"


def offset(served: Served, device: str = MOVEMENT) -> float:
    return float(served.device(JOB, device)["mount"]["offset_m"])


def revision(served: Served) -> int:
    return int(served.said(f"/{JOB}")["revision"])


def test_the_folder_lists_its_jobs_and_begins_with_a_sample(open_page: OpenPage, served: Served) -> None:
    page = open_page(job="", ready=".jobs .job")
    assert "Terrace, first design" in page.locator(".jobs").inner_text()
    page.get_by_role("button", name="One room").click()
    page.wait_for_selector(".answer")
    assert [one["file"] for one in served.said("")] == ["one-room.job", JOB]


def test_questions_stand_worst_first_and_the_chosen_one_is_drawn(open_page: OpenPage) -> None:
    page = open_page()
    first = page.locator(".answer").first
    assert "is-bad" in first.get_attribute("class")
    assert page.locator(".over .ink-walk").count() == 0
    first.locator(".line").click()
    page.wait_for_selector(".over .ink-walk")
    page.wait_for_selector(".whole .strip svg")
    assert "What would mend it" in first.inner_text()
    first.locator(".line").click()
    until(lambda: page.locator(".over .ink-walk").count() == 0)


@pytest.mark.parametrize("how", ["mouse", "touch"])
def test_a_device_is_dragged_along_its_wall_and_the_answers_follow(
    open_page: OpenPage, served: Served, how: str
) -> None:
    page = open_page("desktop" if how == "mouse" else "tablet")
    before, seen = offset(served), page.locator(".over").inner_html()
    if how == "mouse":
        dragged(page, MOVEMENT, (2, -60), lets_go=False)
        until(lambda: page.locator(".over").inner_html() != seen)  # while it is still held
        assert revision(served) == 1
        page.mouse.up()
    else:
        page.locator(f'[data-device="{MOVEMENT}"]').scroll_into_view_if_needed()
        touch_dragged(page, MOVEMENT, (2, -60))
    until(lambda: revision(served) == 2)
    assert offset(served) != before
    assert served.device(JOB, MOVEMENT)["mount"]["on"] == "wall"


def test_what_is_held_moves_over_a_still_plan_and_lies_where_it_is_let_go(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    kept = dot_of(page, MOVEMENT)
    dragged(page, MOVEMENT, (0, -60), lets_go=False)
    held = middle_of(page, ".held .ink-device-dot")
    assert dot_of(page, MOVEMENT) == kept  # pale, where it still is
    assert held[0] == pytest.approx(kept[0], abs=2.0)
    assert held[1] == pytest.approx(kept[1] - 60, abs=3.0)
    page.mouse.up()
    until(lambda: page.locator(".held").count() == 0)
    assert dot_of(page, MOVEMENT) == pytest.approx(held, abs=1.0)
    until(lambda: revision(served) == 2)


def test_a_wall_is_dragged_to_its_side(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    page.get_by_role("button", name="Survey", exact=True).click()
    x, y = middle_of(page, '[data-wall="hall-living-wall"]')
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + 30, y + 20, steps=6)
    held = middle_of(page, ".held .wall-mark")
    assert held == pytest.approx((x + 30, y), abs=2.0)  # to its side only
    page.mouse.up()
    until(lambda: revision(served) == 2)
    until(lambda: page.locator(".held").count() == 0)
    until(lambda: abs(middle_of(page, '[data-wall="hall-living-wall"]')[0] - held[0]) < 2.0)


def test_a_device_goes_over_to_the_wall_that_it_is_dragged_to(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    x, y = dot_of(page, "hall-keypad")
    unit_x, _ = dot_of(page, "hall-control-unit")
    dragged(page, "hall-keypad", (unit_x - x, -10.0))
    until(lambda: revision(served) == 2)
    assert served.device(JOB, "hall-keypad")["mount"]["wall"] != "hall-living-wall"
    assert y > 0


def test_a_device_is_turned_and_raised_by_keys_and_by_sliders(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    mark = page.locator(f'[data-device="{MOVEMENT}"]')
    mark.focus()
    page.keyboard.press("[")
    until(lambda: revision(served) == 2)
    page.keyboard.press("+")
    until(lambda: revision(served) == 3)
    assert served.device(JOB, MOVEMENT)["mount"]["height_m"] == pytest.approx(2.25)
    page.keyboard.press("ArrowRight")
    until(lambda: revision(served) == 4)
    page.keyboard.press("Enter")
    slider = page.get_by_label("Height above the floor")
    slider.focus()
    page.keyboard.press("ArrowLeft")
    until(lambda: revision(served) == 5)
    assert served.device(JOB, MOVEMENT)["mount"]["height_m"] == pytest.approx(2.2)


def test_its_height_is_dragged_in_the_side_elevation(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    page.locator(f'[data-device="{MOVEMENT}"]').focus()
    page.keyboard.press("Enter")
    x, y = middle_of(page, ".elevation .ink-device")
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x, y + 40, steps=6)
    page.mouse.up()
    until(lambda: revision(served) == 2)
    assert served.device(JOB, MOVEMENT)["mount"]["height_m"] < 2.0


def test_cautions_stand_by_the_mends_and_once_over_all_findings(open_page: OpenPage) -> None:
    page = open_page()
    page.locator('[data-answer="1/front-door"] .line').click()
    page.wait_for_selector(".answer .caution")
    assert "way out" in page.inner_text(".answer .caution")
    found = page.locator(".findings .caution")
    assert found.count() == 1
    assert "cables" in found.inner_text()
    assert "local code" in found.inner_text()


def test_one_tap_carries_a_mend_out_and_puts_a_device_where_it_says(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    page.locator('[data-answer="1/kitchen-window"] .line').click()
    before = len(served.said(f"/{JOB}")["site"]["devices"])
    add = page.locator(".mends li").filter(has_text="Add a movement detector").first
    add.get_by_role("button", name="Do this").click()
    until(lambda: len(served.said(f"/{JOB}")["site"]["devices"]) == before + 1)
    page.wait_for_selector('[data-device="kitchen-added-1"]')


def test_undo_goes_all_the_way_back_and_a_reload_shows_what_is_kept(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    start = served.said(f"/{JOB}")["site"]
    for number, by in enumerate(((2, -60), (2, 40), (2, -30)), start=2):
        dragged(page, MOVEMENT, by)
        until(lambda number=number: revision(served) == number)
    page.reload()
    page.wait_for_selector(".answer")
    for number in range(5, 8):
        page.get_by_role("button", name="Take back").click()
        until(lambda number=number: revision(served) == number)
    assert served.said(f"/{JOB}")["site"] == start
    page.get_by_role("button", name="Take back").click()
    page.wait_for_selector(".note")
    assert "nothing to take back" in page.locator(".note").inner_text()


def test_facts_of_a_door_are_told_in_place_and_show_how_they_are_known(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    page.locator('[data-opening="front-door"]').focus()
    page.keyboard.press("Enter")
    page.locator(".details label").filter(has_text="Lock").locator("select").select_option("rc2")
    until(lambda: revision(served) == 2)
    door = next(one for one in served.said(f"/{JOB}")["site"]["openings"] if one["id"] == "front-door")
    assert door["lock"] == "rc2"


def test_people_and_zones_are_edited_in_their_tables(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    page.get_by_text("Zones", exact=True).click()
    page.get_by_label("Behaviour: Zone 3").select_option("entry-route")
    until(lambda: revision(served) == 2)
    page.get_by_role("button", name="Survey", exact=True).click()
    page.locator("summary").filter(has_text="People").click()
    page.get_by_label("Name: People").fill("Lodger")
    page.keyboard.press("Enter")
    until(lambda: revision(served) == 3)
    people = served.said(f"/{JOB}")["site"]["people"]
    assert people[-1] == {"id": "lodger", "name": "Lodger"}


def test_a_wall_is_moved_with_what_hangs_on_it(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    page.get_by_role("button", name="Survey", exact=True).click()
    page.locator('[data-wall="hall-living-wall"]').focus()
    before = served.said(f"/{JOB}")["site"]
    page.keyboard.press("ArrowRight")
    until(lambda: revision(served) == 2)
    after = served.said(f"/{JOB}")["site"]
    moved = {one["id"] for one, old in zip(after["spaces"], before["spaces"], strict=True) if one != old}
    assert moved == {"hall", "living"}
    until(lambda: page.locator(".house").inner_html() != "")


def test_two_pages_keep_both_edits_and_are_told_of_a_true_conflict(
    open_page: OpenPage, served: Served
) -> None:
    one, other = open_page(), open_page()
    dragged(one, MOVEMENT, (2, -60))
    until(lambda: revision(served) == 2)
    x, _ = dot_of(other, MOVEMENT)
    dragged(other, "living-movement", (-40, 2))
    until(lambda: revision(served) == 3)
    assert served.said(f"/{JOB}/history")[0]["author"] != served.said(f"/{JOB}/history")[1]["author"]
    until(lambda: abs(dot_of(one, "living-movement")[0] - dot_of(other, "living-movement")[0]) < 0.5)
    # Both take hold of one device; the second lets go after the first's edit was kept.
    mark = f'[data-device="{MOVEMENT}"]'
    other.route(
        "**/edits", lambda route: None if route.request.method != "POST" else late(route, one, mark, served)
    )
    dragged(other, MOVEMENT, (2, 50))
    other.wait_for_selector(".note", timeout=20_000)
    assert "changed by" in other.locator(".note").inner_text()
    assert x > 0


def late(route: Any, first: Any, mark: str, served: Served) -> None:
    """Another's edit is kept before this one gets through."""
    number = revision(served)
    first.locator(mark).focus()
    first.keyboard.press("]")
    until(lambda: revision(served) == number + 1)
    route.continue_()


def test_with_the_link_cut_edits_wait_and_come_through(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    page.context.set_offline(True)
    dragged(page, MOVEMENT, (2, -60))
    until(lambda: page.locator(".link").get_attribute("data-waiting") == "1")
    assert revision(served) == 1
    page.context.set_offline(False)
    until(lambda: revision(served) == 2)
    until(lambda: page.locator(".link").get_attribute("data-waiting") == "0")


def test_a_server_killed_during_a_drag_and_started_again_loses_nothing(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    dragged(page, MOVEMENT, (2, -30))
    until(lambda: revision(served) == 2)
    kept = offset(served)
    dragged(page, MOVEMENT, (2, -40), lets_go=False)
    served.kill()
    page.mouse.up()
    until(lambda: page.locator(".link").get_attribute("data-live") == "false")
    assert page.locator(".link").get_attribute("data-waiting") == "1"
    served.start()
    until(lambda: revision(served) == 3)
    assert offset(served) != kept
    until(lambda: page.locator(".link").get_attribute("data-live") == "true")


def test_the_page_works_by_keyboard_alone(open_page: OpenPage) -> None:
    page = open_page()
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.tagName") == "SELECT"
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "head"
    page.keyboard.press("ArrowDown")
    assert page.evaluate("document.activeElement.className") == "line"
    page.keyboard.press("Enter")
    page.wait_for_selector(".whole")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("ArrowLeft")
    until(lambda: page.locator(".group .head").first.get_attribute("aria-expanded") == "false")
    assert page.evaluate("document.activeElement.className") == "head"


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("view", ["jobs", "answer", "device", "opening", "tables", "comparison", "a step"])
def test_no_barrier_is_found(open_page: OpenPage, served: Served, view: str, scheme: str) -> None:
    page = open_page(
        "phone" if view == "a step" else "desktop",
        color_scheme=scheme,
        job="" if view == "jobs" else JOB,
        ready=".jobs .job" if view == "jobs" else ".answer",
    )
    if view == "answer":
        page.locator(".answer .line").first.click()
        page.wait_for_selector(".whole .strip svg")
        for shut in (".group .head[aria-expanded=false]", ".group .more[aria-expanded=false]"):
            while (found := page.locator(shut)).count():
                found.first.click()
        page.locator(".filter select").focus()
    elif view in ("device", "opening"):
        page.locator(f"[data-{view}]").first.focus()
        page.keyboard.press("Enter")
        page.wait_for_selector(".details")
    elif view == "tables":
        for shut in page.locator("aside summary").all():
            shut.click()
        page.wait_for_selector(".history li")
    elif view == "comparison":
        page.locator(f'[data-device="{MOVEMENT}"]').focus()
        page.keyboard.press("Delete")
        until(lambda: revision(served) == 2)
        page.get_by_text("Revisions", exact=True).click()
        page.get_by_role("button", name="Compare: revision 1").click()
        page.wait_for_selector(".comparison table")
    for step in ("Survey", "Fit", "Prove", "Hand over", "Look after") if view == "a step" else ("",):
        if step:
            page.get_by_role("button", name=step, exact=True).click()
            page.wait_for_selector(READY[step])
        assert_no_barrier(page)


READY = {
    "Survey": ".survey",
    "Fit": "[data-kit]",
    "Prove": "[data-test]",
    "Hand over": ".copy",
    "Look after": ".dates",
}


@pytest.mark.parametrize("shape", sorted(SHAPES))
def test_it_fits_every_screen_and_targets_are_large_enough(open_page: OpenPage, shape: str) -> None:
    page = open_page(shape)
    for step in ("Design", "Survey", "Fit", "Prove", "Hand over", "Look after"):
        page.get_by_role("button", name=step, exact=True).click()
        page.wait_for_selector(READY.get(step, ".answer"))
        for shut in page.locator("aside summary").all():
            shut.click()
        page.wait_for_timeout(100)
        wide = page.evaluate("document.documentElement.scrollWidth")
        assert wide <= SHAPES[shape]["viewport"]["width"], step
        assert page.evaluate(SMALL) == [], step
    page.get_by_role("button", name="All jobs").click()
    page.wait_for_selector(".jobs .job")
    assert page.evaluate("document.documentElement.scrollWidth") <= SHAPES[shape]["viewport"]["width"]
    assert page.evaluate(SMALL) == []


SMALL = """() => [...document.querySelectorAll("button, select, summary, a.button, input:not([type=checkbox])")]
  .filter((one) => one.offsetParent)
  .map((one) => [one.textContent || one.getAttribute("aria-label"), one.getBoundingClientRect()])
  .filter(([, box]) => box.height < 43.5 || box.width < 43.5)
  .map(([text, box]) => [text, box.width, box.height])"""


def test_the_plan_goes_to_the_storey_on_which_the_chosen_answer_is_drawn(open_page: OpenPage) -> None:
    page = open_page()
    page.locator('[data-answer="5/bathroom-window"] .line').click()
    page.wait_for_selector(".over .ink-unnoticed-floor")
    assert page.get_by_role("button", name="First floor").get_attribute("aria-pressed") == "true"


def test_a_walk_is_played_over_the_plan(open_page: OpenPage) -> None:
    page = open_page()
    page.locator('[data-answer="1/kitchen-window"] .line').click()
    page.get_by_role("button", name="Play the walk").click()
    first = page.wait_for_selector(".walker").get_attribute("transform")
    until(
        lambda: (
            page.locator(".walker").count() == 0
            or page.locator(".walker").get_attribute("transform") != first
        )
    )

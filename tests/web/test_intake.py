"""A house brought in, in a real browser: by mouse and by keys, with premises to choose, stopped, refused."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from common.dxf_plan import written as drawn
from common.ifc_house import written
from common.served import Served
from web.conftest import JOB, SHAPES, OpenPage, assert_fits, assert_no_barrier, until

SCHEMES = ("light", "dark")


def given(name: str, content: bytes) -> dict[str, Any]:
    return {"name": name, "mimeType": "application/octet-stream", "buffer": content}


def listed(open_page: OpenPage, **more: Any) -> Any:
    return open_page(job="", ready=".jobs .job", **more)


def chosen(page: Any, name: str, content: bytes, notes: bytes | None = None) -> None:
    page.locator("input[name=house]").set_input_files(given(name, content))
    if notes is not None:
        page.locator("input[name=notes]").set_input_files(given("kit.notes", notes))


def files(served: Served) -> set[str]:
    return {one["file"] for one in served.said("")}


def test_a_building_file_with_notes_is_brought_in_its_report_read_and_its_job_opened(
    open_page: OpenPage, served: Served
) -> None:
    page = listed(open_page)
    chosen(page, "mill.ifc", written(), b"person lodger bed bedroom-b11\n")
    page.get_by_role("button", name="Bring it in").click()
    page.wait_for_selector(".premises")
    assert files(served) == {JOB}
    assert "A: 2 spaces" in page.locator(".premises").inner_text()
    page.get_by_role("button", name="The whole building").click()
    report = page.wait_for_selector(".report").inner_text()
    assert "Test house is brought in" in report
    assert "1 person" in report
    for part in ("Worth adding first", "Guessed", "kept with the job"):
        assert part in report
    assert page.evaluate("document.activeElement.textContent") == "Test house is brought in"
    page.get_by_role("button", name="Open the job").click()
    page.wait_for_selector(".answer")
    assert files(served) == {JOB, "mill.job"}
    assert served.said("/mill.job")["site"]["people"][0]["name"] == "Lodger"


def test_all_of_it_is_done_by_keys(open_page: OpenPage, served: Served) -> None:
    page = listed(open_page)
    chosen(page, "flats.ifc", written())
    page.locator("input[name=house]").focus()
    for _ in range(2):  # past the notes, to the button
        page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.wait_for_selector(".premises")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.wait_for_selector(".report")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.wait_for_selector(".answer, .questions")
    assert [one["id"] for one in served.said("/flats.job")["site"]["spaces"]] == ["hall-a01", "kitchen-a02"]


def test_a_drawing_says_its_unit_and_a_site_document_comes_in_as_it_went_out(
    open_page: OpenPage, served: Served
) -> None:
    page = listed(open_page)
    chosen(page, "plan.dxf", drawn())
    page.get_by_label("One unit of the drawing is").select_option("inch")
    page.get_by_role("button", name="Bring it in").click()
    assert "unit: inches, as told" in page.wait_for_selector(".report").text_content()
    page.get_by_role("button", name="Bring another in").click()
    document = served.said(f"/{JOB}/document")
    chosen(page, "brought.json", json.dumps(document | {"name": "Brought"}).encode())
    page.get_by_role("button", name="Bring it in").click()
    page.wait_for_selector(".report")
    assert "Brought is brought in" in page.locator(".report").inner_text()
    assert served.said("/brought.job/document") == document | {"name": "Brought"}


def test_what_cannot_be_used_gets_one_clear_message_and_can_be_tried_again(
    open_page: OpenPage, served: Served
) -> None:
    page = listed(open_page)
    chosen(page, "mill.ifc", b"no house")
    page.get_by_role("button", name="Bring it in").click()
    assert "it is not an IFC file" in page.wait_for_selector(".fault").inner_text()
    assert page.locator(".fault").count() == 1
    chosen(page, "mill.ifc", written(), b"frobnicate the hall\n")
    assert page.locator(".fault").count() == 0
    page.get_by_role("button", name="Bring it in").click()
    page.get_by_role("button", name="The whole building").click(timeout=20_000) if until(
        lambda: page.locator(".premises, .fault").count()
    ) and page.locator(".premises").count() else None
    assert "kit.notes line 1" in page.wait_for_selector(".fault").inner_text()
    chosen(page, "house.rvt", b"x")
    assert "neither a building file" in page.wait_for_selector(".fault").inner_text()
    assert files(served) == {JOB}


def test_too_long_a_file_is_refused_before_it_is_sent(open_page: OpenPage) -> None:
    page = listed(open_page)
    sent: list[str] = []
    page.on("request", lambda request: sent.append(request.url) if "/api/files" in request.url else None)
    chosen(page, "house.notes", bytes(2_000_001))
    assert "longer than 2.0 MB" in page.wait_for_selector(".fault").inner_text()
    page.get_by_role("button", name="Bring it in").click()
    assert "longer than 2.0 MB" in page.wait_for_selector(".fault").inner_text()
    assert sent == []


def test_it_is_stopped_and_nothing_is_kept(open_page: OpenPage, served: Served) -> None:
    page = listed(open_page)
    chosen(page, "mill.ifc", written())
    page.get_by_role("button", name="Bring it in").click()
    page.wait_for_selector(".working progress")
    assert page.evaluate("document.activeElement.textContent") == "Stop"
    page.keyboard.press("Enter")
    assert "It was stopped" in page.wait_for_selector(".fault").inner_text()
    assert files(served) == {JOB}
    page.get_by_role("button", name="Bring it in").click()  # what was chosen stays chosen
    page.wait_for_selector(".premises")


def test_a_page_loaded_anew_follows_it_on(open_page: OpenPage, served: Served) -> None:
    page = listed(open_page)
    chosen(page, "mill.ifc", written())
    page.get_by_role("button", name="Bring it in").click()
    until(lambda: page.evaluate("sessionStorage.getItem('intake')"))
    page.reload()
    page.wait_for_selector(".premises")
    page.get_by_role("button", name="A: 2 spaces").click()
    page.wait_for_selector(".report")
    assert files(served) == {JOB, "mill.job"}


def test_a_server_killed_meanwhile_is_said_when_it_is_back(open_page: OpenPage, served: Served) -> None:
    page = listed(open_page)
    chosen(page, "mill.ifc", written())
    page.get_by_role("button", name="Bring it in").click()
    until(lambda: page.evaluate("sessionStorage.getItem('intake')"))
    served.kill()
    served.start()
    assert "there is no such work" in page.wait_for_selector(".fault").inner_text()
    assert files(served) == {JOB}


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("shape", sorted(SHAPES))
def test_no_barrier_and_room_enough_in_each_of_its_views(
    open_page: OpenPage, shape: str, scheme: str
) -> None:
    page = listed(open_page, shape=shape, color_scheme=scheme)
    chosen(page, f"{'mill-of-a-long-name-' * 4}.ifc", written())
    assert_no_barrier(page)
    assert_fits(page, ".jobs")
    page.get_by_role("button", name="Bring it in").click()
    page.wait_for_selector(".working")
    assert_fits(page, ".jobs")
    assert_no_barrier(page)
    page.wait_for_selector(".premises")
    assert_no_barrier(page)
    assert_fits(page, ".jobs")
    page.get_by_role("button", name="The whole building").click()
    page.wait_for_selector(".report")
    assert_no_barrier(page)
    assert_fits(page, ".jobs")


@pytest.mark.given_data
def test_one_flat_of_a_given_building_is_brought_in(
    open_page: OpenPage, served: Served, given: Callable[[str], Path]
) -> None:
    path = given("houses/Duplex_A_20110907.ifc")
    page = listed(open_page)
    page.locator("input[name=house]").set_input_files(path)
    page.get_by_role("button", name="Bring it in").click()
    page.get_by_role("button", name="A: 10 spaces").click(timeout=60_000)
    page.wait_for_selector(".report", timeout=60_000)
    page.get_by_role("button", name="Open the job").click()
    page.wait_for_selector(".house")
    assert len(served.said("/Duplex_A_20110907.job")["site"]["spaces"]) > 9

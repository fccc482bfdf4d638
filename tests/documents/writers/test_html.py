from __future__ import annotations

import re
from collections.abc import Callable
from html.parser import HTMLParser
from typing import Any

import pytest

from wardwright.documents.content.page import Page, page_of
from wardwright.documents.writers.html import write_html
from wardwright.intake.report import IntakeReport
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.table import QUESTIONS, ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

VOID = {"meta", "br", "link"}


class Outline(HTMLParser):
    """The page as people read it: one line for each piece of text, under the tag that holds it; no drawings."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.lines: list[str] = []
        self.links: list[str] = []
        self.ids: list[str] = []
        self.fetched: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag not in VOID:
            self.open.append(tag)
        for name, value in attrs:
            if name == "href":
                self.links.append(value or "")
            if name == "id":
                self.ids.append(value or "")
            if name in ("src", "srcset", "data", "action", "poster"):
                self.fetched.append(value or "")

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        text = " ".join(data.split())
        if text and not {"svg", "style"} & set(self.open):
            self.lines.append(f"{self.open[-1]}: {text}")


def outline(page: Page) -> Outline:
    found = Outline()
    found.feed(write_html(page).decode())
    assert found.open == []
    return found


def test_the_page_reads_as_it_did(page: Page, kept: Callable[[str, str], None]) -> None:
    kept("page.txt", "\n".join(outline(page).lines) + "\n")


def test_no_request_leaves_the_page(page: Page) -> None:
    found = outline(page)
    assert found.fetched == []
    assert all(link.startswith("#") for link in found.links)
    assert "url(" not in write_html(page).decode()


def test_every_link_has_its_place_and_no_id_is_given_twice(page: Page) -> None:
    found = outline(page)
    assert {link[1:] for link in found.links} <= set(found.ids)
    assert len(set(found.ids)) == len(found.ids)


def test_the_same_page_gives_the_same_bytes(page: Page) -> None:
    assert write_html(page) == write_html(page)


def test_what_somebody_typed_is_text(site: Site, catalogue: Catalogue) -> None:
    nasty = "<script>alert(1)</script>\"'"
    spaces = tuple(space.model_copy(update={"name": nasty}) for space in site.spaces)
    storeys = tuple(storey.model_copy(update={"name": nasty}) for storey in site.storeys)
    changed = site.model_copy(update={"name": nasty, "spaces": spaces, "storeys": storeys})
    report = IntakeReport(source=nasty, form="IFC4", read=(nasty,))
    text = write_html(page_of(changed, catalogue, (), (), report=report)).decode()
    assert "<script" not in text
    assert text.count("&lt;script&gt;") >= 10


def test_the_class_of_the_copy_stands_at_both_ends(page: Page) -> None:
    lines = outline(page).lines
    told = [i for i, line in enumerate(lines) if "how to get into the house" in line]
    assert told[0] < 12
    assert told[-1] == len(lines) - 1


def test_the_intake_report_is_set_whole(site: Site, catalogue: Catalogue) -> None:
    report = IntakeReport(
        source="house.ifc", form="IFC4", counts=(("walls", 3), ("doors", 2)), read=("north",),
        guessed=("sill heights",), left_out=("a roof",), oddities=("six rooms in four rings",),
    )  # fmt: skip
    text = "\n".join(outline(page_of(site, catalogue, (), (), report=report)).lines)
    for words in (
        "house.ifc (IFC4)",
        "3 walls, 2 doors.",
        "north",
        "sill heights",
        "a roof",
        "six rooms in four rings",
    ):
        assert words in text


def test_findings_not_run_are_not_set_as_none_found(site: Site, catalogue: Catalogue) -> None:
    assert "No rule was run for this page." in write_html(page_of(site, catalogue, (), None)).decode()
    assert "No rule found a fault." in write_html(page_of(site, catalogue, (), ())).decode()


@pytest.mark.browser
@pytest.mark.parametrize("width", [360, 768, 1280])
def test_it_fits_the_screen_and_asks_nobody_for_anything(page: Page, browser: Any, width: int) -> None:
    asked: list[str] = []
    context = browser.new_context(viewport={"width": width, "height": 800}, java_script_enabled=True)
    tab = context.new_page()
    tab.on("request", lambda request: asked.append(request.url))
    tab.set_content(write_html(page).decode(), wait_until="load")
    assert tab.evaluate("document.documentElement.scrollWidth") <= width
    assert asked == []
    # The rules of the inks reach the drawings.
    fill = "getComputedStyle(document.querySelector('.ink-wall')).fill"
    assert tab.evaluate(fill) == "rgb(27, 26, 23)"
    context.close()


@pytest.mark.browser
def test_a_plan_is_printed_at_its_scale(page: Page, browser: Any) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    tab = context.new_page()
    tab.set_content(write_html(page).decode())
    tab.emulate_media(media="print")
    found = tab.evaluate(
        "[...document.querySelectorAll('.roll svg')].map(e => e.getBoundingClientRect().width)"
    )
    plans = [storey.shown for storey in page.storeys]
    # 96 CSS pixels an inch of 25.4 mm.
    assert found[: len(plans)] == pytest.approx([plan.width_mm * 96 / 25.4 for plan in plans], abs=0.1)
    context.close()


@pytest.mark.browser
def test_answers_that_are_met_are_folded_until_a_link_leads_to_one_and_printed_all_the_same(
    page: Page, browser: Any
) -> None:
    met = [block.key for block in page.answers if block.verdict == "good"]
    assert 0 < len(met) < len(page.answers)
    context = browser.new_context()
    tab = context.new_page()
    tab.set_content(write_html(page).decode())
    answers = tab.locator(f"#{met[-1]} h3, #{page.answers[0].key} h3")
    assert [one.is_visible() for one in answers.all()] == [True, False]
    tab.emulate_media(media="print")
    assert all(one.bounding_box() for one in tab.locator(".answer h3").all())
    tab.emulate_media(media="screen")
    tab.locator(f'#summary a[href="#{met[-1]}"]').click()
    answers.last.wait_for(state="visible")
    context.close()


@pytest.mark.browser
def test_the_terrace_prints_on_two_sheets_a_question_at_most(browser: Any) -> None:
    site, catalogue = read_sample("terrace"), load_catalogue()
    page = page_of(site, catalogue, ask(site, catalogue), check(site, catalogue))
    context = browser.new_context()
    tab = context.new_page()
    tab.set_content(write_html(page).decode())
    printed = tab.pdf(prefer_css_page_size=True)
    assert 4 <= len(re.findall(rb"/Type\s*/Page\b", printed)) <= 2 * len(QUESTIONS)
    context.close()


def test_only_figures_that_the_answers_stand_on_are_listed() -> None:
    site, catalogue = read_sample("one-room"), load_catalogue()
    page = page_of(site, catalogue, ask(site, catalogue), ())
    listed = {row.name for row in page.figures}
    assert "breaking the control unit" in listed
    assert "getting through laminated glass" not in listed
    assert page_of(site, catalogue, (), ()).figures == ()


def test_an_answer_that_is_drawn_folded_is_not_printed(page: Page) -> None:
    folded = [block for block in page.answers if block.drawings and not block.is_open]
    text = write_html(page).decode()
    assert folded
    assert text.count('<div class="drawn folded">') == len(folded)
    assert ".folded,details:not([open]){display:none}" in text.split("@media print")[1]


def test_openings_that_are_not_counted_are_one_row_and_one_article(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]
) -> None:
    high = [
        answers[4].model_copy(update={"subject": name, "reason": "not counted as a way in: 3.8 m up"})
        for name in ("bath window", "attic window")
    ]
    lines = outline(page_of(site, catalogue, (answers[0], *high), ())).lines
    assert lines.count("a: 2 openings not counted as ways in") == 1
    assert lines.count("h3: 2 openings not counted as ways in") == 1
    assert "li: 3.8 m up: attic window and bath window." in lines


def test_no_promise_is_made(page: Page) -> None:
    text = write_html(page).decode()
    assert not re.search(r"\b(certified|compliant|insurance approved|deters?)\b", text, re.IGNORECASE)
